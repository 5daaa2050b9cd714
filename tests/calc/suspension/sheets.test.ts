import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/suspension/index.js';
import { changeWithin } from '../../../src/calc/suspension/toe-change.js';
import { formulaRules } from '../formula-rules.js';
import { result, sheetRules, work } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of springs and bump steer', () => sheetRules(sheets));
describe('formulas of springs', () => formulaRules(sheets));
describe('springs and bump steer in other units', () => unitRules(sheets));

const [coilRate, coilTravel, toeChange] = sheets as [(typeof sheets)[0], (typeof sheets)[0], (typeof sheets)[0]];

describe('coil springs', () => {
  // Derived: the rate goes with the fourth power of the wire and falls with the coils.
  it('doubles the rate with half the coils, and takes sixteen times the rate from twice the wire and mean diameter kept', () => {
    const rate = (wire: string, outside: string, active: string) =>
      result(coilRate, { wire, outside, active, shear: '80 GPa' }, 'rate');
    expect(rate('12 mm', '112 mm', '4') / rate('12 mm', '112 mm', '8')).toBeCloseTo(2, 10);
    expect(rate('12 mm', '112 mm', '8') / rate('6 mm', '106 mm', '8')).toBeCloseTo(16, 10);
  });

  it('is loose at droop where the free length is less than the room between the seats', () => {
    const spring = {
      ride: '225 mm',
      motion: '1',
      bump: '70 mm',
      droop: '80 mm',
      wire: '12 mm',
      coils: '8',
      ends: 'ground',
    };
    expect(result(coilTravel, { ...spring, free: '305 mm' }, 'seated')).toBeCloseTo(0, 9);
    expect(result(coilTravel, { ...spring, free: '300 mm' }, 'seated')).toBeCloseTo(-5, 9);
  });

  it('stands one wire higher when bound with ends that are not ground', () => {
    const spring = {
      free: '340 mm',
      ride: '225 mm',
      motion: '1',
      bump: '70 mm',
      droop: '80 mm',
      wire: '12 mm',
      coils: '8',
    };
    expect(
      result(coilTravel, { ...spring, ends: 'plain' }, 'solid') -
        result(coilTravel, { ...spring, ends: 'ground' }, 'solid'),
    ).toBeCloseTo(12, 9);
  });
});

describe('change of toe', () => {
  const station = (travel: number, toe: number) => ({ travel, toe });

  it('is the slope times two thirds of the travel where the toe goes in a straight line', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 20, max: 120, noNaN: true }),
        (slope, reach) => {
          const stations = [-reach, -reach / 3, reach / 2, reach].map((s) => station(s, slope * s));
          const range = (2 * reach) / 6;
          expect(changeWithin(stations, -reach + range, reach - range)).toBeCloseTo(
            Math.abs(slope) * reach * (4 / 3),
            9,
          );
        },
      ),
    );
  });

  it('does not depend on the order of the stations', () => {
    const rows = [
      ['-60 mm', '-0.3 deg'],
      ['0 mm', '0.1 deg'],
      ['60 mm', '0.0 deg'],
    ].map(([travel, toe]) => ({ travel: travel!, toe: toe! }));
    expect(result(toeChange, { stations: rows.toReversed() }, 'change')).toBe(
      result(toeChange, { stations: rows }, 'change'),
    );
  });

  it('gives a reason where there are too few stations, or two of one travel', () => {
    const rows = [
      { travel: '0 mm', toe: '0 deg' },
      { travel: '10 mm', toe: '0 deg' },
    ];
    expect(work(toeChange, { stations: rows }).outOfRange).toMatch(/three stations/);
    expect(
      work(toeChange, { stations: [...rows, { travel: '20 mm', toe: '0 deg' }, { travel: '10 mm', toe: '1 deg' }] })
        .outOfRange,
    ).toMatch(/same travel/);
  });
});
