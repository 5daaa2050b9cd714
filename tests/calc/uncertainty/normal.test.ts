import fc from 'fast-check';
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { normalBelow } from '../../../src/calc/uncertainty/normal.js';

describe('normal distribution', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, tables 26.1 and 26.2 (memory), and the tails as any
  // double-precision complementary error function gives them.
  it.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [1.4, 0.919243340766229],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [-3, 1.349898031630095e-3],
    [-6, 9.865876450376981e-10],
    [-10, 7.619853024160527e-24],
  ])('is known at %d', (z, p) => {
    expect(Math.abs(normalBelow(z) / p - 1)).toBeLessThan(1e-12);
  });

  it('agrees with an independent error function, and both sides add up to one', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
        expect(Math.abs(normalBelow(z) - (1 + erf(z / Math.SQRT2)) / 2)).toBeLessThan(1e-12);
        expect(Math.abs(normalBelow(z) + normalBelow(-z) - 1)).toBeLessThan(1e-15);
      }),
    );
  });

  it('joins its two methods smoothly', () => {
    for (const z of [-2, 2]) expect(Math.abs(normalBelow(z + 1e-13) / normalBelow(z - 1e-13) - 1)).toBeLessThan(1e-12);
  });
});
