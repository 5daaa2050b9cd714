import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expanded, type Value } from '../../../src/calc/value.js';
import { exactBound, type Limit } from '../../../src/checks/codes/limit.js';
import { leastFavourable } from '../../../src/checks/engine/least-favourable.js';
import { decide } from '../../../src/checks/engine/verdict.js';
import { examineNote } from '../kinds/bench.js';

/** A list of several places is no mean: each is judged, and the least favourable decides, on whichever side the limit is. */
const maker = (key: string, ends: string) => `${key}: { ${ends}, from: sheet of the maker (invented) }`;
const disc = async (thickness: string, ends: string) =>
  (
    await examineNote(
      'brakes',
      `now: { front: { type: disc, thickness: '${thickness}' } }\nfront-maker: { ${maker('thickness', ends)} }`,
    )
  ).one('brakes.disc-thickness', 'front');

describe('places of one field', () => {
  // Nine places of 12 mm and one of 9.9 mm have a mean of 11.8 ± 0.5 mm.
  it('one that is too thin among many decides', async () => {
    const many = `[${Array(9).fill('12.0').join(', ')}, 9.8] mm`;
    const found = await disc(many, 'least: 10 mm');
    expect(found).toMatchObject({ outcome: 'does-not-conform' });
    expect(found.measured!.si).toBeCloseTo(0.0098, 12);
    expect(found.marks[0]).toBe('least favourable of 10 places, 9.8 mm to 12 mm');
  });

  it.each([
    // By caliper ± 0.1 mm (common practice, no source): at the edge exactly, one each side, in both directions.
    ['[12.0, 10.1] mm', 'least: 10 mm', 'conforms', 0.0101],
    ['[12.0, 10.0] mm', 'least: 10 mm', 'inconclusive', 0.01],
    ['[12.0, 9.8] mm', 'least: 10 mm', 'does-not-conform', 0.0098],
    ['[10.0, 10.2] mm', 'least: 9 mm, greatest: 10.25 mm', 'inconclusive', 0.0102],
    ['[9.2, 12.0] mm', 'least: 9 mm, greatest: 10 mm', 'does-not-conform', 0.012],
    ['[8.0, 9.5] mm', 'least: 9 mm, greatest: 10 mm', 'does-not-conform', 0.008],
  ])('%s against %s: %s', async (list, ends, outcome, si) => {
    const found = await disc(list, ends);
    expect(found.outcome).toBe(outcome);
    expect(found.measured!.si).toBeCloseTo(si, 12);
  });

  it('a wide ± of one place counts there and nowhere else', async () => {
    const found = await disc('[12.00 ± 0.05, 11.0 ± 2.0] mm', 'least: 10 mm');
    expect(found.outcome).toBe('inconclusive');
    expect(expanded(found.measured!)).toBeCloseTo(0.002, 12);
    expect((await disc('[12.00 ± 0.05, 11.0 ± 0.5] mm', 'least: 10 mm')).outcome).toBe('conforms');
  });

  it('a single value is one place', async () => {
    const found = await disc('12.0 mm', 'least: 10 mm');
    expect(found).toMatchObject({ outcome: 'conforms' });
    expect(found.marks.join()).not.toContain('places');
  });
});

describe('what is calculated from places', () => {
  it('a clearance of bore and journal is judged from its least to its greatest', async () => {
    const group = (bore: string, journal: string) =>
      `bearings:\n  - { id: mains, journals: [{ id: a, bore: '${bore}', journal: '${journal}' }], maker: { least: 0.020 mm, greatest: 0.080 mm, from: sheet (invented) } }`;
    const result = async (bore: string, journal: string) =>
      (await examineNote('engine-assembly', group(bore, journal))).one('assembly.oil-clearance', 'mains-a');
    // Means of 60.050 and 60.000 mm give 0.050 mm; the places reach from 0.010 to 0.090 mm.
    const wide = await result('[60.030 ± 0.001, 60.070 ± 0.001] mm', '[59.980 ± 0.001, 60.020 ± 0.001] mm');
    expect(wide.outcome).toBe('does-not-conform');
    expect((await result('[60.049 ± 0.001, 60.051 ± 0.001] mm', '60.000 ± 0.001 mm')).outcome).toBe('conforms');
  });

  it('thicker new metal is compared at its thickest place with the thinnest of the old', async () => {
    const ratio = async (now: string, joined: string) =>
      (
        await examineNote(
          'body-structure',
          `pieces:\n  - { id: a, role: replacement, now: { section: FL 100x2.5, steel: S355, wall: '${now}' }, joined-to: '${joined}' }`,
        )
      ).one('body.thickness-ratio', 'a').measured!.si;
    expect(await ratio('[2.4, 2.6] mm', '[1.2, 1.0] mm')).toBeCloseTo(2.6, 9);
  });

  it('gaps of all stations are judged, the least decides, and the place is that of the gap', async () => {
    const { one } = await examineNote(
      'clearance',
      'places: [{ id: a, moves: member, engine: none, straight: { droop: 60.0 mm, ride: "[55.0, 52.0] mm", bump: 58.0 mm } }]',
    );
    const found = one('clearance.members', 'a');
    expect(found.measured!.si).toBeCloseTo(0.052, 12);
    expect(found.place.path).toBe('places.a.straight.ride');
  });
});

describe('values of any dimension', () => {
  const general = async (list: string, ends: string) =>
    (
      await examineNote(
        'general',
        `measurements: [{ id: a, what: a gap, value: ${list}, ${ends}, document: manual, clause: p. 4, basis: maker }]`,
      )
    ).one('general.limit', 'a').outcome;
  it.each([
    ['"[12.0, 2.0] mm"', 'least: 10 mm', 'does-not-conform'],
    ['"[12.0, 11.0] mm"', 'least: 10 mm', 'conforms'],
    ['"[2.0, 12.0] mm"', 'greatest: 10 mm', 'does-not-conform'],
    ['"[2.0, 9.0] mm"', 'greatest: 10 mm', 'conforms'],
  ])('%s against %s %s', async (list, ends, outcome) => {
    expect(await general(list, ends)).toBe(outcome);
  });
});

describe('the least favourable of any places', () => {
  const value = (si: number, u: number): Value => ({
    si,
    unit: 'm',
    parts: new Map([['a', u]]),
    assumed: new Set(),
    origin: { kind: 'given', text: '' },
  });
  const place = fc.record({ si: fc.integer({ min: 0, max: 40 }), u: fc.integer({ min: 0, max: 10 }) });
  const limits = fc
    .record({ min: fc.option(fc.integer({ min: 0, max: 40 })), max: fc.option(fc.integer({ min: 0, max: 40 })) })
    .filter(({ min, max }) => min !== null || max !== null)
    .map(
      ({ min, max }): Limit => ({
        unit: 'm',
        document: 'made up',
        basis: 'maker',
        ...(min === null ? {} : { min: exactBound(min) }),
        ...(max === null ? {} : { max: exactBound(max) }),
      }),
    );

  it('conforms only where each place conforms, and does not where one does not, in any order', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 6 }), limits, (all, limit) => {
        const places = all.map(({ si, u }) => value(si, u));
        const of = (list: readonly Value[]) =>
          decide(leastFavourable({ ...list[0]!, places: list }, limit), limit).result;
        const each = places.map((one) => decide(one, limit).result);
        const worst = (['against', 'unclear'] as const).find((r) => each.includes(r)) ?? 'met';
        expect(of(places)).toBe(worst);
        expect(of(places.toReversed())).toBe(worst);
      }),
    );
  });
});
