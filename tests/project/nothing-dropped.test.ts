import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { buildFile, folderWith } from './scratch.js';

/**
 * Nothing that was typed is dropped or read as something else: the cases as people typed them, through the real reader. Each
 * has its rule tested at its edges elsewhere: quantities in tests/units, values in tests/checks/engine/values.test.ts and
 * typed-values.test.ts, limits in tests/checks/codes/own-copy.test.ts, ranges in field-ranges.test.ts.
 */
async function tried(kind: string, fields: string, limits?: string) {
  const folder = folderWith({
    'build.md': buildFile,
    'notes/010-a.md': `---\nkind: ${kind}\ntitle: Tried\n${fields}\n---\n\nWords.\n`,
    ...(limits === undefined ? {} : { 'limits.yaml': limits }),
  });
  return load(folder, folder);
}
const problems = async (kind: string, fields: string, limits?: string) =>
  (await tried(kind, fields, limits)).problems.map((p) => `${p.file}:${p.line}:${p.column} ${p.found}`);

const general = async (list: string, ends: string) => {
  const loaded = await tried(
    'general',
    `measurements: [{ id: a, what: a gap, value: ${list}, ${ends}, document: manual, clause: p. 4, basis: maker }]`,
  );
  if (!('build' in loaded)) return loaded.problems.map((p) => p.found).join();
  return loaded.evaluation.findings.find((f) => f.item === 'general.limit')!.outcome;
};

describe('a list keeps unit, ± and direction of each reading', () => {
  it.each([
    ['[40 mm, 40 in, 40 in]', 'greatest: 45 mm', 'does-not-conform'],
    ['[40 mm, 40 mm, 40 mm]', 'greatest: 45 mm', 'conforms'],
    ['[40 mm, 41 ± 500 mm]', 'greatest: 45 mm', 'inconclusive'],
    ['[40 mm, 41 ± 1 mm]', 'greatest: 45 mm', 'conforms'],
    ['[40, 41 mm]', 'greatest: 45 mm', 'conforms'],
    ['"[40, 41] mm"', 'greatest: 45 mm', 'conforms'],
  ])('%s against %s %s', async (list, ends, outcome) => {
    expect(await general(list, ends)).toBe(outcome);
  });

  it('[40 mm, 40 kg] is an error at the kilogram', async () => {
    expect(await problems('driveline', 'tube-diameter: [40 mm, 40 kg]')).toEqual([
      'notes/010-a.md:4:27 kg, which is a mass',
    ]);
  });

  it('[2.9 deg nose up, 2.9 deg nose down] is level within its spread, and not 2.9 deg', async () => {
    const loaded = await tried('driveline', 'stations: [{ id: ride, shaft: [2.9 deg nose up, 2.9 deg nose down] }]');
    if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
    const [{ shaft }] = loaded.build.notes[0]!.data['stations'] as [
      { shaft: { quantity: { si: number; spread: number } } },
    ];
    expect(shaft.quantity.si).toBe(0);
    // JCGM 100:2008, 4.2.3: s/√n = 2.9 deg, times Student's t for one degree of freedom.
    expect(shaft.quantity.spread).toBeGreaterThan((2.9 * Math.PI) / 180);
  });
});

const figure = (bounds: string, on = '2026-01-02') =>
  `figures:\n  - { item: wheels.track, ${bounds}, edition: "3", clause: "2.1", read-by: JO, on: ${on} }\n`;
const limits = (text: string) => problems('wheels-tyres', 'nut-torque: 110 N·m', text);

describe('a limit of the builder', () => {
  it.each([
    ['a bare number', 'max: 25'],
    ['a mass', 'max: 25 kg'],
    ['a name of a mass', 'max: original_mass'],
  ])('%s for a length is an error', async (_, bounds) => {
    expect(await limits(figure(bounds))).toEqual([expect.stringMatching(/^limits\.yaml:2:32 a (mass|ratio)/)]);
  });

  it.each(['3/4 in', '1-1/8 in', '25 mm'])('%s is a length', async (text) => {
    expect(await limits(figure(`max: ${text}`))).toEqual([]);
  });

  it('two figures, `min` beside `above`, and a day that is still to come are errors', async () => {
    const one = figure('max: 25 mm');
    expect(await limits(one + one.split('\n')[1]!)).toEqual([
      expect.stringMatching(
        /^limits\.yaml:3:13 a second entry for `wheels\.track`; the first stands at limits\.yaml:2:13/,
      ),
    ]);
    expect(await limits(figure('min: 1 mm, above: 2 mm'))).toEqual([
      expect.stringMatching(/`above:` beside `min:` at limits\.yaml:2:32/),
    ]);
    expect(await limits(figure('max: 25 mm', '2999-01-01'))).toEqual([
      expect.stringMatching(/2999-01-01, which is still to come/),
    ]);
  });

  it('an own item with the id of a code is an error', async () => {
    const own =
      'items:\n  - { id: wheels.track, kind: limit, title: Own track, asks: Own words., section: own, rests: { document: sheet, basis: own-copy }, raised-by: [mass], unit: mm, cases: [{ max: 40 mm }] }\n';
    expect(await limits(own)).toEqual([
      expect.stringMatching(/^limits\.yaml:2:11 the id `wheels\.track`, which an item of/),
    ]);
  });
});

describe('an instrument', () => {
  it('that is not declared is an error with the nearest one', async () => {
    const loaded = await tried('driveline', 'tube-diameter: { value: 76.2 mm, with: calliper-1 }');
    expect(loaded.problems).toMatchObject([{ line: 4, hint: 'did you mean `caliper-1`?' }]);
  });
});

describe('an absurd value is an error of its field', () => {
  it.each([
    ['exhaust', 'noise: { now: -88.9 dB(A) }'],
    ['clearance', 'lock-left: 362.9 deg'],
    ['wheels-tyres', 'front: { now: { track: -1400 mm } }'],
  ])('%s %s', async (kind, field) => {
    expect(await problems(kind, field)).toEqual([expect.stringContaining('which cannot be')]);
  });
});
