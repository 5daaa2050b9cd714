import type { Person } from '../who.js';
import { isObjectId, objectId } from './object-id.js';
import { fields, type GitFolder, git, gitFails, line, tryGit } from './run.js';

export interface Commit {
  commit: string;
  parents: string[];
  author: Person;
  /** When the author says the work was done (ISO 8601 with offset). It survives a rebase. */
  date: string;
  /** When the commit was made as it now stands (ISO 8601 with offset). Both dates are what the computer said. */
  committed: string;
  subject: string;
}

/** The fields of a commit that {@link commitFrom} reads, each ended by NUL. */
export const commitFormat = ['%H', '%P', '%an', '%ae', '%aI', '%cI', '%s'].join('%x00');
export const commitFieldCount = 7;

export function commitFrom(parts: readonly string[]): Commit {
  const [commit = '', parents = '', name = '', email = '', date = '', committed = '', subject = ''] = parts;
  return {
    commit,
    parents: parents === '' ? [] : parents.split(' '),
    author: { name, email },
    date: sameZone(date),
    committed: sameZone(committed),
    subject,
  };
}

/** Versions of git differ in how they write UTC. */
export function sameZone(date: string): string {
  return date.replace(/Z$/, '+00:00');
}

/** The commit that is checked out; nothing where there is none yet. */
export function headCommit(repo: GitFolder): Promise<string | undefined> {
  return resolveCommit(repo, 'HEAD');
}

/** The full id of the commit that a name, a tag or a short id means; nothing if it means none or more than one. */
export async function resolveCommit(repo: GitFolder, revision: string): Promise<string | undefined> {
  if (revision === '' || revision.includes('\0')) return undefined;
  const ran = await tryGit(repo, ['rev-parse', '--quiet', '--verify', '--end-of-options', `${revision}^{commit}`]);
  if (ran.code !== 0) return undefined;
  const id = line(ran.out);
  if (!isObjectId(id)) throw gitFails('`git rev-parse` answered with something else than a commit');
  return id;
}

/** Throws if the repository has no such commit. */
async function commitOf(repo: GitFolder, commit: string): Promise<Commit> {
  const out = await git(repo, ['log', '-1', '-z', '--no-patch', `--format=${commitFormat}`, objectId(commit), '--']);
  return commitFrom(fields(out));
}

/** When the commit was made, ISO 8601 with offset, as the committer's computer said. */
export async function commitDate(repo: GitFolder, commit: string): Promise<string> {
  return (await commitOf(repo, commit)).committed;
}

/** Whether the one commit is the other or lies before it. */
export async function isAncestor(repo: GitFolder, earlier: string, later: string): Promise<boolean> {
  return (await tryGit(repo, ['merge-base', '--is-ancestor', objectId(earlier), objectId(later)])).code === 0;
}
