import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AxleLoads, axleLoads } from '../../../src/render/drawings/axle-loads.js';
import { dashOf, elementsOf, expectSound, numberOf, textsOf } from './read-drawing.js';

const kg = (symbol: string, si: number) => ({ symbol, si, unit: 'kg' });
const mm = (symbol: string, x: number) => ({ symbol, si: x / 1000, unit: 'mm' });
const loads = (f0: number, r0: number, f1: number, r1: number, rating?: number): AxleLoads => ({
  name: 'figure-m',
  title: 'Axle loads as received and as built',
  groups: [
    {
      says: 'Front axle',
      bars: [
        { says: 'as received', before: true, size: kg('m_{f,o}', f0) },
        { says: 'as built', size: kg('m_{f,n}', f1) },
      ],
      rating: rating === undefined ? undefined : kg('m_{A}', rating),
    },
    {
      says: 'Rear axle',
      bars: [
        { says: 'as received', before: true, size: kg('m_{r,o}', r0) },
        { says: 'as built', size: kg('m_{r,n}', r1) },
      ],
    },
  ],
  base: {
    wheelbase: mm('L', 2600),
    centres: [
      { says: 'as received', before: true, behindFront: mm('a_{o}', (2600 * r0) / (f0 + r0)) },
      { says: 'as built', behindFront: mm('a_{n}', (2600 * r1) / (f1 + r1)) },
    ],
  },
});
const bars = (of: AxleLoads) =>
  elementsOf(axleLoads(of), 'rect').map((r) => ({
    from: numberOf(r, 'x'),
    long: numberOf(r, 'width'),
    fill: r.properties['fill'],
  }));

describe('axle loads before and after', () => {
  it('names every mass, the rating, the wheelbase and the place of the centre of mass', () => {
    const drawn = axleLoads(loads(780, 620, 810, 640, 950));
    expectSound(drawn);
    for (const text of [
      'mf,o = 780 kg',
      'mr,n = 640 kg',
      'rating mA = 950 kg',
      'L = 2600 mm',
      'ao = 1151 mm as received',
      'an = 1148 mm as built',
      'front',
      'rear',
    ])
      expect(textsOf(drawn)).toContain(text);
  });

  it('draws bars as long as the masses are large, old and new apart without colour', () => {
    const [a, b, c, d] = bars(loads(800, 600, 400, 1200));
    expect(a!.long / c!.long).toBeCloseTo(8 / 6, 2);
    expect(b!.long / d!.long).toBeCloseTo(4 / 12, 2);
    expect(a!.fill).toBe('#fff');
    expect(b!.fill).toBe('url(#figure-m-rising)');
  });

  it('puts the rating at its mass', () => {
    const of = loads(800, 600, 950, 600, 950);
    const mark = elementsOf(axleLoads(of), 'path').find((p) => dashOf(p) === '1.6 1')!;
    const after = bars(of)[1]!;
    expect(Number(/^M([\d.]+)/.exec(String(mark.properties['d']))![1])).toBeCloseTo(after.from + after.long, 2);
  });

  it('puts the centre of mass in the middle where both axles carry alike', () => {
    const drawn = axleLoads(loads(700, 700, 700, 700));
    const marks = elementsOf(drawn, 'circle')
      .filter((c) => numberOf(c, 'r') === 2.4)
      .map((c) => numberOf(c, 'cx'));
    const wheels = elementsOf(drawn, 'circle')
      .filter((c) => numberOf(c, 'r') === 9)
      .map((c) => numberOf(c, 'cx'));
    for (const x of marks) expect(x).toBeCloseTo((wheels[0]! + wheels[1]!) / 2, 2);
  });

  it('stays within its frame for all masses', () => {
    const mass = fc.integer({ min: 1, max: 40_000 }).map((n) => n / 10);
    fc.assert(
      fc.property(mass, mass, mass, mass, fc.option(mass, { nil: undefined }), (a, b, c, d, rating) =>
        expectSound(axleLoads(loads(a, b, c, d, rating))),
      ),
      { numRuns: 80 },
    );
  });
});
