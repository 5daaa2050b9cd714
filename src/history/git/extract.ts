import { constants, copyFile, link, mkdir, readdir, writeFile } from 'node:fs/promises';
import { dirname, resolve, sep } from 'node:path';
import { readBlobs } from './blobs.js';
import type { GitFolder } from './run.js';
import { treeAt } from './tree.js';

export interface Extracted {
  /** Paths relative to the folder, sorted. */
  written: string[];
  /** What was not written, and why. */
  refused: { path: string; reason: string }[];
}

/**
 * Writes the files of a folder as they were at a commit into an empty directory (made if need be). Contents come
 * from git's objects, so that neither filters nor line-end settings touch them. Links, nested repositories and paths
 * that would lead out of the directory are refused, not followed. Throws if the directory holds anything.
 *
 * @param have files that lie elsewhere, by the id of their contents: these are linked where that can be, and not written again
 */
export async function extractAt(
  repo: GitFolder,
  commit: string,
  folder: string,
  target: string,
  have: ReadonlyMap<string, string> = new Map(),
): Promise<Extracted> {
  await mkdir(target, { recursive: true });
  if ((await readdir(target)).length > 0) throw new Error(`${target} is not empty. Name an empty directory.`);
  const tree = await treeAt(repo, commit, folder);
  const refused: Extracted['refused'] = [];
  const wanted: { path: string; blob: string }[] = [];
  for (const [path, { kind, blob }] of tree) {
    const reason =
      kind === 'link'
        ? 'a symbolic link'
        : kind === 'repository'
          ? 'a repository of its own'
          : unsafePath(path, target);
    if (reason === undefined) wanted.push({ path, blob });
    else refused.push({ path, reason });
  }

  const written: string[] = [];
  const missing: typeof wanted = [];
  for (const file of wanted) {
    const source = have.get(file.blob);
    if (source !== undefined && (await linked(source, resolve(target, file.path)))) written.push(file.path);
    else missing.push(file);
  }
  let next = 0;
  for await (const blob of readBlobs(
    repo,
    missing.map((file) => file.blob),
  )) {
    const path = missing[next++]?.path ?? '';
    if (blob.state !== 'read') {
      refused.push({ path, reason: 'its contents are not in this clone' });
      continue;
    }
    const problem = await writeNew(resolve(target, path), blob.data);
    if (problem === undefined) written.push(path);
    else refused.push({ path, reason: problem });
  }
  return { written: written.sort(), refused };
}

/** Why a path must not be written below the target; nothing if it may. git itself accepts such paths in a made-up tree. */
export function unsafePath(path: string, target: string): string | undefined {
  const parts = path.split('/');
  if (parts.some((part) => part === '' || part === '.' || part === '..')) return 'the path leads out of the folder';
  if (parts.some((part) => /^\.git *\.*$/i.test(part))) return "the path is one of git's own";
  if (path.includes('\ufffd')) return 'the name is not UTF-8';
  const base = resolve(target);
  return resolve(base, path).startsWith(base.endsWith(sep) ? base : base + sep)
    ? undefined
    : 'the path leads out of the folder';
}

async function linked(source: string, path: string): Promise<boolean> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await link(source, path).catch(() => copyFile(source, path, constants.COPYFILE_EXCL));
    return true;
  } catch {
    return false;
  }
}

/** Writes a file that must not exist: two names that this file system takes for one are a reason to refuse the second. */
async function writeNew(path: string, data: Buffer): Promise<string | undefined> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, data, { flag: 'wx', mode: 0o644 });
    return undefined;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EEXIST' || code === 'ENOTDIR' || code === 'EISDIR')
      return 'another file of the folder has the same name here';
    if (code === 'EINVAL' || code === 'ENAMETOOLONG' || code === 'ENOENT')
      return 'this system cannot store a file of this name';
    throw error;
  }
}
