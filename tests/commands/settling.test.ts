import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { findingsJson } from '../../src/app/results/findings-json.js';
import { summaryText } from '../../src/commands/text/summary-text.js';
import { buildFile, folderWith } from '../project/scratch.js';

const note = `---
kind: brakes
title: Discs
now: { front: { type: disc, thickness: 20.05 mm }, rear: { type: disc, thickness: 20.05 mm } }
front-maker: { thickness: { least: 20 mm, from: sheet (invented) } }
rear-maker: { thickness: { least: 25 mm, from: sheet (invented) } }
---

Words.
`;

it('terminal and JSON tell what would settle what is inconclusive, and what would have to hold', async () => {
  const folder = folderWith({ 'build.md': buildFile, 'notes/010-a.md': note });
  const loaded = await load(folder, folder);
  if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
  const text = summaryText(loaded.build, loaded.evaluation, { all: false, width: 60, colour: false }).replace(
    /\s+/g,
    ' ',
  );
  expect(text).toContain(
    'What would settle the inconclusive findings Thickness of the front discs, the least, measured more closely (`now.front.thickness` of 010-a), would settle 1 of 1 inconclusive finding: 010 ',
  );
  expect(text).toContain('conforms only if at least 20.1 mm');
  const json = findingsJson(loaded.build, loaded.evaluation);
  const ids = json.findings.filter((f) => f.outcome === 'inconclusive').map((f) => f.id);
  expect(json.inconclusive).toEqual([
    {
      settledBy: ['thickness of the front discs, the least, measured more closely (`now.front.thickness` of 010-a)'],
      findings: ids,
    },
  ]);
  expect(json.findings.find((f) => f.id === ids[0])?.onlyIf).toMatch(/^conforms only if at least 20\.1/);
});
