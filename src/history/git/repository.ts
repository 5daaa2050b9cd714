import { realpath, stat } from 'node:fs/promises';
import { relative, resolve, sep } from 'node:path';
import { MachineFailure } from '../../platform/failure.js';
import { resolveCommit } from './commits.js';
import { limitsOf, type RepositoryState } from './limits.js';
import { failure, type GitFolder, git, gitFails, line, patience, type Ran, tryGit } from './run.js';

/** What is known of the repository that holds a build. */
export interface Repository extends GitFolder, RepositoryState {
  kind: 'repository';
  /** The folder asked for, relative to the root, with `/`; empty for the root itself. */
  prefix: string;
  /** The branch checked out; none when the head is detached. */
  branch: string | undefined;
  objectFormat: 'sha1' | 'sha256';
  /** What cannot be told here, in plain words; empty if there is nothing in the way. */
  limits: string[];
}

export interface NoRepository {
  kind: 'none';
  /** Why, and what to do. */
  reason: string;
}

/** The oldest git that answers every question asked here. */
const oldest = [2, 31] as const;

/**
 * Looks at the repository that holds `dir`. Never throws for the state of the folder; throws MachineFailure where git is
 * there and does not answer as git does.
 */
export async function openRepository(dir: string): Promise<Repository | NoRepository> {
  const none = (reason: string): NoRepository => ({ kind: 'none', reason });
  const found = await stat(dir).catch(() => undefined);
  if (found === undefined || !found.isDirectory()) return none(`There is no folder ${dir}. Check the path.`);
  const tooOld = await gitMissing();
  if (tooOld !== undefined) return none(tooOld);

  // How far up the root lies, and not where: a path may hold line ends.
  const asked = await tryGit({ root: dir }, [
    'rev-parse',
    '--is-bare-repository',
    '--is-inside-work-tree',
    '--is-shallow-repository',
    '--show-object-format',
    '--show-cdup',
  ]);
  if (asked.code !== 0) return none(whyNot(dir, asked.err));
  const [isBare, isInside, isShallow, format, up = ''] = line(asked.out).split('\n');
  if (![isBare, isInside, isShallow].every((word) => word === 'true' || word === 'false') || !/^(?:\.\.\/)*$/.test(up))
    throw gitFails('`git rev-parse` answered with something else than the state of a repository');
  const bare = isBare === 'true';
  if (!bare && isInside !== 'true') return none(`${dir} lies in git's own folder. Name the folder of the build.`);
  const real = await realpath(dir);
  const root = bare ? line(await git({ root: dir }, ['rev-parse', '--absolute-git-dir'])) : resolve(real, up);
  const prefix = bare ? '' : relative(root, real).split(sep).join('/');

  const ask = (...args: string[]): Promise<Ran> => tryGit({ root }, args, { magicPathspecs: true });
  const [branch, head, partialFrom, excluded] = await Promise.all([
    ask('symbolic-ref', '--quiet', '--short', 'HEAD'),
    resolveCommit({ root }, 'HEAD'),
    ask('config', '--get-regexp', '^(extensions\\.partialclone|remote\\..*\\.promisor)$'),
    prefix === '' ? undefined : ask('check-ignore', '--quiet', '--', `./${prefix}`),
  ]);
  const known = {
    kind: 'repository' as const,
    root,
    prefix,
    branch: branch.code === 0 ? line(branch.out) : undefined,
    objectFormat: format === 'sha256' ? ('sha256' as const) : ('sha1' as const),
    bare,
    shallow: isShallow === 'true',
    detached: branch.code !== 0,
    empty: head === undefined,
    partial: partialFrom.code === 0,
    ignored: excluded?.code === 0,
  };
  return { ...known, limits: limitsOf(known) };
}

async function gitMissing(): Promise<string | undefined> {
  const ran = await tryGit({ root: '.' }, ['version'], { patience: Math.min(10_000, patience()) }).catch(
    (error: unknown) => {
      if (error instanceof MachineFailure) throw error;
    },
  );
  if (ran === undefined) return 'git was not found. Install git and make sure that the terminal finds it.';
  const found = /^git version (\d+)\.(\d+)/.exec(ran.out.toString());
  if (ran.code !== 0 || !found) throw gitFails(failure('`git version` tells no version', ran).message);
  const [major = 0, minor = 0] = found.slice(1).map(Number);
  if (major > oldest[0] || (major === oldest[0] && minor >= oldest[1])) return undefined;
  return `git ${major}.${minor} is too old, ${oldest.join('.')} or later is needed. Install a newer git.`;
}

function whyNot(dir: string, said: string): string {
  if (/dubious ownership/.test(said)) {
    return `The repository of ${dir} belongs to another user of this computer, so git does not open it. If you trust it, run \`git config --global --add safe.directory <its folder>\`.`;
  }
  if (/not a git repository/.test(said)) {
    return `${dir} is in no git repository, so nothing can be told of who recorded what when. \`git init\` begins one.`;
  }
  return `git cannot open the repository of ${dir}: ${said.trim().replace(/^fatal: /, '')}`;
}
