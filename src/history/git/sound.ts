import { isOf, notWhatItIs } from './blobs.js';
import { type GitFolder, git } from './run.js';

/**
 * Reads a commit and the trees that lead from it to what a folder holds, and hashes each: git believes the index of a pack, so
 * that a repository that was tampered with can give other trees under the ids that a tag was signed for.
 *
 * @param folder from the root of the repository; empty for all
 * @throws MachineFailure where an object does not have the id that it is asked for by
 */
export async function checkChain(repo: GitFolder, commit: string, folder: string): Promise<void> {
  const text = (await object(repo, 'commit', commit)).toString('utf8');
  const root = /^tree ([0-9a-f]+)\n/.exec(text)?.[1];
  if (root === undefined) throw notWhatItIs(commit);
  let tree: string | undefined = root;
  for (const name of folder === '' ? [] : folder.split('/')) {
    const inner: readonly Entry[] = await entries(repo, tree);
    tree = inner.find((entry) => entry.isTree && entry.name === name)?.id;
    if (tree === undefined) return;
  }
  await below(repo, tree);
}

async function below(repo: GitFolder, tree: string): Promise<void> {
  for (const { isTree, id } of await entries(repo, tree)) if (isTree) await below(repo, id);
}

interface Entry {
  name: string;
  id: string;
  isTree: boolean;
}

/** A tree object is a row of `mode name NUL id`, the id in bytes. */
async function entries(repo: GitFolder, tree: string): Promise<Entry[]> {
  const data = await object(repo, 'tree', tree);
  const found: Entry[] = [];
  for (let at = 0; at < data.length; ) {
    const [space, nul] = [data.indexOf(0x20, at), data.indexOf(0, at)];
    const end = nul + 1 + tree.length / 2;
    found.push({
      isTree: data.toString('latin1', at, space) === '40000',
      name: data.toString('utf8', space + 1, nul),
      id: data.toString('hex', nul + 1, end),
    });
    at = end;
  }
  return found;
}

async function object(repo: GitFolder, type: 'commit' | 'tree', id: string): Promise<Buffer> {
  const data = await git(repo, ['cat-file', type, id]);
  if (!isOf(id, type, data)) throw notWhatItIs(id);
  return data;
}
