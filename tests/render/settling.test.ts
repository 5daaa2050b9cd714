import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { textOf } from '../../src/render/markdown.js';
import { comparisonsTable } from '../../src/render/sections/findings.js';
import { openItems } from '../../src/render/sections/open-items.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';
import { subjectOf } from './document.js';

const note = `---
kind: brakes
title: Discs
now: { front: { type: disc, thickness: "[20.05, 20.9] mm" } }
front-maker: { thickness: { least: 20 mm, from: sheet (invented) } }
---
`;

it('the document tells what would have to hold beside the outcome, and what would settle it among the open items', async () => {
  const folder = folderWith({ ...workshop, 'notes/050-discs.md': note });
  const loaded = await load(folder, folder);
  if (!('build' in loaded)) throw new Error(loaded.problems.map((p) => `${p.line} ${p.found}`).join());
  const subject = await subjectOf(loaded as never);
  const own = subject.evaluation.findings.filter((f) => f.item === 'brakes.disc-thickness' && f.note === '050-discs');
  const row = comparisonsTable(subject.build.notes.at(-1)!, own, subject)
    .map((e) => textOf(e as never))
    .join(' ');
  expect(row).toContain('conforms only if at least 20.1');
  expect(row).toContain('least favourable of 2 places, 20.05 mm to 20.9 mm');
  const open = textOf(openItems(subject) as never);
  expect(open).toContain('What would settle the inconclusive findings');
  expect(open).toMatch(
    /Thickness of the front discs, the least, measured more closely \(now\.front\.thickness of 050-discs\), would settle \d+ of \d+ inconclusive finding/,
  );
});
