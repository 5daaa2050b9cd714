import { expect, it } from 'vitest';
import { textOf } from '../../src/render/markdown.js';
import { folderWith } from '../project/scratch.js';
import { loaded, subjectOf, treeOf } from './document.js';

/** Whatever a note says is somewhere in the document, also where nothing asks for it. Cases that random builds found. */

const build =
  '---\ntitle: A car made up for tests\nvehicle: { make: Examplia, model: One, built: 1990-06, category: MA, registration: VIC }\noriginal: { mass: 1100 kg }\npeople: [{ id: JO, name: J. O., role: builder }]\ncertifier: { name: R. Ansell }\n---\n';

const pageOf = async (notes: Record<string, string>, files: Record<string, string> = {}) => {
  const folder = folderWith({
    'build.md': build,
    ...files,
    ...Object.fromEntries(
      Object.entries(notes).map(([name, front]) => [`notes/${name}.md`, `---\ntitle: A note\n${front}\n---\nWords.\n`]),
    ),
  });
  return textOf(treeOf(await subjectOf(await loaded(folder)))).replace(/\s+/g, ' ');
};

it('day and person of a block in which nothing is measured', async () => {
  const page = await pageOf({
    '010-visit':
      'kind: inspection\nopen:\n  - { id: photo, says: a photograph, settled: yes, by: letter that came later }\nreleased:\n  - { id: one, note: 010-visit, point: tacked, released: yes, on: 2026-02-19 }',
  });
  expect(page).toContain('letter that came later');
  expect(page).toContain('2026-02-19');
});

it('day and person of measured values stand beside these, once', async () => {
  const page = await pageOf({
    '010-member':
      'kind: body-structure\npieces:\n  - { id: member, role: replacement, now: { section: FL 60x2, wall: 2.0 mm, by: XQ, on: 2026-02-18 } }',
  });
  expect(page.match(/XQ/g)).toHaveLength(1);
});

it('answers of a second note to an item that is asked once, and to one that is not asked', async () => {
  const page = await pageOf({
    '010-suspension': 'kind: suspension\nanswers: { fasteners.locking: { answer: yes, because: nuts at the dampers } }',
    '020-steering':
      'kind: steering\nanswers:\n  fasteners.locking: { answer: yes, because: split pins at the ends }\n  seating.belt-on-seat: { answer: no, because: seats were not touched }',
  });
  expect(page).toContain('nuts at the dampers');
  expect(page).toMatch(/asked once, in note 010[^;]*yes; split pins at the ends/);
  expect(page).toMatch(/not asked\): no; seats were not touched/);
  expect(page.match(/nuts at the dampers/g)).toHaveLength(1);
});

it('a concession that no open finding takes, and one that a later word replaced', async () => {
  const concession = (because: string, on: string, item = 'brakes.front-first') =>
    `  - { item: ${item}, because: ${because}, word: accepted, by: R. Ansell, on: ${on} }`;
  const page = await pageOf({
    '010-brakes': `kind: brakes\nconcessions:\n${concession('the earlier reason', '2026-02-01')}\n${concession('the later reason', '2026-02-03')}\n${concession('for what nobody asks', '2026-02-04', 'seating.belt-on-seat')}`,
  });
  expect(page).toContain('the later reason');
  expect(page).toMatch(/no open finding takes\): the earlier reason; accepted; R\. Ansell; 2026-02-01/);
  expect(page).toMatch(/no open finding takes\): for what nobody asks/);
});

it('judgements on what is not answered yet, on what does not apply and on a paper', async () => {
  const judgement = (id: string, about: string) =>
    `  - { id: ${id}, about: ${about}, of: as it was, words: judged ${id} well, basis: seen, by: JO, on: 2026-03-11 }`;
  const page = await pageOf(
    {
      '010-brakes': `kind: brakes\npapers: [{ file: parts.txt, shows: a list of parts, of: [pad P-17] }]\nanswers: { brakes.tyre-diameter: { answer: not applicable, because: there is none } }\njudgements:\n${judgement('open', 'brakes.stability-control')}\n${judgement('out', 'brakes.tyre-diameter')}\n${judgement('paper', 'paper parts')}`,
    },
    { 'papers/parts.txt': 'parts' },
  );
  for (const id of ['open', 'out', 'paper']) expect(page).toContain(`judged ${id} well`);
  expect(page).toContain('names pad P-17');
});
