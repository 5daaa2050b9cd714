import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { type Driveline, drivelineDrawing } from '../../../src/render/drawings/driveline.js';
import { elementsOf, expectSound, numberOf, pathPoints, textsOf } from './read-drawing.js';

const deg = (symbol: string, x: number) => ({ symbol, si: (x * Math.PI) / 180, unit: 'deg' });
const line = (
  slopes: readonly number[],
  plans: readonly number[],
  lengths: readonly number[],
  twists: readonly number[],
): Driveline => ({
  name: 'figure-s',
  title: 'Joint angles at ride height',
  axes: slopes.map((s, i) => ({
    says: i === 0 ? 'gearbox output' : i === slopes.length - 1 ? 'pinion' : `shaft ${i}`,
    slope: deg(`v_{${i}}`, s),
    plan: deg(`h_{${i}}`, plans[i]!),
    length: i === 0 || i === slopes.length - 1 ? undefined : lengths[i - 1]!,
  })),
  joints: slopes.slice(1).map((s, i) => deg(`θ_{${i + 1}}`, Math.abs(s - slopes[i]!))),
  phasing: twists.map((t, i) => ({ says: `shaft ${i + 1}`, twist: deg(`γ_{${i + 1}}`, t) })),
  equivalent: deg('θ_{e}', 3.12),
});
const one = line([3, 7, 4.5], [0, 1.2, 0], [1.2], [0]);

/** Joints of the side view, then of the plan, from front to rear. */
const joints = (drawing: Element) =>
  elementsOf(drawing, 'circle')
    .filter((c) => numberOf(c, 'r') === 1.7)
    .map((c) => [numberOf(c, 'cx'), numberOf(c, 'cy')] as const);
const arcs = (drawing: Element) =>
  elementsOf(drawing, 'path').filter((p) => /^M[^A]*A[^A]*$/.test(String(p.properties['d'])));

describe('a driveline from the side and from above', () => {
  it('names slopes, plan angles, joint angles and yokes', () => {
    const drawn = drivelineDrawing(one);
    expectSound(drawn);
    for (const text of [
      'gearbox output',
      'pinion',
      'v0 = 3°',
      'v1 = 7°',
      'h1 = 1.2°',
      'θ1 = 4°',
      'θ2 = 2.5°',
      'γ1 = 0°',
      'front',
      'rear',
    ])
      expect(textsOf(drawn)).toContain(text);
    expect(textsOf(drawn).join()).toContain('θe = 3.12°');
  });

  it('says by how much the angles are enlarged, and draws them so', () => {
    const drawn = drivelineDrawing(one);
    const times = Number(/drawn (\d) times as large/.exec(textsOf(drawn).join())![1]);
    const [[x1, y1], [x2, y2]] = joints(drawn) as [readonly [number, number], readonly [number, number]];
    expect((Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI).toBeCloseTo(7 * times, 1);
    expect(textsOf(drivelineDrawing(line([3, 20, 4], [0, 0, 0], [1], [0]))).join()).toContain('angles as they are');
  });

  it('draws rear joints lower that lie lower, and to the left of the vehicle at the bottom', () => {
    const [, , [, front], [, rear]] = joints(drivelineDrawing(one)) as [
      unknown,
      unknown,
      readonly [number, number],
      readonly [number, number],
    ];
    expect(rear).toBeGreaterThan(front);
    const [[, a], [, b]] = joints(drivelineDrawing(line([0, -4, 0], [0, 0, 0], [1], [0]))) as [
      readonly [number, number],
      readonly [number, number],
    ];
    expect(b).toBeLessThan(a);
  });

  it('leaves the arc out where nothing is bent, and draws one for each joint otherwise', () => {
    expect(arcs(drivelineDrawing(line([3, 3, 3], [0, 0, 0], [1], [0])))).toHaveLength(0);
    expect(arcs(drivelineDrawing(line([3, 7, 5, 2], [0, 0, 0, 0], [0.7, 0.9], [0, 0])))).toHaveLength(3);
  });

  it('is the mirror image, front to rear, for mirrored slopes', () => {
    const [[xa, ya], [xb, yb]] = joints(drivelineDrawing(line([2, 5, 2], [0, 0, 0], [1], []))) as [
      readonly [number, number],
      readonly [number, number],
    ];
    const [[xc, yc], [xd, yd]] = joints(drivelineDrawing(line([-2, -5, -2], [0, 0, 0], [1], []))) as [
      readonly [number, number],
      readonly [number, number],
    ];
    expect(xb - xa).toBeCloseTo(xd - xc, 2);
    expect(yb - ya).toBeCloseTo(yc - yd, 2);
  });

  it('turns the rear yoke clockwise as seen from the front', () => {
    const ears = elementsOf(drivelineDrawing(line([3, 6, 3], [0, 0, 0], [1], [30])), 'path').filter(
      (p) =>
        p.properties['fillRule'] === 'evenodd' &&
        numberOf(p, 'strokeWidth') === 0.2 &&
        pathPoints(String(p.properties['d'])).length === 4,
    );
    const middles = ears
      .map((e) => pathPoints(String(e.properties['d'])))
      .map((ps) => [ps.reduce((s, p) => s + p[0], 0) / 4, ps.reduce((s, p) => s + p[1], 0) / 4] as const);
    const [frontTop, frontLow, rearTop, rearLow] = middles;
    expect(frontTop![0]).toBeCloseTo(frontLow![0], 2);
    expect(rearTop![0]).toBeGreaterThan(rearLow![0]);
    expect((Math.atan2(rearTop![0] - rearLow![0], rearLow![1] - rearTop![1]) * 180) / Math.PI).toBeCloseTo(30, 1);
  });

  it('stays within its frame at all slopes that the sheets accept', () => {
    const slope = fc.integer({ min: -3000, max: 3000 }).map((n) => n / 100);
    const length = fc.integer({ min: 100, max: 2000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 }),
        fc.array(slope, { minLength: 8, maxLength: 8 }),
        length,
        length,
        fc.integer({ min: -360, max: 360 }),
        (shafts, s, l1, l2, twist) => {
          const n = shafts + 2;
          expectSound(
            drivelineDrawing(
              line(s.slice(0, n), s.slice(4, 4 + n), [l1, l2].slice(0, shafts), [twist, -twist / 7].slice(0, shafts)),
            ),
          );
        },
      ),
      { numRuns: 80 },
    );
  });
});
