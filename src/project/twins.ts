import type { BuildFile, Note } from './model.js';
import type { Problem } from './problem.js';

/**
 * Files that cannot be told apart: notes of one number, since the document calls them by it (as when two people each add
 * the next), and names that differ only in capitals, which cannot live in one folder on every system.
 */
export function twins(
  notes: readonly Pick<Note, 'name' | 'file'>[],
  files: readonly Pick<BuildFile, 'path'>[],
  shown: (path: string) => string,
): Problem[] {
  const alike = pairs(
    files.map((f) => f.path),
    folded,
  ).map(([first, second]) =>
    problem(
      shown(second),
      `a name that differs from \`${first}\` only in capitals`,
      'names that differ in more',
      'rename one of the two',
    ),
  );
  const numbered = pairs(
    notes.filter((n) => /^\d/.test(n.name)),
    (note) => /^0*(\d+)/.exec(note.name)![1]!,
  )
    .filter(([first, second]) => folded(first.name) !== folded(second.name))
    .map(([first, second]) =>
      problem(
        second.file,
        `the number of \`${first.file}\` once more`,
        'a number of its own for each note',
        'give one of the two the next free number, in its name and in links to it',
      ),
    );
  return [...alike, ...numbered];
}

const folded = (name: string): string => name.normalize('NFC').toLowerCase();

/** Each thing that has the same key as one before it, behind the first of them. */
function pairs<T>(all: readonly T[], key: (of: T) => string): [T, T][] {
  const seen = new Map<string, T>();
  return all.flatMap((one): [T, T][] => {
    const first = seen.get(key(one));
    if (first === undefined) seen.set(key(one), one);
    return first === undefined ? [] : [[first, one]];
  });
}

const problem = (file: string, found: string, expected: string, hint: string): Problem => ({
  code: 'name-duplicate',
  file,
  line: 0,
  column: 0,
  found,
  expected,
  hint,
});
