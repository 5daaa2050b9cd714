import { describe, expect, it } from 'vitest';
import { jointsInSeries } from '../../../src/calc/driveline/joints-in-series.js';
import { threeJoints } from '../../../src/calc/driveline/three-joints.js';
import { twoJoints } from '../../../src/calc/driveline/two-joints.js';
import { threeJointAngles, twoJointAngles } from '../../../src/calc/driveline/without-speed.js';

const deg = Math.PI / 180;
const joint = (angle: number, plane = 0, forks = 0) => ({ angle: angle * deg, plane: plane * deg, forks: forks * deg });
const fluctuation = (...joints: ReturnType<typeof joint>[]) => jointsInSeries.calculate({ joints }).fluctuation;

describe('joints in series', () => {
  it.each([
    // U = 1/cos β − cos β of one joint, from the relation of the turns (two pages on universal joints, quoted).
    [3, 0.00274],
    [5, 0.00763],
    [10, 0.03062],
    [20, 0.12449],
    [30, 0.28868],
  ])('one joint of %d degrees varies by %d', (angle, u) => {
    expect(fluctuation(joint(angle))).toBeCloseTo(u, 5);
  });

  it('two equal joints cancel where planes and forks go together, and only there', () => {
    expect(fluctuation(joint(20), joint(20))).toBeCloseTo(0, 12);
    expect(fluctuation(joint(20), joint(20, 35, 35))).toBeCloseTo(0, 12);
    expect(fluctuation(joint(20), joint(20, 35, 0))).toBeGreaterThan(0.1);
    // A quarter turn out of phase, exactly: 24.95 %; the second-order form gives 25.50 %.
    expect(fluctuation(joint(20), joint(20, 0, 90))).toBeCloseTo(0.2495, 4);
    expect(fluctuation(joint(20), joint(20, 90, 0))).toBeCloseTo(0.2495, 4);
  });

  it('agrees with the sheet of a one-piece shaft, whose angles come from slopes', () => {
    const slopes = {
      gearboxSlope: 3 * deg,
      gearboxPlan: 0,
      shaftSlope: 9 * deg,
      shaftLength: 1.2,
      shaftOffset: 0,
      shaftTwist: 25 * deg,
      pinionSlope: 2 * deg,
      pinionPlan: 0,
    };
    const two = twoJointAngles.calculate(slopes as never);
    expect(fluctuation(joint(6), joint(7, 0, 25))).toBeCloseTo(two.fluctuation, 9);
  });

  it('has no number for an angle no joint has', () => {
    const holds = (angle: number) => jointsInSeries.validity.every((v) => v.holds({ joints: [joint(angle)] }));
    expect([holds(45), holds(45.1), holds(-1), holds(0)]).toEqual([true, false, false, true]);
  });
});

describe('the sheets of joint angles without a speed', () => {
  it.each([
    [twoJoints, twoJointAngles],
    [threeJoints, threeJointAngles],
  ])('give what the full sheet gives, at any speed', (full, plain) => {
    const slopes = {
      ...Object.fromEntries(
        Object.keys(full.inputs).map((name, i) => [name, /Length/.test(name) ? 1 : 0.02 * (i + 1)]),
      ),
      speed: undefined,
    };
    const without = plain.calculate(slopes as never) as Record<string, number>;
    for (const speed of [10, 700]) expect(full.calculate({ ...slopes, speed } as never)).toMatchObject(without);
    expect(Object.keys(plain.inputs)).not.toContain('speed');
    expect(Object.values(plain.results).map((r) => r.unit)).not.toContain('rad/s²');
    expect(plain.validity.every((v) => v.holds(slopes as never))).toBe(true);
  });
});
