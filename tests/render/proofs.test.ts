import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { textOf } from '../../src/render/markdown.js';
import { folderWith } from '../project/scratch.js';
import { all, loaded, subjectOf, treeOf } from './document.js';

/** The document says which photo shows which part, and counts none for what it does not name. */

const picture = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#888' } })
  .jpeg()
  .toBuffer();
const digest = createHash('sha256').update(picture).digest('hex');
const folder = () =>
  folderWith({
    'build.md':
      '---\ntitle: A car made up for tests\nvehicle: { make: Examplia, model: One, built: 1990-06, category: MA, registration: VIC }\noriginal: { mass: 1100 kg }\ncertifier: { name: R. Ansell }\n---\n',
    'photos/down.jpg': picture,
    'photos/disc.jpg': picture,
    'notes/010-brakes.md': `---
kind: brakes
title: Brakes
stages: { dismantled: 2026-03-02, assembled: 2026-03-10, tested: 2026-03-20 }
photos:
  - { file: down.jpg, shows: hose at droop, stage: assembled, taken-on: 2026-03-10, proves: [hoses-at-ends droop] }
  - { file: disc.jpg, shows: a disc, stage: assembled, taken-on: 2026-03-10 }
judgements:
  - { id: hose, about: photo down, of: hose at droop, sha256: ${digest}, words: hose has slack, basis: seen, by: R. Ansell, on: 2026-03-11 }
---

Words.
`,
  });

it('in the table of records, and a judgement beside it', async () => {
  const tree = treeOf(await subjectOf(await loaded(folder())));
  const rows = all(tree, (e) => e.tagName === 'tr').map((e) => textOf(e).replace(/\s+/g, ' '));
  const row = rows.find((text) => text.includes('Hoses at full droop') && text.includes('part missing'))!;
  expect(row).toMatch(/droop: photo 010 down.*bump: not shown.*left lock: not shown.*right lock: not shown/);
  expect(row).not.toContain('photo 010 disc');
  expect(row).toContain('Judged by R. Ansell, certifying engineer, on 2026-03-11, as seen: hose has slack');
  const leak = rows.find((text) => text.includes('Every joint dry') && text.includes('not shown'))!;
  expect(leak).not.toContain('photo 010 disc');
});
