import { expect, it } from 'vitest';
import { shapes } from '../../src/app/load.js';
import { readBuild } from '../../src/project/read.js';
import { buildFile, folderWith } from './scratch.js';

const note = (more = '') => `---\nkind: general\ntitle: Roof\n${more}---\n`;
const problems = (files: Record<string, string>) => {
  const folder = folderWith({ 'build.md': buildFile, ...files });
  return readBuild(folder, shapes, folder).problems.map((p) => `${p.file}: ${p.found}`);
};

it.each([
  [
    'one number',
    { 'notes/010-roof.md': note(), 'notes/010-doors.md': note() },
    ['notes/010-roof.md: the number of `notes/010-doors.md` once more'],
  ],
  [
    'one number, written otherwise',
    { 'notes/010-roof.md': note(), 'notes/10-doors.md': note() },
    ['notes/10-doors.md: the number of `notes/010-roof.md` once more'],
  ],
  [
    'names of one number that differ in capitals',
    { 'notes/roof.md': note(), 'notes/Roof.md': note() },
    ['notes/roof.md: a name that differs from `notes/Roof.md` only in capitals'],
  ],
  [
    'photos whose names differ in capitals',
    {
      'notes/010-roof.md': note(
        'photos:\n  - { file: a.jpg, shows: The roof }\n  - { file: A.jpg, shows: The roof again }\n',
      ),
      'photos/a.jpg': 'x',
      'photos/A.jpg': 'y',
    },
    ['photos/A.jpg: a name that differs from `photos/a.jpg` only in capitals'],
  ],
  [
    'queries whose names differ in capitals',
    {
      'notes/010-roof.md': note(),
      'queries/q.md': '---\nasked-on: 2026-03-14\nby: RA\n---\nWhy?\n',
      'queries/Q.md': '---\nasked-on: 2026-03-14\nby: RA\n---\nWhy?\n',
    },
    expect.arrayContaining([expect.stringContaining('only in capitals')]),
  ],
])('%s: refused, with both files named', (_, files, expected) => {
  expect(problems(files as unknown as Record<string, string>)).toEqual(expected);
});

it('of other names there is nothing to say', () => {
  expect(
    problems({
      'notes/010-roof.md': note(),
      'notes/0100-roof.md': note(),
      'notes/011-roof.md': note(),
      'notes/roof.md': note(),
      'notes/sides.md': note(),
    }),
  ).toEqual([]);
});
