import { fields, type GitFolder, git } from './run.js';

interface Dirty {
  /** Relative to the root of the repository. */
  path: string;
  /** `unwatched`: git was told not to look for changes in this file. */
  state: 'changed' | 'deleted' | 'added' | 'conflict' | 'untracked' | 'unwatched' | 'nothing committed';
}

export interface Cleanliness {
  /** True if what is committed is what lies in the folder; ignored files do not count. */
  clean: boolean;
  dirty: Dirty[];
  /** Files that a `.gitignore` excludes: no commit holds them, so a document must not rest on them. */
  ignored: string[];
}

/**
 * Compares the files of one folder (relative to the root; empty for all) with the commit that is checked out,
 * untracked files included. Throws in a repository without a working tree.
 */
export async function isClean(repo: GitFolder, folder: string): Promise<Cleanliness> {
  const path = folder === '' ? '.' : folder;
  const [status, different, watched, committed] = await Promise.all([
    git(repo, [
      'status',
      '--porcelain=v2',
      '-z',
      '--untracked-files=all',
      '--ignored=traditional',
      '--no-renames',
      '--ignore-submodules=dirty',
      '--',
      path,
    ]),
    git(
      repo,
      [
        'diff',
        '--name-only',
        '-z',
        '--no-ext-diff',
        '--no-textconv',
        '--no-renames',
        '--no-relative',
        // In a repository within this one git would go by the settings of that one.
        '--ignore-submodules=dirty',
        '--',
        path,
      ],
      { settings: ['diff.autoRefreshIndex=true'] },
    ),
    git(repo, ['ls-files', '-v', '-z', '--', path]),
    git(repo, ['ls-files', '-z', '--cached', '--', path]),
  ]);
  const changed = new Set(fields(different));
  // A file saved again with other line ends has a new size, which is all that status looks at.
  const entries = fields(status).filter((entry) => !entry.startsWith('1 .M') || changed.has(after(entry, 8)));
  const dirty: Dirty[] = [
    ...entries.map(dirtyFrom).filter((entry) => entry !== undefined),
    ...fields(watched)
      .filter((entry) => /^[a-zS] /.test(entry))
      .map((entry) => ({ path: entry.slice(2), state: 'unwatched' as const })),
  ];
  if (committed.length === 0) dirty.push({ path: folder, state: 'nothing committed' });
  return {
    clean: dirty.length === 0,
    dirty: dirty.sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0)),
    ignored: entries.filter((entry) => entry.startsWith('! ')).map((entry) => entry.slice(2)),
  };
}

/** Reads an entry of status format v2: a changed path comes after 8 fields, one in conflict after 10. */
function dirtyFrom(entry: string): Dirty | undefined {
  const kind = entry[0];
  if (kind === '?') return { path: entry.slice(2), state: 'untracked' };
  if (kind === '1') return { path: after(entry, 8), state: stateFrom(entry.slice(2, 4)) };
  if (kind === 'u') return { path: after(entry, 10), state: 'conflict' };
  return undefined;
}

function after(entry: string, count: number): string {
  return entry.split(' ').slice(count).join(' ');
}

function stateFrom(codes: string): Dirty['state'] {
  if (codes.includes('D')) return 'deleted';
  return codes.includes('A') ? 'added' : 'changed';
}
