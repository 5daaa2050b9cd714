import { execFile } from 'node:child_process';
import { devNull } from 'node:os';

/** Where git is to run: the root of a repository's working tree, or a bare repository. */
export interface GitFolder {
  root: string;
}

/** How git ended; a code other than 0 is left to the caller to judge. */
export interface Ran {
  code: number;
  out: Buffer;
  err: string;
}

export interface RunOptions {
  input?: string | Buffer;
  /** Settings of git for this run alone, `name=value`; they win over the user's. */
  settings?: readonly string[];
  /** Pathspecs are taken as they stand unless this is set. */
  magicPathspecs?: boolean;
}

/** Settings that change what git prints or runs. Those that say who signs, and how, stay the user's. */
const settings = [
  'core.quotepath=off',
  'color.ui=false',
  'i18n.logOutputEncoding=UTF-8',
  'log.showSignature=false',
  'log.showRoot=true',
  'log.follow=false',
  'core.fsmonitor=false',
  `core.hooksPath=${devNull}`,
  'protocol.allow=never',
  'advice.graftFileDeprecated=false',
];

/** A hook or an alias that starts us sets GIT_DIR and the like, which would point every question at another repository. */
const kept =
  /^GIT_(CONFIG_(GLOBAL|SYSTEM|NOSYSTEM|COUNT|KEY_\d+|VALUE_\d+)|AUTHOR_|COMMITTER_|EXEC_PATH|CEILING_DIRECTORIES|DISCOVERY_)/;

function environment(magicPathspecs: boolean): NodeJS.ProcessEnv {
  const env: NodeJS.ProcessEnv = {};
  for (const [name, value] of Object.entries(process.env)) {
    if (!name.startsWith('GIT_') || kept.test(name)) env[name] = value;
  }
  return {
    ...env,
    LC_ALL: 'C',
    GIT_PAGER: 'cat',
    GIT_OPTIONAL_LOCKS: '0',
    GIT_TERMINAL_PROMPT: '0',
    GIT_NO_LAZY_FETCH: '1',
    // Replacement objects and grafts would show another history than the one that was signed.
    GIT_NO_REPLACE_OBJECTS: '1',
    GIT_GRAFT_FILE: devNull,
    ...(magicPathspecs ? {} : { GIT_LITERAL_PATHSPECS: '1' }),
  };
}

/** Arguments and environment of a git process whose output does not depend on the user's settings or language. */
export function command(
  folder: GitFolder,
  args: readonly string[],
  options: RunOptions = {},
): { args: string[]; env: NodeJS.ProcessEnv } {
  const given = [...settings, ...(options.settings ?? [])].flatMap((setting) => ['-c', setting]);
  return {
    args: ['--no-pager', '-C', folder.root, ...given, ...args],
    env: environment(options.magicPathspecs ?? false),
  };
}

/** A program that git asks (ssh-keygen, of a signature that does not fit) may stop reading, and end git with it, or not, as chance has it. */
const mostTries = 20;

/** Runs git without a shell. Rejects only if git cannot be started (`code` of the error is then `ENOENT`) or is ended by a signal. */
export function tryGit(folder: GitFolder, args: readonly string[], options: RunOptions = {}, tries = 1): Promise<Ran> {
  const run = command(folder, args, options);
  return new Promise((resolve, reject) => {
    const child = execFile(
      'git',
      run.args,
      { env: run.env, encoding: 'buffer', maxBuffer: Infinity },
      (error, out, err) => {
        if (error?.signal === 'SIGPIPE' && tries < mostTries) resolve(tryGit(folder, args, options, tries + 1));
        else if (error !== null && typeof error.code !== 'number') reject(error);
        else resolve({ code: error === null ? 0 : Number(error.code), out, err: err.toString('utf8') });
      },
    );
    // git may end before it has read everything; how it ended says more than the broken pipe.
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(options.input ?? '');
  });
}

/** As {@link tryGit}, for questions that have an answer in every sound repository. Throws with git's own words otherwise. */
export async function git(folder: GitFolder, args: readonly string[], options: RunOptions = {}): Promise<Buffer> {
  const ran = await tryGit(folder, args, options);
  if (ran.code !== 0) throw failure(`git ${args[0] ?? ''} failed in ${folder.root}`, ran);
  return ran.out;
}

export function failure(what: string, ran: Ran): Error {
  const said = ran.err.trim().replace(/^(fatal|error): /, '');
  return new Error(`${what}: ${said === '' ? `it ended with code ${ran.code}` : said}`);
}

/** The one line that git printed. Only the last line end is dropped, because a path may end in one. */
export function line(out: Buffer): string {
  return out.toString('utf8').replace(/\n$/, '');
}

/** Splits the output of `-z`. */
export function fields(out: Buffer): string[] {
  if (out.length === 0) return [];
  return out.toString('utf8').replace(/\0$/, '').split('\0');
}
