import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { memory } from '../../src/project/memory.js';
import { readBuild } from '../../src/project/read.js';
import { buildFile, folderWith } from './scratch.js';

const shapes = new Map([...kinds].map(([id, kind]) => [id, kind.shape]));
const engine = (...lines: string[]) => `---\nkind: engine\ntitle: Engine\n${lines.join('\n')}\n---\n\nWords.\n`;

function setUp() {
  const folder = folderWith({
    'build.md': buildFile,
    'notes/010-a.md': engine('bore: 86.0 mm', 'photos: [{ file: a.jpg, shows: the bore }]'),
    'notes/020-b.md': engine('bore: 87.0 mm'),
    'photos/a.jpg': 'x',
  });
  const recall = memory();
  return {
    folder,
    read: () => readBuild(folder, shapes, folder, recall),
    edit: (path: string, text: string) => writeFileSync(join(folder, path), text),
  };
}

it('reads only what was edited into data again', () => {
  const { read, edit } = setUp();
  const [a, b] = read().build!.notes;
  edit('notes/020-b.md', engine('bore: 88.0 mm'));
  const again = read().build!.notes;
  expect(again[0]!.front).toBe(a!.front);
  expect(again[1]!.front).not.toBe(b!.front);
  expect(again[1]!.data['bore']).toMatchObject({ quantity: { si: 0.088 } });
});

it('gives what a fresh reading gives, after each of several edits and mends', () => {
  const { folder, read, edit } = setUp();
  const plain = (of: ReturnType<typeof readBuild>) =>
    JSON.parse(
      JSON.stringify({
        problems: of.problems,
        notes: of.build?.notes.map((n) => n.data),
        inputs: of.build?.inputs,
        files: [...(of.build?.files ?? [])],
      }),
    );
  const edits: [string, string][] = [
    ['notes/010-a.md', engine('bore: 86.0 kg')],
    ['notes/010-a.md', engine('bore: 86.0 kg', 'stroke: 5')],
    ['notes/010-a.md', engine('bore: 86.5 mm')],
    ['build.md', buildFile.replace('1100 kg', '1150 kg')],
    ['limits.yaml', 'figures: ['],
    ['limits.yaml', 'figures: []'],
  ];
  for (const [path, text] of edits) {
    edit(path, text);
    expect(plain(read())).toEqual(plain(readBuild(folder, shapes, folder)));
  }
});

it('sees a photo go and come although the note stays the same, and names it as the note does', () => {
  const { folder, read, edit } = setUp();
  expect(read().build!.notes[0]!.data.photos![0]!.file).toBe('photos/a.jpg');
  rmSync(join(folder, 'photos/a.jpg'));
  for (const _ of [1, 2])
    expect(read().problems).toMatchObject([{ code: 'photo-missing', line: 5, found: 'no file `a.jpg` in `photos/`' }]);
  edit('photos/a.jpg', 'x');
  expect(read().problems).toEqual([]);
});

it('keeps nothing between two memories', () => {
  const { folder } = setUp();
  const [one, two] = [memory(), memory()].map((recall) => readBuild(folder, shapes, folder, recall).build!);
  expect(two!.notes[0]!.front).not.toBe(one!.notes[0]!.front);
});
