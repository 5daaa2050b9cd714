import { describe, expect, it } from 'vitest';
import { COVERAGE, studentT, typeA } from '../../src/units/student.js';

describe('Student’s t', () => {
  /** JCGM 100:2008, table G.2, column 95.45 % [from memory]. */
  it.each([
    [1, 13.97],
    [2, 4.53],
    [3, 3.31],
    [4, 2.87],
    [5, 2.65],
    [6, 2.52],
    [7, 2.43],
    [8, 2.37],
    [9, 2.32],
    [10, 2.28],
    [15, 2.18],
    [20, 2.13],
    [50, 2.05],
    [100, 2.025],
  ])('for %i degrees of freedom is %f', (freedom, t) => {
    expect(Math.abs(studentT(freedom, COVERAGE) - t)).toBeLessThanOrEqual(freedom === 100 ? 0.0005 : 0.005);
  });

  /**
   * T. T. Soong, Fundamentals of Probability and Statistics for Engineers, table A.4 (after R. A. Fisher, 1925), columns
   * 0.025 and 0.005 of one tail [read].
   */
  it.each([
    [1, 0.95, 12.706],
    [2, 0.95, 4.303],
    [3, 0.95, 3.182],
    [10, 0.95, 2.228],
    [19, 0.95, 2.093],
    [1, 0.99, 63.657],
    [2, 0.99, 9.925],
    [16, 0.99, 2.921],
    [29, 0.99, 2.756],
  ])('for %i degrees of freedom and p = %f is %f', (freedom, p, t) => {
    expect(Math.abs(studentT(freedom, p) - t)).toBeLessThanOrEqual(0.0005);
  });
});

describe('type A uncertainty', () => {
  /** JCGM 100:2008, 4.4.3, table 1: twenty temperatures, mean 100.145 °C, s = 1.489 °C, s(mean) = 0.333 °C [from memory]. */
  it('agrees with the worked example of the Guide', () => {
    const observed = [
      96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11,
      101.2, 101.57, 101.84, 102.36, 102.72,
    ];
    expect(typeA(observed)! / studentT(19, COVERAGE)).toBeCloseTo(0.333, 3);
  });

  it('is not known from one reading', () => {
    expect(typeA([2.5])).toBeUndefined();
  });
});
