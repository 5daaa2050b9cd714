import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactly, type Value } from '../../../src/calc/value.js';
import { agree } from '../../../src/checks/engine/agreement.js';
import { examineNote } from '../kinds/bench.js';

/** A value stated beside one that follows from other fields of the note. Sizes are made up; volumes and sums by hand. */

const about = async (kind: string, note: string, around = {}) =>
  (await examineNote(kind, note, around)).all('agreement');

describe('two values of one thing', () => {
  const value = (si: number, ...parts: [string, number][]): Value => ({ ...exactly(si, 'm'), parts: new Map(parts) });
  it.each([
    // sqrt(0.3² + 0.4²) = 0.5
    [0.5, true],
    [0.499, true],
    [0.501, false],
  ])('apart by %d with 0.3 and 0.4: %s', (apart, same) => {
    expect(agree(value(10, ['a', 0.3]), value(10 + apart, ['b', 0.4]))).toBe(same);
  });
  it('agree or not whichever stands first, and the better for every doubt about the method', () => {
    const number = fc.double({ min: -1e3, max: 1e3, noNaN: true });
    const one = fc
      .tuple(number, fc.constantFrom('a', 'b', 'c'), number)
      .map(([si, source, u]) => value(si, [source, u]));
    fc.assert(
      fc.property(one, one, fc.double({ min: 0, max: 1e3, noNaN: true }), (a, b, method) => {
        expect(agree(a, b)).toBe(agree(b, a));
        expect(!agree(a, b) || agree(a, b, method)).toBe(true);
        expect(agree(a, a)).toBe(true);
      }),
    );
  });
  it('from one source agree only where the rest allows it', () => {
    expect(agree(value(10, ['a', 0.3]), value(10.2, ['a', 0.3]))).toBe(false);
    expect(agree(value(10, ['a', 0.3]), value(10.2, ['a', 0.3]), 0.2)).toBe(true);
  });
});

// A coil of 13 mm wire, 113 mm across, 5 active: 78.85 GPa · 13⁴ / (8 · 100³ · 5) = 56.3 N/mm.
describe('the rate of a spring on its paper and by its wire', () => {
  const spring = (rate: string, active = '5.0 ± 0.05') =>
    `front: { type: coil, now: { rate: ${rate}, wire: 13.0 ± 0.05 mm, outside: 113 ± 0.2 mm, active: ${active} } }`;
  it.each([
    ['56 ± 0.5 N/mm', 0],
    // 2.44 % of the modulus, 4 · 0.05/13 = 1.5 % of the wire, a quarter of five coils 5 %: about 6 % in all.
    ['53.5 ± 0.5 N/mm', 0],
    ['52 ± 0.5 N/mm', 1],
    ['33 N/mm', 1],
    ['59 ± 0.5 N/mm', 0],
    ['61 ± 0.5 N/mm', 1],
  ])('%s: %d open', async (rate, open) => {
    expect(await about('suspension', spring(rate))).toHaveLength(open);
  });
  it('shows both, with their places', async () => {
    const [found] = await about('suspension', spring('33 N/mm'));
    expect(found).toMatchObject({
      outcome: 'contradicted',
      related: { place: { path: 'front.now.rate' } },
      place: { path: expect.stringMatching(/^front\.now\.(?:wire|outside|active)$/) as string },
    });
    expect(found!.says).toMatch(/calculated as 56.*stated as 33/);
  });
  it('says nothing while one of them is missing', async () => {
    expect(await about('suspension', 'front: { type: coil, now: { rate: 33 N/mm } }')).toEqual([]);
  });
});

// Four cylinders of 86.0 × 86.0 mm: 1998.2 cm3.
describe('the swept volume as stated and from bore and stroke', () => {
  const engine = (capacity: string) =>
    `bore: 86.0 ± 0.05 mm\nstroke: 86.0 ± 0.05 mm\ncylinders: 4\ncapacity: ${capacity}`;
  it.each([
    ['1998 cm3', 0],
    ['2000 cm3', 0],
    // 0.05 mm of bore and stroke are 2.6 cm3 together.
    ['2001 cm3', 1],
    ['1794 cm3', 1],
  ])('%s: %d open', async (capacity, open) => {
    expect(await about('engine', engine(capacity))).toHaveLength(open);
  });
});

describe('other pairs', () => {
  it.each([
    ['mass', 'now: { front: 640 kg, front-left: 322 kg, front-right: 318 kg }', 0],
    // The coarsest usual scales are taken where none are named.
    ['mass', 'now: { front: 640 kg, front-left: 342 kg, front-right: 318 kg }', 0],
    ['mass', 'now: { front: 640 ± 2 kg, front-left: 342 ± 1 kg, front-right: 318 ± 1 kg }', 1],
    // 205/65R15 is 647.5 mm by its size.
    ['wheels-tyres', 'front: { now: { tyre: 205/65R15 94H, diameter: 640 mm } }', 0],
    ['wheels-tyres', 'front: { now: { tyre: 205/65R15 94H, diameter: 584 mm } }', 1],
    // 20 mm less offset on each side widens the track by 40 mm.
    [
      'wheels-tyres',
      'front: { was: { rim: 6Jx15 ET35, track: 1400 mm }, now: { rim: 6Jx15 ET15, track: 1438 mm } }',
      0,
    ],
    [
      'wheels-tyres',
      'front: { was: { rim: 6Jx15 ET35, track: 1400 mm }, now: { rim: 6Jx15 ET15, track: 1410 mm } }',
      1,
    ],
  ])('%s %s: %d open', async (kind, note, open) => {
    expect(await about(kind, note)).toHaveLength(open);
  });
  it.each([
    // Stated in build.md as 1395 mm; tread centres are found to 5 mm.
    ['1399 mm', 0],
    ['1402 mm', 1],
  ])('a track of %s as it came', async (track, open) => {
    const around = { original: { 'track-front': '1395 mm' } };
    expect(await about('wheels-tyres', `front: { was: { track: ${track} } }`, around)).toHaveLength(open);
  });
  it('the track of the axle note and of the wheels note', async () => {
    const notes = { '020-wheels.md': 'kind: wheels-tyres\nrear: { now: { track: 1480 mm } }' };
    expect(await about('rear-axle', 'now: { track: 1440 mm }', { notes })).toHaveLength(1);
    expect(await about('rear-axle', 'now: { track: 1482 mm }', { notes })).toEqual([]);
  });
});
