import { readBlobs } from './blobs.js';
import { type Found, withObjects } from './cat-file.js';
import { objectId } from './object-id.js';
import { readCommit, readTree } from './objects.js';
import { type GitFolder, gitFails } from './run.js';

export interface TreeEntry {
  kind: 'file' | 'link' | 'repository';
  /** Id of the contents (of a nested repository: of its commit). */
  blob: string;
}

/** More folders within each other than any system would make. */
const deepest = 200;

/**
 * What a folder (relative to the root; empty for all) held at a commit: entries by path **relative to the folder**.
 * Empty if there was no such folder. Commit and folders are hashed as they are read: throws AlteredObject where an id is
 * not that of what is found under it.
 */
export async function treeAt(repo: GitFolder, commit: string, folder: string): Promise<Map<string, TreeEntry>> {
  return withObjects(repo, async (read) => {
    const found = await entryAt(read, commit, folder);
    const files = new Map<string, TreeEntry>();
    if (found?.mode !== folderMode) return files;
    const list = async (id: string, start: string, depth: number): Promise<void> => {
      for (const { mode, name, id: blob } of await folderOf(read, id)) {
        if (mode !== folderMode) files.set(start + name, { kind: kindOf(mode), blob });
        else if (depth < deepest) await list(blob, `${start}${name}/`, depth + 1);
      }
    };
    await list(found.id, '', 0);
    return files;
  });
}

/** Id of the contents of one file at a commit, by its path from the root; nothing if there was no such plain file. */
export async function blobAt(repo: GitFolder, commit: string, path: string): Promise<string | undefined> {
  const found = await withObjects(repo, (read) => entryAt(read, commit, path));
  return found && found.mode !== folderMode && kindOf(found.mode) === 'file' ? found.id : undefined;
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

type Read = (id: string) => Promise<Found>;

const folderMode = '40000';
const kindOf = (mode: string): TreeEntry['kind'] =>
  mode.startsWith('100') ? 'file' : mode === '120000' ? 'link' : 'repository';

/** From the commit down, folder by folder. */
async function entryAt(read: Read, commit: string, path: string): Promise<{ mode: string; id: string } | undefined> {
  const found = await read(objectId(commit));
  if (found.state !== 'read' || found.type !== 'commit') throw notHere(commit);
  let at = { mode: folderMode, id: readCommit(found.data).tree };
  for (const part of path === '' ? [] : path.split('/')) {
    if (at.mode !== folderMode) return undefined;
    const next = (await folderOf(read, at.id)).find(({ name }) => name === part);
    if (!next) return undefined;
    at = next;
  }
  return at;
}

async function folderOf(read: Read, id: string) {
  const found = await read(id);
  if (found.state !== 'read' || found.type !== 'tree') throw notHere(id);
  return readTree(found.data, id.length);
}

const notHere = (id: string) => gitFails(`bad object ${id}: it is not in this clone`);
