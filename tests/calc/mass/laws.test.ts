import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/mass/index.js';
import { monotonic } from '../laws.js';
import { result } from '../sheet-rules.js';

const sheet = (id: string) => sheets.find((s) => s.id === id)!;
const kilograms = fc.integer({ min: 200, max: 900 });

describe('laws of mass', () => {
  it('puts the centre of mass of equal axle loads in the middle', () => {
    fc.assert(
      fc.property(kilograms, fc.integer({ min: 2000, max: 3200 }), (m, L) => {
        expect(
          result(sheet('axle-masses'), { front: `${m} kg`, rear: `${m} kg`, wheelbase: `${L} mm` }, 'behindFront'),
        ).toBeCloseTo(L / 2, 9);
      }),
    );
  });

  it('gives the same length by wheel loads and by axle loads, and mirrors left and right', () => {
    fc.assert(
      fc.property(kilograms, kilograms, kilograms, kilograms, (fl, fr, rl, rr) => {
        const tracks = { wheelbase: '2600 mm', trackFront: '1450 mm', trackRear: '1430 mm' };
        const four = {
          frontLeft: `${fl} kg`,
          frontRight: `${fr} kg`,
          rearLeft: `${rl} kg`,
          rearRight: `${rr} kg`,
          ...tracks,
        };
        const mirrored = {
          frontLeft: `${fr} kg`,
          frontRight: `${fl} kg`,
          rearLeft: `${rr} kg`,
          rearRight: `${rl} kg`,
          ...tracks,
        };
        const two = { front: `${fl + fr} kg`, rear: `${rl + rr} kg`, wheelbase: '2600 mm' };
        expect(result(sheet('corner-masses'), four, 'behindFront')).toBeCloseTo(
          result(sheet('axle-masses'), two, 'behindFront'),
          9,
        );
        expect(result(sheet('corner-masses'), mirrored, 'toRight')).toBeCloseTo(
          -result(sheet('corner-masses'), four, 'toRight'),
          9,
        );
      }),
    );
  });

  it('loads one axle alone with a part right above it, and lightens the front with a part behind the rear axle', () => {
    const before = { front: '800 kg', rear: '600 kg', wheelbase: '2600 mm' };
    const with_ = (place: string) => ({ ...before, parts: [{ mass: '40 kg', place }] });
    expect(result(sheet('mass-added'), with_('0 mm'), 'rearAfter')).toBe(600);
    expect(result(sheet('mass-added'), with_('2600 mm'), 'frontAfter')).toBeCloseTo(800, 9);
    expect(result(sheet('mass-added'), with_('3400 mm'), 'toFront')).toBeLessThan(0);
  });

  it('takes out again what was added', () => {
    const parts = [
      { mass: '40 kg', place: '700 mm' },
      { mass: '-40 kg', place: '700 mm' },
    ];
    expect(
      result(sheet('mass-added'), { front: '800 kg', rear: '600 kg', wheelbase: '2600 mm', parts }, 'behindFront'),
    ).toBeCloseTo((2600 * 600) / 1400, 9);
  });

  it('finds the height again from the load that a known height moves (moments about the front wheel’s contact)', () => {
    const [m, L, a, r] = [1500, 2600, 1200, 310];
    fc.assert(
      fc.property(fc.integer({ min: 400, max: 900 }), fc.integer({ min: 300, max: 900 }), (h, H) => {
        const angle = Math.asin(H / L);
        // Level ground distances in the raised state: the vehicle turns by the angle about the front wheel centre.
        const behind = a * Math.cos(angle) - (h - r) * Math.sin(angle);
        const front = m - (m * behind) / (L * Math.cos(angle));
        const given = {
          mass: `${m} kg`,
          rearLevel: `${(m * a) / L} kg`,
          frontLevel: `${m - (m * a) / L} kg`,
          frontRaised: `${front} kg`,
          wheelbase: `${L} mm`,
          raise: `${H} mm`,
          radiusFront: `${r} mm`,
          radiusRear: `${r} mm`,
        };
        expect(result(sheet('centre-of-mass-height'), given, 'height')).toBeCloseTo(h, 5);
      }),
    );
  });

  it('moves the height by its sensitivity for each kilogram of weighing error', () => {
    const { given } = sheet('centre-of-mass-height').examples[0];
    const at = (front: string) => result(sheet('centre-of-mass-height'), { ...given, frontRaised: front }, 'height');
    expect(at('841.692 kg') - at('840.692 kg')).toBeCloseTo(
      result(sheet('centre-of-mass-height'), given, 'sensitivity'),
      6,
    );
  });

  it('rises with the moved load', () => {
    monotonic(sheet('centre-of-mass-height'), sheet('centre-of-mass-height').examples[0].given, 'frontRaised', {
      from: 810,
      to: 900,
      unit: 'kg',
      result: 'height',
      rises: true,
    });
  });
});
