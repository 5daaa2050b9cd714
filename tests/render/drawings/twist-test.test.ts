import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twistTest, type TwistTest } from '../../../src/render/drawings/twist-test.js';
import { elementsOf, expectSound, numberOf, pathPoints, textsOf } from './read-drawing.js';

const rad = Math.PI / 180;
const test = (points: readonly (readonly [number, number, boolean?])[], stiffness: number, intercept = 0): TwistTest => ({
  name: 'figure-t',
  title: 'Twist of the body',
  moment: { symbol: 'T', unit: 'N·m' },
  twist: { symbol: 'φ', unit: 'deg' },
  points: points.map(([moment, twist, unloading]) => ({ moment, twist: twist * rad, unloading })),
  stiffness: { symbol: 'k', si: stiffness / rad, unit: 'N·m/deg' },
  intercept,
});
const dots = (of: TwistTest) => elementsOf(twistTest(of), 'circle').map((c) => [numberOf(c, 'cx'), numberOf(c, 'cy')] as const);
const regression = (of: TwistTest) => elementsOf(twistTest(of), 'path').filter((p) => numberOf(p, 'strokeWidth') === 0.35).map((p) => pathPoints(String(p.properties['d'])))[2]!;

describe('moment over twist', () => {
  it('names axes, stiffness, and readings on the way back', () => {
    const drawn = twistTest(test([[350, 0.085], [700, 0.17], [1400, 0.34], [700, 0.18, true]], 4100));
    expectSound(drawn);
    for (const text of ['T in N·m', 'φ in °', 'k = 4100 N·m/deg', 'hollow: load taken off']) expect(textsOf(drawn)).toContain(text);
  });

  it('puts readings that lie on the line on the line', () => {
    const of = test([[410, 0.1], [820, 0.2], [1230, 0.3]], 4100);
    const [[x0, y0], [x1, y1]] = regression(of) as [[number, number], [number, number]];
    for (const [x, y] of dots(of)) expect(y).toBeCloseTo(y0 + ((x - x0) / (x1 - x0)) * (y1 - y0), 1);
  });

  it('moves the line up by the moment at no twist', () => {
    const [a, b] = [0, 200].map((intercept) => regression(test([[410, 0.1], [1230, 0.3]], 4100, intercept))[0]![1]);
    expect(b!).toBeLessThan(a!);
  });

  it('stays within its frame for all readings', () => {
    const reading = fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: -900, max: 900 }).map((n) => n / 1000), fc.boolean());
    fc.assert(fc.property(fc.array(reading, { minLength: 1, maxLength: 14 }), fc.integer({ min: 200, max: 20_000 }), fc.integer({ min: -200, max: 200 }), (points, k, c) => expectSound(twistTest(test(points, k, c)))), { numRuns: 80 });
  });
});
