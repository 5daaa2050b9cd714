import { readBlobs } from './blobs.js';
import { objectId } from './object-id.js';
import { fields, type GitFolder, git } from './run.js';

export interface TreeEntry {
  kind: 'file' | 'link' | 'repository';
  /** Id of the contents (of a nested repository: of its commit). */
  blob: string;
  /** Bytes; 0 for a nested repository. */
  size: number;
}

/**
 * What a folder (relative to the root; empty for all) held at a commit: entries by path **relative to the folder**.
 * Empty if there was no such folder.
 */
export async function treeAt(repo: GitFolder, commit: string, folder: string): Promise<Map<string, TreeEntry>> {
  const start = folder === '' ? '' : `${folder}/`;
  return new Map((await entries(repo, commit, start)).map(([path, entry]) => [path.slice(start.length), entry]));
}

/** Id of the contents of one file at a commit, by its path from the root; nothing if there was no such plain file. */
export async function blobAt(repo: GitFolder, commit: string, path: string): Promise<string | undefined> {
  const found = (await entries(repo, commit, path)).find(([name]) => name === path)?.[1];
  return found?.kind === 'file' ? found.blob : undefined;
}

/** The contents of one file at a commit, as {@link blobAt} finds it. Throws if this clone does not hold them. */
export async function fileAt(repo: GitFolder, commit: string, path: string): Promise<Buffer | undefined> {
  const id = await blobAt(repo, commit, path);
  if (id === undefined) return undefined;
  for await (const blob of readBlobs(repo, [id])) {
    if (blob.state === 'read') return blob.data;
  }
  throw new Error(`The contents of ${path} at ${commit} are not in this clone. Fetch the whole repository.`);
}

async function entries(repo: GitFolder, commit: string, path: string): Promise<[string, TreeEntry][]> {
  // git takes a path that leads out of the repository for an error, not for one that is not there.
  if (path.startsWith('/') || path.split('/').includes('..')) return [];
  const out = await git(repo, [
    'ls-tree',
    '-r',
    '-z',
    '-l',
    '--full-tree',
    objectId(commit),
    '--',
    ...(path === '' ? [] : [path]),
  ]);
  return fields(out).map((entry) => {
    const tab = entry.indexOf('\t');
    const [mode = '', , blob = '', size = ''] = entry.slice(0, tab).split(/ +/);
    const kind = mode.startsWith('100') ? 'file' : mode === '120000' ? 'link' : 'repository';
    return [entry.slice(tab + 1), { kind, blob, size: Number(size) || 0 }];
  });
}
