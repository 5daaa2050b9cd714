import { execFile } from 'node:child_process';
import { MachineFailure } from '../../platform/failure.js';
import { environment, fixedSettings, patience } from './environment.js';
import { settingsInPlaceOfTheRepositorys } from './own-settings.js';

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
  /** How long git may take, in seconds; the usual is {@link patience}. */
  seconds?: number;
}

/** Arguments and environment of a git process whose output does not depend on the user's settings or language. */
export function command(
  folder: GitFolder,
  args: readonly string[],
  options: RunOptions = {},
): { args: string[]; env: NodeJS.ProcessEnv } {
  const given = [
    ...settingsInPlaceOfTheRepositorys(folder.root),
    ...fixedSettings,
    ...(options.settings ?? []),
  ].flatMap((setting) => ['-c', setting]);
  return {
    args: ['--no-pager', '-C', folder.root, ...given, ...args],
    env: environment(options.magicPathspecs ?? false),
  };
}

/** A program that git asks (ssh-keygen, of a signature that does not fit) may stop reading, and end git with it, or not, as chance has it. */
const mostTries = 20;

/** Runs git without a shell. Rejects only if git cannot be started (`code` of the error is then `ENOENT`), hangs, or is ended by a signal. */
export function tryGit(folder: GitFolder, args: readonly string[], options: RunOptions = {}, tries = 1): Promise<Ran> {
  const run = command(folder, args, options);
  return new Promise((resolve, reject) => {
    const child = execFile(
      'git',
      run.args,
      {
        env: run.env,
        encoding: 'buffer',
        maxBuffer: Infinity,
        timeout: 1000 * (options.seconds ?? patience()),
        killSignal: 'SIGKILL',
      },
      (error, out, err) => {
        if (error?.killed === true) reject(hanging(args[0] ?? '', options.seconds ?? patience()));
        else if (error?.signal === 'SIGPIPE' && tries < mostTries) resolve(tryGit(folder, args, options, tries + 1));
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

const hanging = (asked: string, seconds: number): MachineFailure =>
  new MachineFailure({
    found: `git ${asked} gave no answer within ${seconds} s and was ended`,
    expected: 'a git that answers, and a disk that does',
    todo: 'run the same command of git by hand; where it is only slow, set GUSSET_GIT_SECONDS to more',
  });

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
