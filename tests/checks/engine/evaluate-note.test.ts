import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { load } from '../../../src/app/load.js';
import { memory, textOf } from '../../../src/project/memory.js';
import { workshop } from '../../commands/workshop.js';
import { folderWith } from '../../project/scratch.js';

function setUp() {
  const build = folderWith(workshop);
  const recall = memory();
  const edit = (path: string, from: string, to: string) => {
    const before = readFileSync(join(build, path), 'utf8');
    expect(before, path).toContain(from);
    writeFileSync(join(build, path), before.replace(from, to));
  };
  return { build, edit, again: () => load(build, build, recall), afresh: () => load(build, build) };
}

const told = (loaded: Awaited<ReturnType<typeof load>>) =>
  'build' in loaded
    ? JSON.parse(
        textOf({
          ...loaded.evaluation,
          raised: loaded.evaluation.raised.map((r) => [r.item.id, r.notes.map((n) => n.name)]),
        }),
      )
    : loaded.problems;

it('finds after every edit what a fresh reading finds', { timeout: 120_000 }, async () => {
  const { build, edit, again, afresh } = setUp();
  const edits: [string, () => void][] = [
    ['nothing', () => {}],
    ['a measured value', () => edit('notes/020-crossmember.md', '2.48 mm', '2.44 mm')],
    ['a fact that another note reads', () => edit('notes/010-engine.md', '6200 rpm', '7400 rpm')],
    [
      'lines above a fact, so that places move',
      () => edit('notes/010-engine.md', 'kind: engine\n', 'kind: engine\n# a remark\n# and another\n'),
    ],
    ['the uncertainty of an instrument', () => edit('build.md', 'uncertainty: 0.03 mm', 'uncertainty: 0.05 mm')],
    ['a load case', () => edit('build.md', 'force: 1.4 kN', 'force: 2.8 kN')],
    ['the place of registration', () => edit('build.md', 'registration: VIC', 'registration: NSW')],
    [
      'a figure of the own copy',
      () =>
        writeFileSync(
          join(build, 'limits.yaml'),
          'figures:\n  - { item: body.thickness-ratio, max: "3", edition: "3", clause: "2.1", read-by: JO, on: 2026-03-14 }\n',
        ),
    ],
    ['a note goes', () => renameSync(join(build, 'notes/025-gearbox.md'), join(build, 'gearbox.md'))],
    ['it comes back', () => renameSync(join(build, 'gearbox.md'), join(build, 'notes/025-gearbox.md'))],
    ['a typing error', () => edit('notes/020-crossmember.md', '2.44 mm', '2.44 kg')],
    ['and its mend', () => edit('notes/020-crossmember.md', '2.44 kg', '2.44 mm')],
  ];
  for (const [what, change] of edits) {
    change();
    expect(told(await again()), what).toEqual(told(await afresh()));
  }
});

it('gives the very sheets again where nothing differs that a note rests on', async () => {
  const { edit, again } = setUp();
  const runs = async (note: string) => {
    const loaded = await again();
    if (!('build' in loaded)) throw new Error('cannot be read');
    return loaded.evaluation.runs.filter((run) => run.id.startsWith(note));
  };
  const [crossmember, driveline] = [await runs('020'), await runs('030')];
  edit('notes/020-crossmember.md', '2.48 mm', '2.44 mm');
  const now = await runs('030');
  expect(now.length).toBeGreaterThan(0);
  now.forEach((run, i) => expect(run).toBe(driveline[i]));
  expect((await runs('020')).every((run) => crossmember.includes(run))).toBe(false);
  edit('notes/010-engine.md', '6200 rpm', '7400 rpm');
  expect((await runs('030')).every((run) => driveline.includes(run))).toBe(false);
});
