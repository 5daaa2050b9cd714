import { expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { textOf } from '../../src/render/markdown.js';
import { comparisonsTable } from '../../src/render/sections/findings.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';
import { all, subjectOf } from './document.js';

const note = (second: string) => `---
kind: engine-assembly
title: Engine measured
rings:
  - { id: top, says: top ring, gaps: [{ id: "1", gap: 0.42 ± 0.02 mm }, { id: "2", gap: ${second} ± 0.02 mm }], maker: { least: 0.348 mm, from: packet of the rings (invented) } }
---
`;

/** What stands in the rows that govern. */
async function governs(second: string): Promise<string[]> {
  const folder = folderWith({ ...workshop, 'notes/050-assembly.md': note(second) });
  const loaded = await load(folder, folder);
  if (!('build' in loaded)) throw new Error(loaded.problems.map((p) => `${p.line} ${p.found}`).join());
  const subject = await subjectOf(loaded as never);
  const one = subject.build.notes.at(-1)!;
  const own = subject.evaluation.findings.filter((f) => f.note === one.name && f.item === 'assembly.ring-gap');
  expect(own).toHaveLength(2);
  const rows = comparisonsTable(one, own, subject).flatMap((e) => all(e, (x) => x.tagName === 'tr'));
  return rows.map((r) => textOf(r as never)).filter((text) => text.includes('governs'));
}

it('marks the value with the least margin among those against one limit', async () => {
  expect(await governs('0.40')).toEqual([expect.stringContaining('0.40')]);
  expect(await governs('0.44')).toEqual([expect.stringContaining('0.42')]);
});
