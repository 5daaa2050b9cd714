import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { textOf } from '../../src/render/markdown.js';
import { ownFigureRegister } from '../../src/render/sections/registers/own-figures.js';
import { folderWith } from '../project/scratch.js';
import { all, subjectOf } from './document.js';

async function rows(limits: string): Promise<string[]> {
  const folder = folderWith({
    'build.md':
      '---\ntitle: One\nvehicle: { make: Examplia, model: One, built: 1984-05, category: MA, registration: VIC }\ncertifier: { name: R. Ansell (invented) }\n---\n\nWords.\n',
    'notes/010-floor.md':
      '---\nkind: body-structure\ntitle: Floor\npapers: [{ file: letter.pdf, shows: letter on plates }]\n---\n\nWords.\n',
    'papers/letter.pdf': '%PDF-1.4',
    'limits.yaml': limits,
  });
  const subject = await subjectOf((await load(folder, folder)) as never);
  return ownFigureRegister(subject).flatMap((e) => all(e, (x) => x.tagName === 'tr').map((x) => textOf(x)));
}

it('tells what was read, what was agreed by letter, and what stands so', async () => {
  const [, read, agreed, stands, ...more] = await rows(
    `figures:
  - { item: body.load, max: "0.9", edition: "3", clause: "2.1", read-by: JO, on: 2026-03-14 }
  - { item: body.thickness-ratio, max: "3", agreed-with: R. Ansell, letter: letter.pdf, on: 2026-03-15 }
confirmed:
  - { item: fasteners.appendix, edition: "4", clause: A.2, read-by: MB, on: 2026-03-16 }
`,
  );
  expect(read).toMatch(/body\.load.*at most 0\.9.*3, 2\.1.*JO.*2026-03-14/);
  expect(agreed).toMatch(/body\.thickness-ratio.*at most 3.*letter letter\.pdf.*agreed with R\. Ansell.*2026-03-15/);
  expect(stands).toMatch(/fasteners\.appendix.*stands so.*4, A\.2.*MB.*2026-03-16/);
  expect(more).toEqual([]);
});

it('is left out where nothing was read', async () => {
  expect(await rows('figures: []\n')).toEqual([]);
});
