import { type ExecFileException, execFile } from 'node:child_process';
import { devNull } from 'node:os';
import { MachineFailure } from '../../platform/failure.js';
import { ownSettings } from './own-settings.js';

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
  /** Settings, name and value, that win over the repository's; `tryGit` looks them up. */
  own?: readonly [string, string][];
  /** How long it may take, in milliseconds. */
  patience?: number;
  /** Pathspecs are taken as they stand unless this is set. */
  magicPathspecs?: boolean;
}

/** Settings that change what git prints, or what it takes for the history; what runs programs is in {@link ownSettings} too. */
const settings = [
  'core.quotepath=off',
  'color.ui=false',
  'i18n.logOutputEncoding=UTF-8',
  'log.showSignature=false',
  'log.showRoot=true',
  'log.follow=false',
  'log.mailmap=false',
  'core.fsmonitor=false',
  `core.hooksPath=${devNull}`,
  // A table of parents that lies beside the commits may say otherwise than they do.
  'core.commitGraph=false',
  'protocol.allow=never',
  'submodule.recurse=false',
  'advice.graftFileDeprecated=false',
];

/** Questions for which git runs no program that settings name. Before any other the settings are looked at. */
const plain = new Set([
  'cat-file',
  'check-ignore',
  'check-ref-format',
  'for-each-ref',
  'log',
  'ls-files',
  'ls-tree',
  'merge-base',
  'rev-parse',
  'symbolic-ref',
  'update-ref',
  'var',
  'version',
]);

/** In milliseconds: so long git may say nothing. `GUSSET_GIT_SECONDS` gives another. */
export const patience = (): number => 1000 * Number(process.env['GUSSET_GIT_SECONDS'] || 120);
/** In milliseconds. Who signs may be asked for a passphrase. */
const patienceOf = (args: readonly string[]): number => (args.includes('--sign') ? 900_000 : patience());
const mostOutput = 256 * 2 ** 20;

/** A hook or an alias that starts us sets GIT_DIR and the like, which would point every question at another repository. */
const kept =
  /^GIT_(CONFIG_(GLOBAL|SYSTEM|NOSYSTEM|COUNT|KEY_\d+|VALUE_\d+)|AUTHOR_|COMMITTER_|EXEC_PATH|CEILING_DIRECTORIES|DISCOVERY_)/;

function environment(magicPathspecs: boolean, own: readonly [string, string][]): NodeJS.ProcessEnv {
  const env: NodeJS.ProcessEnv = {};
  for (const [name, value] of Object.entries(process.env)) {
    if (!name.startsWith('GIT_') || kept.test(name)) env[name] = value;
  }
  // By the environment and not as arguments, in which a name cannot hold "=".
  const before = Number(env['GIT_CONFIG_COUNT'] ?? 0) || 0;
  own.forEach(([name, value], i) => {
    env[`GIT_CONFIG_KEY_${before + i}`] = name;
    env[`GIT_CONFIG_VALUE_${before + i}`] = value;
  });
  if (own.length > 0) env['GIT_CONFIG_COUNT'] = String(before + own.length);
  return {
    ...env,
    LC_ALL: 'C',
    GIT_PAGER: 'cat',
    GIT_OPTIONAL_LOCKS: '0',
    GIT_TERMINAL_PROMPT: '0',
    GIT_NO_LAZY_FETCH: '1',
    // Wins over whatever a repository allows: nothing is fetched, and so no program of a transport is run.
    GIT_ALLOW_PROTOCOL: 'none',
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
    env: environment(options.magicPathspecs ?? false, options.own ?? []),
  };
}

/** A program that git asks (ssh-keygen, of a signature that does not fit) may stop reading, and end git with it, or not, as chance has it. */
const mostTries = 20;

/**
 * Runs git without a shell. Rejects if git cannot be started (`code` of the error is then `ENOENT`), and with
 * MachineFailure where it is ended by a signal, does not end, or says without end.
 */
export async function tryGit(folder: GitFolder, args: readonly string[], options: RunOptions = {}): Promise<Ran> {
  if (plain.has(args[0]!)) return runGit(folder, args, options);
  const listed = await runGit(folder, ['config', '--list', '-z', '--show-scope'], {});
  if (listed.code !== 0) return listed;
  return runGit(folder, args, { ...options, own: ownSettings(listed.out.toString('utf8')) });
}

function runGit(folder: GitFolder, args: readonly string[], options: RunOptions, tries = 1): Promise<Ran> {
  const run = command(folder, args, options);
  const timeout = options.patience ?? patienceOf(args);
  return new Promise((resolve, reject) => {
    const child = execFile(
      'git',
      run.args,
      { env: run.env, encoding: 'buffer', maxBuffer: mostOutput, timeout, killSignal: 'SIGKILL' },
      (error, out, err) => {
        if (error?.signal === 'SIGPIPE' && tries < mostTries) resolve(runGit(folder, args, options, tries + 1));
        else if (error?.code === 'ENOENT') reject(error);
        else if (error !== null && typeof error.code !== 'number') reject(broken(args[0]!, error, timeout));
        else resolve({ code: error === null ? 0 : Number(error.code), out, err: err.toString('utf8') });
      },
    );
    // git may end before it has read everything; how it ended says more than the broken pipe.
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(options.input ?? '');
  });
}

function broken(name: string, error: ExecFileException, timeout: number): MachineFailure {
  const code: unknown = error.code;
  const how =
    code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER'
      ? `printed more than ${mostOutput / 2 ** 20} MB`
      : error.killed === true
        ? `did not end within ${timeout / 1000} s`
        : error.signal
          ? `was ended by ${error.signal}`
          : `could not be run (${String(code)})`;
  return gitFails(`\`git ${name}\` ${how}`, error);
}

/** git itself, or the repository, is not in order. */
export const gitFails = (found: string, cause?: unknown): MachineFailure =>
  new MachineFailure({
    found,
    expected: 'a git that answers, and a repository that is whole',
    todo: 'try `git status` and `git fsck` in that folder, and give the command again when they answer',
    cause,
  });

/** As {@link tryGit}, for questions that have an answer in every sound repository. Throws MachineFailure with git's own words otherwise. */
export async function git(folder: GitFolder, args: readonly string[], options: RunOptions = {}): Promise<Buffer> {
  const ran = await tryGit(folder, args, options);
  if (ran.code !== 0) throw gitFails(failure(`git ${args[0] ?? ''} failed in ${folder.root}`, ran).message);
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
