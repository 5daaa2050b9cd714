import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Axis, direction, equivalentAngles, jointAngles, planOf } from '../../../src/calc/driveline/geometry.js';
import { singleJoint } from '../../../src/calc/driveline/single-joint.js';
import { threeJoints } from '../../../src/calc/driveline/three-joints.js';
import { twoJoints } from '../../../src/calc/driveline/two-joints.js';
import type { Sheet } from '../../../src/calc/sheet.js';
import { result } from '../sheet-rules.js';
import { greatestAcceleration } from './cardan.js';

const deg = Math.PI / 180;
const slopes = (...of: readonly number[]): Axis[] => of.map((slope) => ({ slope: slope * deg, plan: 0 }));
const left = (axes: readonly Axis[], twists: readonly number[]) => equivalentAngles(jointAngles(axes), twists).at(-1)!;
/** Spread evenly in steps of a hundredth of a degree; doubles would crowd about zero. */
const angle = (most: number) => fc.integer({ min: -100 * most, max: 100 * most }).map((x) => (x / 100) * deg);
const small = angle(5);
const axis = fc.record({ slope: small, plan: small });
const turn = angle(180);

describe('equivalent angle', () => {
  it('agrees with a chain of joints turned step by step, in any planes and with any twist of the yokes', () => {
    fc.assert(
      fc.property(
        fc.array(axis, { minLength: 2, maxLength: 4 }),
        fc.array(turn, { minLength: 2, maxLength: 2 }),
        (axes, twists) => {
          const used = twists.slice(0, axes.length - 2);
          const joints = jointAngles(axes);
          const squares = joints.reduce((sum, j) => sum + j.angle ** 2, 0);
          const simulated = greatestAcceleration(axes.map(direction), used, 180);
          expect(Math.abs(left(axes, used) ** 2 - simulated)).toBeLessThan(0.4 * squares ** 2 + 1e-3 * squares + 1e-8);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('of two joints of 4° in planes square to each other is 5.66°, not zero (simulation)', () => {
    const axes: Axis[] = [
      { slope: 4 * deg, plan: 0 },
      { slope: 0, plan: 0 },
      { slope: 0, plan: 4 * deg },
    ];
    expect(left(axes, [0]) / deg).toBeCloseTo(5.66, 2);
    expect(Math.sqrt(greatestAcceleration(axes.map(direction), [0])) / deg).toBeCloseTo(5.66, 2);
  });

  it('of equal angles in one plane with aligned yokes is nothing, for parallel and for mirrored ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: -8, max: 8 }), fc.integer({ min: 0, max: 8 }), (shaft, bend) => {
        expect(left(slopes(shaft + bend, shaft, shaft + bend), [0])).toBeLessThan(1e-6);
        expect(left(slopes(shaft + bend, shaft, shaft - bend), [0])).toBeLessThan(1e-6);
        expect(left(slopes(shaft + bend, shaft, shaft + bend), [Math.PI / 2])).toBeCloseTo(Math.SQRT2 * bend * deg, 6);
      }),
    );
  });

  it('is the same for the line seen in a mirror', () => {
    fc.assert(
      fc.property(
        fc.array(axis, { minLength: 3, maxLength: 4 }),
        fc.array(turn, { minLength: 2, maxLength: 2 }),
        (axes, twists) => {
          const mirrored = axes.map(({ slope, plan }) => ({ slope, plan: -plan }));
          expect(
            left(
              mirrored,
              twists.map((t) => -t),
            ),
          ).toBeCloseTo(left(axes, twists), 9);
        },
      ),
    );
  });

  it('does not change when the whole line is turned about its own length', () => {
    const about = (a: Axis, by: number): Axis => {
      const [h, v] = [Math.tan(a.plan), Math.tan(a.slope)];
      return {
        plan: Math.atan(h * Math.cos(by) - v * Math.sin(by)),
        slope: Math.atan(h * Math.sin(by) + v * Math.cos(by)),
      };
    };
    fc.assert(
      fc.property(fc.array(axis, { minLength: 3, maxLength: 4 }), turn, (axes, by) => {
        expect(
          left(
            axes.map((a) => about(a, by)),
            [0.3, -0.2],
          ),
        ).toBeCloseTo(left(axes, [0.3, -0.2]), 6);
      }),
    );
  });
});

describe('joint angles', () => {
  it('in side view alone are the differences of the slopes', () => {
    fc.assert(
      fc.property(small, small, (a, b) => {
        expect(
          jointAngles([
            { slope: a, plan: 0 },
            { slope: b, plan: 0 },
          ])[0]!.angle,
        ).toBeCloseTo(Math.abs(a - b), 12);
      }),
    );
  });

  it('follow the plan angle that an offset gives', () => {
    const plan = planOf(5 * deg, 1200, 60);
    const [along, across] = direction({ slope: 5 * deg, plan });
    expect(1200 * across).toBeCloseTo(60, 9);
    expect(along).toBeGreaterThan(0);
  });
});

const two = twoJoints as unknown as Sheet;
const three = threeJoints as unknown as Sheet;
const one = singleJoint as unknown as Sheet;
const given = {
  gearboxSlope: '3.0 deg',
  shaftSlope: '7.0 deg',
  shaftLength: '1200 mm',
  pinionSlope: '4.5 deg',
  speed: '3000 rpm',
};

describe('accelerations', () => {
  // A full simulation of 4.0° and 2.5° at 3000 rpm was found to give 293.5 rad/s² (derived, regression only).
  it('of two joints are those of the simulation', () => {
    const simulated = greatestAcceleration(slopes(3, 7, 4.5).map(direction), [0]) * (3000 * (Math.PI / 30)) ** 2;
    expect(simulated).toBeCloseTo(293.5, 0);
    expect(Math.abs(result(two, given, 'torsional') - simulated)).toBeLessThan(0.005 * simulated);
  });

  it.each([3, 5, 10, 20, 30])('of one joint at %d° are the greatest of a full turn', (angle) => {
    const simulated = greatestAcceleration(slopes(0, angle).map(direction), [], 3600) * (3000 * (Math.PI / 30)) ** 2;
    const exact = result(
      one,
      { gearboxSlope: '0 deg', pinionSlope: `${angle} deg`, speed: '3000 rpm' },
      'acceleration',
    );
    expect(Math.abs(exact / simulated - 1)).toBeLessThan(1e-4);
  });

  it('grow with the square of speed and with the joint angle', () => {
    const at = (speed: string, pinion: string) => result(two, { ...given, speed, pinionSlope: pinion }, 'inertiaCoast');
    expect(at('6000 rpm', '4.5 deg')).toBeCloseTo(4 * at('3000 rpm', '4.5 deg'), 6);
    expect(at('3000 rpm', '4.0 deg')).toBeGreaterThan(at('3000 rpm', '4.5 deg'));
  });

  // Derived: with equal inertias in drive the three-joint line of one plane gives θ1² + |θ1² − θ2²| for θ1 ≥ θ2.
  it('of three joints lie on each shaft by itself', () => {
    const x = {
      gearboxSlope: '3 deg',
      frontSlope: '6 deg',
      frontLength: '700 mm',
      rearSlope: '8 deg',
      rearLength: '900 mm',
      pinionSlope: '7 deg',
      speed: '3000 rpm',
    };
    const w2 = (3000 * (Math.PI / 30)) ** 2 * deg ** 2;
    expect(result(three, x, 'driveFront')).toBeCloseTo(9 * w2, 6);
    expect(result(three, x, 'driveRear')).toBeCloseTo((9 - 4) * w2, 6);
    expect(result(three, x, 'coastRear')).toBeCloseTo(1 * w2, 6);
    expect(result(three, x, 'coastFront')).toBeCloseTo((4 - 1) * w2, 6);
    expect(result(three, x, 'torsional')).toBeCloseTo((9 - 4 + 1) * w2, 6);
  });
});
