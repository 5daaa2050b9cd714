import { describe, expect, it } from 'vitest';
import { load, shapes } from '../../../src/app/load.js';
import { doubtsOf } from '../../../src/checks/engine/doubts.js';
import { kinds } from '../../../src/checks/kinds/index.js';
import { readBuild } from '../../../src/project/read.js';
import { textOf } from '../../../src/render/markdown.js';
import { openItems } from '../../../src/render/sections/open-items.js';
import { gusset } from '../../commands/run.js';
import { workshop } from '../../commands/workshop.js';
import { buildFile, folderWith } from '../../project/scratch.js';
import { subjectOf } from '../../render/document.js';

/** The usual ranges are common practice, no source. */

const note = (wall: string, joined = '1.20 mm') => `---
kind: body-structure
title: Floor let in
structure-cut: no
pieces:
  - { id: floor, role: bracket, joined-to: ${joined}, now: { section: FL 100x3, steel: S355, wall: ${wall} } }
---

Let in.
`;
const shaft = (field: string) => `---\nkind: driveline\ntitle: Shaft\nshafts: one\n${field}\n---\n\nMade.\n`;

async function doubts(text: string, build = buildFile) {
  const loaded = await load(folderWith({ 'build.md': build, 'notes/010-a.md': text }));
  if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
  return loaded.evaluation.doubts.map(({ note, place, found, expected, hint }) => [
    note,
    place.path,
    place.line,
    found,
    expected,
    hint,
  ]);
}

describe('a slip of the unit or of the point is pointed out at its place', () => {
  it.each([
    ['metres for millimetres', '2.48 m', 'did you mean mm? (a unit a thousand times too large)'],
    ['inches for millimetres', '2.48 in', 'did you mean mm? (millimetres typed as inches)'],
    ['millimetres for inches', '0.098 mm', 'did you mean in? (inches typed as millimetres)'],
    ['the point too far right', '24.8 mm', 'did you mean mm?'],
    ['centimetres for millimetres', '2.48 cm', 'did you mean mm? (the decimal point one place too far right)'],
    ['readings in metres', "'[2.47, 2.48] m'", 'did you mean mm? (a unit a thousand times too large)'],
  ])('%s: %s', async (_, written, hint) => {
    const [doubt, ...more] = await doubts(note(written));
    expect(more).toEqual([]);
    if (written === '24.8 mm')
      return expect(doubt?.[5]).toBe('perhaps the decimal point one place too far right; it would be 2.48 mm');
    expect(doubt).toEqual([
      '010-a',
      'pieces.floor.now.wall',
      6,
      written.replaceAll("'", ''),
      'something from 0.4 mm to 20 mm',
      hint,
    ]);
  });

  it.each([
    ['8.5 mm', 'did you mean cm? (the decimal point one place too far left)'],
    ['850 mm', 'perhaps the decimal point one place too far right; it would be 85 mm'],
    ['85 m', 'did you mean mm? (a unit a thousand times too large)'],
  ])('length engaged of a spline: %s', async (written, hint) => {
    expect(await doubts(shaft(`spline-engaged: ${written}`))).toEqual([
      ['010-a', 'spline-engaged', 5, written, 'something from 9 mm to 300 mm', hint],
    ]);
    expect(await doubts(shaft('spline-engaged: 85 mm'))).toEqual([]);
  });

  it('thread engaged, of which only a typical value is told', async () => {
    const link = (engaged: string) =>
      doubts(`---\nkind: suspension-link\ntitle: Links\nlinks: [{ id: left, engaged-a: ${engaged} }]\n---\n`);
    expect(await link('35 mm')).toEqual([]);
    expect((await link('350 mm')).map((d) => d.slice(3))).toEqual([
      ['350 mm', 'something near 30 mm', 'perhaps the decimal point one place too far right; it would be 35 mm'],
    ]);
    expect((await link('3.5 mm')).map((d) => d[5])).toEqual([
      'did you mean cm? (the decimal point one place too far left)',
    ]);
    expect((await link("'[35, 350, 35] mm'")).map((d) => d[3])).toEqual(['[35, 350, 35] mm']);
  });

  it('a slope, whichever way', async () => {
    const pinion = (slope: string) => doubts(shaft(`stations: [{ id: ride, pinion: ${slope} }]`));
    for (const fine of ['2.0 deg nose up', '14.9 deg nose down', '15 deg nose up', '0 deg level'])
      expect(await pinion(fine)).toEqual([]);
    for (const slip of ['20.0 deg nose up', '20.0 deg nose down', '15.1 deg nose up'])
      expect((await pinion(slip)).map((d) => [d[1], d[3], d[4]])).toEqual([
        ['stations.ride.pinion', slip, '15 deg at most'],
      ]);
  });

  it('kilograms as newtons, bar as kilopascals', async () => {
    const engine = (capacity: string) => doubts(`---\nkind: engine\ntitle: Engine\nmount-capacity: ${capacity}\n---\n`);
    expect(await engine('4.2 kN')).toEqual([]);
    expect((await engine('420 N')).map((d) => d[5])).toEqual(['did you mean kgf? (kilograms typed as newtons)']);
    const bench = '---\nkind: engine-assembly\ntitle: Bench\noil-pressure: [{ id: hot, pressure: 3.5 kPa }]\n---\n';
    expect((await doubts(bench)).map((d) => d[5])).toEqual(['did you mean bar? (bar typed as kilopascals)']);
  });

  it('in build.md', async () => {
    expect(
      (await doubts(note('2.48 mm'), buildFile.replace('mass: 1100 kg', 'mass: 1.1 kg'))).map((d) => [
        d[0],
        d[1],
        d[5],
      ]),
    ).toEqual([['build', 'original.mass', 'did you mean t? (a unit a thousand times too small)']]);
  });
});

it.each(['0.6 mm', '0.4 mm', '12 mm', '20 mm', '0 mm', '0.1 in', '6000 km'])(
  '%s is usual, or no slip explains it',
  async (wall) => {
    expect(await doubts(note(wall))).toEqual([]);
  },
);

it.each([
  ['a small workshop', () => folderWith(workshop)],
  ['the demo', () => 'builds/sedge'],
])('has nothing to say of the values of %s', (_, folder) => {
  const { build } = readBuild(folder(), shapes);
  const from = performance.now();
  expect(doubtsOf(build!, kinds)).toEqual([]);
  expect(performance.now() - from).toBeLessThan(1000);
});

it('stands in check and in the document, and no finding, outcome or exit code rests on it', async () => {
  const folder = folderWith({ 'build.md': buildFile, 'notes/010-a.md': note('2.48 m', '1.20 m') });
  const loaded = await load(folder);
  if (!('build' in loaded)) throw new Error('not read');
  expect(loaded.evaluation.doubts).toHaveLength(2);
  expect(loaded.evaluation.findings.find((f) => f.item === 'body.thickness-ratio')).toMatchObject({
    outcome: 'within-usual-practice',
  });
  const text = await gusset('check', folder, '--allow', 'all');
  expect(text.code).toBe(0);
  expect(text.out).toContain(
    'pieces.floor.now.wall: found 2.48 m, expected something from 0.4 mm to 20 mm; did you mean mm?',
  );
  expect(JSON.parse((await gusset('check', folder, '--format', 'json')).out).doubts).toHaveLength(2);
  expect(
    JSON.parse((await gusset('check', folder, '--format', 'sarif')).out).runs[0].invocations[0]
      .toolExecutionNotifications,
  ).toHaveLength(2);
  expect(
    JSON.parse(
      (
        await gusset(
          'check',
          folderWith({ 'build.md': buildFile, 'notes/010-a.md': note('2.48 mm') }),
          '--format',
          'json',
        )
      ).out,
    ).doubts,
  ).toBeUndefined();
  expect(textOf(openItems(await subjectOf(loaded)))).toContain('Values to look at again');
});
