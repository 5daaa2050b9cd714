import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSteel } from '../../../src/project/designations/steel.js';
import {
  type HardnessScale,
  hardnessReach,
  hardnessScales,
  tensileOf,
} from '../../../src/project/designations/steel-hardness.js';
import { bodyParts, originalYield } from '../../../src/project/designations/steel-of-original.js';
import { value } from './laws.js';

const MPa = (pa: number) => Math.round(pa / 1e5) / 10;
const range = (of: Parameters<typeof originalYield>[0]) => {
  const found = originalYield(of);
  if ('unusable' in found) throw new Error(found.unusable);
  return [MPa(found.least), MPa(found.most)];
};

describe('tensile strength by hardness', () => {
  /** ISO 18265 (DIN 50150) for unalloyed steel, as quoted in two public tables of hardness. */
  it.each<[number, HardnessScale, number]>([
    [80, 'HV', 255],
    [100, 'HV', 320],
    [105, 'HV', 335],
    [200, 'HV', 640],
    [300, 'HV', 965],
    [500, 'HV', 1630],
    [190, 'HB', 640],
    [56.2, 'HRB', 320],
    [91.5, 'HRB', 640],
    [22.2, 'HRC', 800],
    [49.1, 'HRC', 1630],
  ])('%f %s: %i MPa', (hardness, scale, tensile) => {
    expect(Math.abs(MPa(tensileOf(hardness, scale)!) - tensile)).toBeLessThanOrEqual(5);
  });

  it('grows with hardness, and ends where the table ends', () => {
    for (const scale of Object.keys(hardnessScales) as HardnessScale[]) {
      const [low, high] = hardnessReach(scale);
      expect(tensileOf(low, scale)).toBeDefined();
      expect(tensileOf(high, scale)).toBeDefined();
      expect([tensileOf(low - 0.01, scale), tensileOf(high + 0.01, scale), tensileOf(NaN, scale)]).toEqual([
        undefined,
        undefined,
        undefined,
      ]);
      const within = fc.double({ min: low, max: high, noNaN: true });
      fc.assert(
        fc.property(within, within, (a, b) => {
          expect(Math.sign(tensileOf(a, scale)! - tensileOf(b, scale)!) * Math.sign(a - b)).toBeGreaterThanOrEqual(0);
        }),
      );
    }
  });
});

describe('yield strength of an original member', () => {
  it('of a steel that is named', () => {
    // EN 10130 and EN 10268 [memory]; a grade without an upper bound may yield at half as much again, common practice.
    const of = (steel: string) => range({ steel: value(readSteel(steel)), built: '1984-05' });
    expect(of('DC01')).toEqual([140, 280]);
    expect(of('HC340LA')).toEqual([340, 420]);
    expect(of('S235')).toEqual([235, 352.5]);
    expect(of('4130 (435/670 MPa)')).toEqual([435, 435]);
  });

  it('of a steel that nobody knows reaches further the newer the car is', () => {
    const years = ['1965-01', '1979-12', '1980-01', '1994-12', '1995-01', '2002-12', '2003-01', '2024-06'];
    for (const part of Object.keys(bodyParts) as (keyof typeof bodyParts)[]) {
      const most = years.map((built) => range({ part, built })[1]!);
      expect(most).toEqual([...most].sort((a, b) => a - b));
      expect(new Set(years.map((built) => range({ part, built })[0]))).toEqual(new Set([140]));
      for (const built of years) expect(range({ built })[1]).toBeGreaterThanOrEqual(range({ part, built })[1]!);
    }
  });

  it('by hardness is never the least only, whatever the reading', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 85, max: 540, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (reading, expanded) => {
          const [least, most] = range({ built: '1984-05', hardness: { reading, expanded, scale: 'HV' } });
          expect(most! / least!).toBeGreaterThan(2);
          expect(most! * 1e6).toBeGreaterThanOrEqual(tensileOf(reading, 'HV')! - 1e5);
        },
      ),
    );
    expect(originalYield({ built: '1984-05', hardness: { reading: 79, expanded: 0, scale: 'HV' } })).toHaveProperty(
      'unusable',
    );
  });
});
