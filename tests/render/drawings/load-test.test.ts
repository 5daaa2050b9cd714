import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LoadTest, loadTest } from '../../../src/render/drawings/load-test.js';
import { elementsOf, expectSound, numberOf, pathPoints, textsOf } from './read-drawing.js';

const rad = Math.PI / 180;
/** Readings as moment in N·m and twist in degrees; the line has a stiffness in N·m/deg and a moment at no twist. */
const test = (points: readonly (readonly [number, number, boolean?])[], stiffness: number, atNone = 0): LoadTest => ({
  name: 'figure-t',
  title: 'Twist of the body',
  load: { symbol: 'T', unit: 'N·m' },
  response: { symbol: 'θ', unit: 'deg' },
  points: points.map(([load, twist, unloading]) => ({ load, response: twist * rad, unloading })),
  line: { slope: rad / stiffness, intercept: (-atNone * rad) / stiffness },
  stiffness: { symbol: 'K', si: stiffness / rad, unit: 'N·m/deg' },
});
const dots = (of: LoadTest) =>
  elementsOf(loadTest(of), 'circle').map((c) => [numberOf(c, 'cx'), numberOf(c, 'cy')] as const);
const regression = (of: LoadTest) =>
  elementsOf(loadTest(of), 'path')
    .filter((p) => numberOf(p, 'strokeWidth') === 0.35)
    .map((p) => pathPoints(String(p.properties['d'])))[2]!;

describe('moment over twist', () => {
  it('names axes, stiffness, and readings on the way back', () => {
    const drawn = loadTest(
      test(
        [
          [350, 0.085],
          [700, 0.17],
          [1400, 0.34],
          [700, 0.18, true],
        ],
        4100,
      ),
    );
    expectSound(drawn);
    for (const text of ['T in N·m', 'θ in °', 'K = 4100 N·m/deg', 'hollow: load taken off'])
      expect(textsOf(drawn)).toContain(text);
  });

  it('puts readings that lie on the line on the line', () => {
    const of = test(
      [
        [410, 0.1],
        [820, 0.2],
        [1230, 0.3],
      ],
      4100,
    );
    const [[x0, y0], [x1, y1]] = regression(of) as [[number, number], [number, number]];
    for (const [x, y] of dots(of)) expect(y).toBeCloseTo(y0 + ((x - x0) / (x1 - x0)) * (y1 - y0), 1);
  });

  it('lets the line pass beside readings that do not lie on it', () => {
    const off = (atNone: number) => {
      const of = test(
        [
          [410, 0.1],
          [1230, 0.3],
        ],
        4100,
        atNone,
      );
      return dots(of)[0]![0] - regression(of)[0]![0];
    };
    expect(off(0)).toBeCloseTo(0, 2);
    expect(off(200)).toBeGreaterThan(1);
    expect(off(-200)).toBeLessThan(-1);
  });

  it('stays within its frame for all readings', () => {
    const reading = fc.tuple(
      fc.integer({ min: -3000, max: 3000 }),
      fc.integer({ min: -900, max: 900 }).map((n) => n / 1000),
      fc.boolean(),
    );
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 1, maxLength: 14 }),
        fc.integer({ min: 200, max: 20_000 }),
        fc.integer({ min: -200, max: 200 }),
        (points, k, c) => expectSound(loadTest(test(points, k, c))),
      ),
      { numRuns: 80 },
    );
  });
});
