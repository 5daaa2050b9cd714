import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../src/units/quantity.js';
import { showNumber, showQuantity, showToUncertainty } from '../../src/units/show.js';

describe('a number', () => {
  it.each([
    [2.5, '2.5'],
    [0, '0'],
    [-0, '0'],
    [-2.5, '−2.5'],
    [1234567.8, '1234568'],
    [0.000123456, '0.0001235'],
    [0.1 + 0.2, '0.3'],
    [2.9999999, '3'],
    [99.995, '100'],
    [1e14, '100000000000000'],
    [1e15, '1×10¹⁵'],
    [-1.234567e-9, '−1.235×10⁻⁹'],
    [NaN, '–'],
    [Infinity, '–'],
  ])('%f shows as %s', (x, text) => {
    expect(showNumber(x)).toBe(text);
  });

  it('with places or digits', () => {
    expect(showNumber(2.5, { places: 3 })).toBe('2.500');
    expect(showNumber(-0.0001, { places: 2 })).toBe('0.00');
    expect(showNumber(Math.PI, { digits: 7 })).toBe('3.141593');
  });

  it('is never -0, NaN or an exponent of the machine', () => {
    fc.assert(
      fc.property(fc.double(), (x) => {
        expect(showNumber(x)).toMatch(/^−?\d+(\.\d+)?(×10⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)?$|^–$/);
        expect(showNumber(x)).not.toMatch(/^−0(\.0*)?$/);
      }),
    );
  });
});

describe('a quantity', () => {
  it.each([
    [0.00248, 'mm', 0.00002, '2.48 ± 0.02 mm'],
    [0.0024849, 'mm', 0.00002, '2.485 ± 0.020 mm'],
    [0.00248, 'mm', 0.0000213, '2.480 ± 0.022 mm'],
    [0.00248, 'mm', 0.00002000000000000001, '2.48 ± 0.02 mm'],
    [0.00248, 'mm', 0.0000996, '2.48 ± 0.10 mm'],
    [1.2345, 'm', 1.2345, '1.2 ± 1.3 m'],
    [1234, 'kg', 120, '1230 ± 120 kg'],
    [1234, 'kg', 1234, '1200 ± 1300 kg'],
    [-0.001, 'mm', 0.0001, '−1.0 ± 0.1 mm'],
    [0, 'mm', 0.0001, '0.0 ± 0.1 mm'],
    [363.15, 'degC', 2, '90 ± 2 degC'],
    [3.727, '1', 0.01, '3.727 ± 0.010'],
    [0.95, '%', 0.02, '(95 ± 2) %'],
    [0.00248, 'mm', undefined, '2.48 mm'],
    [0.019049999, 'in', undefined, '0.75 in'],
    [NaN, 'mm', undefined, '–'],
  ])('%f in %s with %s', (si, unit, expanded, text) => {
    expect(showQuantity(si, unit, expanded)).toBe(text);
  });

  /** JCGM 100:2008, 7.2.6: 10.47 mΩ is rounded up to 11 mΩ, and 28 kHz to 30 kHz where one digit is wanted. */
  it('never makes an uncertainty smaller', () => {
    expect(showQuantity(10.05762, 'm', 0.01047)).toBe('10.058 ± 0.011 m');
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
        (x, u) => {
          const shown = Number(/± ([\d.]+)/.exec(showQuantity(x, 'm', u))![1]);
          expect(shown).toBeGreaterThanOrEqual(u * (1 - 1e-12));
          expect(shown).toBeLessThanOrEqual(u * 1.1 * (1 + 1e-12));
        },
      ),
    );
  });
});

describe('a simulated quantity', () => {
  it.each([
    [180, 'rad/s2', -40, 435, '180 (−40 to 435) rad/s²'],
    [77.28, 'rad/s2', 7.566, 196.375, '77 (7 to 197) rad/s²'],
    [0, 'mm', 0.0000211, 0.0016072, '0.00 (0.02 to 1.61) mm'],
    [0.95, '%', 0.921, 0.969, '95.00 (92.10 to 96.90) %'],
    [363.15, 'degC', 361.15, 367.15, '90.0 (88.0 to 94.0) degC'],
    [1.25, '1', 1.25, 1.25, '1.250 (1.250 to 1.250)'],
    [1e-25, 'm', 0, 1e-24, '1×10⁻²⁵ (0 to 1×10⁻²⁴) m'],
  ])('%f in %s from %f to %f', (si, unit, low, high, text) => {
    expect(showQuantity(si, unit, { low, high })).toBe(text);
  });

  it('never shows its ends closer than they are', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(number, number, number, (x, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(high - low > 1e-6);
        const shown = showQuantity(x, 'm', { low, high }).replaceAll('−', '-');
        const [, from, to] = /\((-?[\d.]+) to (-?[\d.]+)\) m$/.exec(shown)!.map(Number);
        const noise = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
        expect(from).toBeLessThanOrEqual(low + noise);
        expect(to).toBeGreaterThanOrEqual(high - noise);
      }),
    );
  });
});

describe('a quantity to be reckoned with again', () => {
  it.each([
    ['as many digits as the uncertainty leaves', 0.060024, 'mm', 0.000003, '60.024 mm'],
    ['fewer where it is large', 0.060024, 'mm', 0.002, '60 mm'],
    ['four where none is stated', 0.060024, 'mm', 0, '60.02 mm'],
    ['without brackets', 0.95, '%', 0.02, '95 %'],
  ])('has %s', (_, si, unit, expanded, shown) => expect(showToUncertainty(si, unit, expanded)).toBe(shown));
});

describe('an uncertainty beyond all measure', () => {
  it.each([
    [0.95, '%', 9.9e27, '(0 ± 9.9×10²⁹) %'],
    [1e-6, 'mm', 1e17, '0 ± 1×10²⁰ mm'],
  ])('%f in %s ± %f is shown in a way that can be read again', (si, unit, expanded, shown) => {
    expect(showQuantity(si, unit, expanded)).toBe(shown);
    expect(readQuantity(shown, unit).ok).toBe(true);
  });
});
