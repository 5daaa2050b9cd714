import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { memory, textOf } from '../../src/build/memory.js';
import { load } from '../../src/commands/load.js';

/** What a memory gives is compared with what is found without one, after each of many edits. */

function workshop() {
  const folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const build = join(folder, 'sedge');
  cpSync(new URL('../../builds/sedge', import.meta.url).pathname, build, { recursive: true });
  const recall = memory();
  const edit = (path: string, change: (text: string) => string) => {
    const before = readFileSync(join(build, path), 'utf8');
    expect(change(before), path).not.toBe(before);
    writeFileSync(join(build, path), change(before));
  };
  return { build, edit, again: () => load(build, build, recall), afresh: () => load(build, build) };
}

const told = (loaded: Awaited<ReturnType<typeof load>>) => ('build' in loaded ? JSON.parse(textOf({ ...loaded.evaluation, raised: loaded.evaluation.raised.map((r) => [r.item.id, r.notes.map((n) => n.name)]) })) : loaded.problems);

it('finds after every edit what a fresh reading finds', { timeout: 120_000 }, async () => {
  const { build, edit, again, afresh } = workshop();
  const edits: [string, () => void][] = [
    ['nothing', () => {}],
    ['a measured value', () => edit('notes/020-crossmember.md', (t) => t.replace('2.48 mm', '2.44 mm'))],
    ['a fact that another note reads', () => edit('notes/010-engine.md', (t) => t.replace(/^torque:.*$/m, 'torque: 260 N·m'))],
    ['lines above a fact, so that places move', () => edit('notes/010-engine.md', (t) => t.replace('kind: engine\n', 'kind: engine\n# a remark\n# and another\n'))],
    ['the uncertainty of an instrument', () => edit('build.md', (t) => t.replace('uncertainty: 0.03 mm', 'uncertainty: 0.05 mm'))],
    ['a load case', () => edit('build.md', (t) => t.replace('force: 1.4 kN', 'force: 2.8 kN'))],
    ['the place of registration', () => edit('build.md', (t) => t.replace('registration: VIC', 'registration: NSW'))],
    ['a figure of the own copy', () => writeFileSync(join(build, 'limits.yaml'), 'figures:\n  - { item: body.thickness-ratio, max: 3, edition: "3", clause: "2.1", read-by: JO, on: 2026-03-14 }\n')],
    ['a note goes', () => renameSync(join(build, 'notes/010-engine.md'), join(build, 'engine.md'))],
    ['it comes back', () => renameSync(join(build, 'engine.md'), join(build, 'notes/010-engine.md'))],
    ['a typing error', () => edit('notes/020-crossmember.md', (t) => t.replace('2.44 mm', '2.44 kg'))],
    ['and its mend', () => edit('notes/020-crossmember.md', (t) => t.replace('2.44 kg', '2.44 mm'))],
  ];
  for (const [what, change] of edits) {
    change();
    expect(told(await again()), what).toEqual(told(await afresh()));
  }
});

it('gives the very findings again where nothing differs that a note rests on', async () => {
  const { edit, again } = workshop();
  const findings = async () => {
    const loaded = await again();
    if (!('build' in loaded)) throw new Error('cannot be read');
    return loaded.evaluation.runs;
  };
  const before = await findings();
  edit('notes/020-crossmember.md', (t) => t.replace('2.48 mm', '2.44 mm'));
  const after = new Set(await findings());
  expect(before.filter((run) => run.id.startsWith('030-') && !after.has(run))).toEqual([]);
  expect(before.filter((run) => run.id.startsWith('030-')).length).toBeGreaterThan(0);
  expect(before.some((run) => run.id === '020-crossmember/crossmember/thickness-ratio' && !after.has(run))).toBe(true);
});
