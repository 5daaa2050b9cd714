import { describe, expect, it } from 'vitest';
import { tubeCriticalSpeed } from '../../../src/calc/driveline/critical-speed.js';
import { singleJoint } from '../../../src/calc/driveline/single-joint.js';
import { slipEngagement } from '../../../src/calc/driveline/slip.js';
import { highestShaftSpeed, jointAngleLimit, secondJointAngle } from '../../../src/calc/driveline/speed.js';
import { twoJoints } from '../../../src/calc/driveline/two-joints.js';
import type { Sheet } from '../../../src/calc/sheet.js';
import { result, work } from '../sheet-rules.js';

const as = (sheet: unknown) => sheet as Sheet;

// Design guidelines for drive shaft installation angle, after SAE AE-7 (quoted): allowable second angle by first angle.
const second = {
  1500: [7.3, 7.4, 7.6, 7.9, 8.3, 8.9, 9.5, 10.1, 10.8, 11.6],
  1700: [6.5, 6.5, 6.8, 7.1, 7.6, 8.2, 8.8],
};
describe('published table of the second joint', () => {
  it.each(Object.entries(second).flatMap(([speed, row]) => row.map((angle, first) => [speed, first, angle] as const)))(
    'at %s rpm and a first joint of %d° is met to 0.1°',
    (speed, first, printed) => {
      const found = result(
        as(secondJointAngle),
        { speed: `${speed} rpm`, limit: '400 rad/s²', first: `${first} deg` },
        'largest',
      );
      expect(Math.abs(found - printed)).toBeLessThanOrEqual(0.1);
    },
  );
});

// Operating-angle guidance page of a component maker (quoted; 3000 rpm and below from memory). The page prints no
// acceleration; all entries lie near 1000 rad/s², the nearest within 0.3°.
const most: readonly (readonly [number, number])[] = [
  [5000, 3.2],
  [4500, 3.7],
  [4000, 4.2],
  [3500, 5.0],
  [3000, 5.8],
  [2500, 7.0],
  [2000, 8.7],
  [1500, 11.5],
];
describe('published table of joint angles by speed', () => {
  it.each(most)('at %d rpm lies near the angle for 1000 rad/s²', (speed, printed) => {
    expect(
      Math.abs(result(as(jointAngleLimit), { speed: `${speed} rpm`, limit: '1000 rad/s²' }, 'angle') - printed),
    ).toBeLessThan(0.3);
  });
});

// Technical annex of a maker of cardan shafts (quoted): U = 0.0027 belongs to a remaining angle of 3°.
describe('published fluctuation', () => {
  it('of 0.0027 comes with about 3°', () => {
    expect(
      result(as(singleJoint), { gearboxSlope: '0 deg', pinionSlope: '2.977 deg', speed: '1000 rpm' }, 'fluctuation'),
    ).toBeCloseTo(0.27, 3);
  });
});

describe('critical speed', () => {
  const tube = {
    length: '45 in',
    diameter: '3.5 in',
    wall: '0.083 in',
    modulus: '30000 ksi',
    density: '0.283 lb/in³',
    share: '70 %',
  };

  // Page on driveshaft critical speed (quoted): 11 390 rpm, with g = 386.4 in/s² and steps rounded to three or four digits.
  it('is within 0.15 % of the published 11 390 rpm', () => {
    expect(Math.abs(result(as(tubeCriticalSpeed), tube, 'critical') / 11390 - 1)).toBeLessThan(0.0015);
  });

  // SAE joint selection graph, page on critical speeds (quoted): 1.21e8 √(D² + d²)/L² in mm for steel.
  it('is the published metric form for steel', () => {
    const form = (1.21e8 * Math.hypot(76.2, 76.2 - 3.3)) / 1400 ** 2;
    const found = result(
      as(tubeCriticalSpeed),
      { length: '1400 mm', diameter: '76.2 mm', wall: '1.65 mm', modulus: '207 GPa', share: '70 %' },
      'critical',
    );
    expect(Math.abs(found / form - 1)).toBeLessThan(0.001);
  });

  it('falls with the square of the length and hardly moves with the wall', () => {
    const at = (over: object) => result(as(tubeCriticalSpeed), { ...tube, ...over }, 'critical');
    expect(at({ length: '90 in' })).toBeCloseTo(at({}) / 4, 6);
    expect(Math.abs(at({ wall: '0.12 in' }) / at({}) - 1)).toBeLessThan(0.015);
    expect(at({ diameter: '4 in' })).toBeGreaterThan(at({}));
  });

  it('needs a slender tube and a share below the whole', () => {
    expect(work(as(tubeCriticalSpeed), { ...tube, length: '17.5 in' }).results).toBeDefined();
    expect(work(as(tubeCriticalSpeed), { ...tube, length: '17.4 in' }).outOfRange).toMatch(/five times/);
    expect(work(as(tubeCriticalSpeed), { ...tube, share: '100 %' }).outOfRange).toMatch(/below 100 %/);
  });
});

describe('inputs at their bounds', () => {
  const line = {
    gearboxSlope: '3 deg',
    shaftSlope: '6 deg',
    shaftLength: '1200 mm',
    pinionSlope: '3 deg',
    speed: '3000 rpm',
  };
  it('slopes up to 30 degrees, offsets shorter than the shaft', () => {
    expect(work(as(twoJoints), { ...line, pinionSlope: '30 deg' }).results).toBeDefined();
    expect(work(as(twoJoints), { ...line, pinionSlope: '30.1 deg' }).outOfRange).toMatch(/within 30 degrees/);
    expect(work(as(twoJoints), { ...line, shaftOffset: '-1200 mm' }).outOfRange).toMatch(/sideways offset/);
  });

  it('an overdrive turns the shaft faster than the engine', () => {
    expect(
      result(as(highestShaftSpeed), { engineSpeed: '6000 rpm', gearRatio: '1', overdriveRatio: '0.78' }, 'speed'),
    ).toBeCloseTo(7692.3, 1);
    expect(work(as(highestShaftSpeed), { engineSpeed: '6000 rpm', gearRatio: '0' }).outOfRange).toMatch(/ratios/);
  });

  it('a slip joint that comes apart or bottoms gives no number', () => {
    const lengths = {
      lengthRide: '1200 mm',
      lengthLongest: '1230 mm',
      lengthShortest: '1190 mm',
      engagedRide: '31 mm',
      roomRide: '11 mm',
    };
    const tried = (over: object) => work(as(slipEngagement), { ...lengths, ...over });
    expect(result(as(slipEngagement), lengths, 'engagedLeast')).toBeCloseTo(1, 9);
    expect(result(as(slipEngagement), lengths, 'roomLeast')).toBeCloseTo(1, 9);
    for (const engagedRide of ['30 mm', '25 mm'])
      expect(tried({ engagedRide })).toMatchObject({ outOfRange: expect.stringMatching(/comes apart/) as string });
    for (const roomRide of ['10 mm', '5 mm']) expect(tried({ roomRide }).outOfRange).toMatch(/bottoms/);
    expect(tried({ engagedRide: '0 mm' }).outOfRange).toMatch(/greater than zero/);
    expect(tried({ roomRide: '-5 mm' }).outOfRange).toMatch(/greater than zero/);
    expect(tried({ lengthLongest: '1199 mm' }).outOfRange).toMatch(/between/);
  });
});
