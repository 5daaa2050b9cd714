import { expect, it } from 'vitest';
import { load } from '../../../src/app/load.js';
import { examine } from '../../../src/checks/engine/examine.js';
import { shownBy } from '../../../src/checks/engine/shown.js';
import { buildFile, folderWith, pictureHead } from '../../project/scratch.js';

const note = (shown: string, more = '') => `---
kind: body-structure
title: Floor let in
structure-cut: no
pieces:
  - { id: floor, role: bracket, joined-to: 1.20 mm, now: { section: FL 100x3, steel: S355, wall: { value: 3.0 mm${more} } } }
photos:
  - { id: bare, file: weld bare.jpg, shows: The weld bare }
papers:
  - { file: certificate.pdf, shows: certificate of the sheet }
answers:
  body.weld-standard: { answer: AS 1554.1, shown: "${shown}" }
---
`;
const build = (shown: string, more?: string) =>
  folderWith({
    'build.md': buildFile,
    'notes/010-floor.md': note(shown, more),
    'notes/020-roof.md': '---\nkind: general\ntitle: Roof\n---\n',
    'photos/weld bare.jpg': pictureHead,
    'papers/certificate.pdf': 'x',
  });
const problems = async (shown: string, more?: string) =>
  (
    (await load(build(shown, more))).problems as {
      code: string;
      line: number;
      column: number;
      found: string;
      hint?: string;
    }[]
  ).map((p) => [p.code, p.line, p.column, p.found.split(' as ')[0], p.hint]);

it.each([
  ['photo bare', ['photo']],
  ['photo weld bare', ['photo']],
  ['photo weld bare.jpg', ['photo']],
  ['photo photos/weld bare.jpg', ['photo']],
  ['photo 010 bare', ['photo']],
  ['paper certificate', ['paper']],
  ['drawing certificate', ['paper']],
  ['note 020', ['note']],
  ['note 020-roof.md', ['note']],
  ['note build.md', ['build']],
  ['sheet floor', ['sheets']],
  ['sheet thickness-ratio', ['sheets']],
  ['sheet floor/thickness-ratio', ['sheets']],
  ['sheet 010/floor', ['sheets']],
  ['photo bare, paper certificate; sheet floor and note 020', ['photo', 'paper', 'sheets', 'note']],
])('`%s` leads to where it says', async (shown, wanted) => {
  const loaded = await load(build(shown));
  if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
  const { runs } = examine(loaded.build, loaded.rules);
  expect(runs.map((r) => r.id)).toContain('010-floor/floor/thickness-ratio');
  expect(shownBy(shown, loaded.build.notes[0]!, loaded.build, runs).map((s) => s.is)).toEqual(wanted);
});

it.each([
  ['photo bara', 'photo bara', 'did you mean `photo bare`?'],
  ['photo bare, paper certifcate', 'paper certifcate', 'did you mean `paper certificate`?'],
  ['note 030', 'note 030', undefined],
  ['sheet flor', 'sheet flor', 'did you mean `sheet floor`?'],
  ['sheet loo', 'sheet loo', undefined],
  ['page 4', 'page 4', undefined],
  ['certificate', 'certificate', undefined],
])('`%s` leads nowhere, which is told at its place', async (shown, part, hint) => {
  expect(await problems(shown)).toEqual([['reference-missing', 12, 51, `\`${part}\``, hint]]);
});

it('and so does the photo of a measured value', async () => {
  expect(await problems('photo bare', ', photo: bare')).toEqual([]);
  expect(await problems('photo bare', ', photo: wall')).toEqual([
    ['reference-missing', 6, 98, '`photo wall`', undefined],
  ]);
});
