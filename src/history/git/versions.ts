import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Commit } from './commits.js';
import { commitFormat } from './commits.js';
import { objectId } from './object-id.js';
import { type Change, parseLog } from './raw-log.js';
import { type GitFolder, git, line } from './run.js';

export interface Version extends Commit {
  /** What differs from the first parent; for a first commit, everything. */
  changes: Change[];
  /** A shallow clone is cut off here: the changes may be older, and somebody else's. */
  boundary: boolean;
}

export interface FileVersions {
  /** The folder asked about, relative to the root. */
  folder: string;
  /** All commits up to the one asked about, parents before children, else by date, both sides of every merge. */
  versions: Version[];
}

export interface VersionsOptions {
  /** Only files whose names end so (`.md`). Without it every file is listed, and a rename must leave the contents as they are. */
  endings?: readonly string[];
  /** The commit up to which to look; the one checked out if not given. */
  at?: string;
}

/**
 * Every change of every file, in one walk of git. The walk covers the whole repository, because a file or the folder
 * itself may have come from elsewhere; `lineages` follows those of the folder.
 * An empty repository has no versions.
 */
export async function fileVersions(
  repo: GitFolder & { empty: boolean; shallow: boolean },
  folder: string,
  options: VersionsOptions = {},
): Promise<FileVersions> {
  const at = options.at === undefined ? 'HEAD' : objectId(options.at);
  if (repo.empty && options.at === undefined) return { folder, versions: [] };
  const [out, cutOff] = await Promise.all([
    git(
      repo,
      [
        'log',
        '--full-history',
        '--sparse',
        '--date-order',
        '--reverse',
        '--diff-merges=first-parent',
        '--raw',
        '-z',
        '--no-abbrev',
        '--no-ext-diff',
        '--no-textconv',
        '--no-relative',
        // Likeness of photographs is slow to judge and says nothing, so that without endings only equal contents count.
        options.endings === undefined ? '-M100%' : '-M',
        '-l1000',
        `--format=${commitFormat}`,
        at,
        '--',
        ...(options.endings ?? []).map(pathspec),
      ],
      { magicPathspecs: true },
    ),
    repo.shallow ? boundaries(repo) : new Set<string>(),
  ]);
  const versions = parseLog(out).map((found) => ({ ...found, boundary: cutOff.has(found.commit) }));
  return { folder, versions };
}

function pathspec(ending: string): string {
  if (!/^\.[a-z0-9]+$/i.test(ending))
    throw new Error(`Expected the ending of a file name such as ".md", found "${ending}".`);
  return `:(top,glob,icase)**/*${ending}`;
}

async function boundaries(repo: GitFolder): Promise<Set<string>> {
  const path = line(await git(repo, ['rev-parse', '--git-path', 'shallow']));
  return new Set((await readFile(resolve(repo.root, path), 'utf8')).split('\n').filter((id) => id !== ''));
}
