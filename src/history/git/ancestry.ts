import { readObjects } from './cat-file.js';
import { objectId } from './object-id.js';
import { type GitFolder, tryGit } from './run.js';

/** Whether this clone holds the commit. Throws AlteredObject where its id is not that of what is found under it. */
export async function holdsCommit(repo: GitFolder, commit: string): Promise<boolean> {
  for await (const found of readObjects(repo, [commit])) return found.state === 'read' && found.type === 'commit';
  return false;
}

/**
 * Hashes a commit, all before it and their folders, so that the history is that of the commit's id. Gives git's words where
 * it cannot be followed; throws AlteredObject where an id is not that of what is found under it.
 */
export async function hashAncestry(repo: GitFolder, commit: string): Promise<string | undefined> {
  const { code, out, err } = await tryGit(repo, [
    'rev-list',
    '--objects',
    '--no-object-names',
    '--filter=blob:none',
    objectId(commit),
  ]);
  if (code !== 0) return err.trim().replace(/^(?:fatal|error): /, '');
  for await (const _ of readObjects(repo, out.toString('latin1').split('\n').filter(Boolean))) void _;
  return undefined;
}
