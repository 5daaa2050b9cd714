import { describe, expect, it } from 'vitest';
import { improbable } from '../../src/units/improbable.js';
import { readQuantity } from '../../src/units/quantity.js';
import { toSI } from '../../src/units/unit.js';

function judged(text: string, fits: string, min: string, max: string) {
  const read = readQuantity(text, fits);
  if (!read.ok) throw new Error(read.problem.found);
  return improbable(read.quantity, [toSI(min, fits), toSI(max, fits)]);
}

describe('values that a slip explains', () => {
  it.each([
    ['0.1 mm', 'mm', '1.2', '6', { unit: 'in', si: 0.00254 }],
    ['60 in', 'mm', '1', '100', { unit: 'mm', si: 0.06 }],
    ['2 N·mm', 'N·m', '1', '400', { unit: 'N·m', si: 2 }],
    ['0.355 MPa', 'MPa', '200', '1200', { unit: 'GPa', si: 3.55e8 }],
    ['12 mm', 'mm', '60', '200', { unit: 'cm', si: 0.12 }],
    ['12.5 cm', 'cm', '0.5', '3', { unit: 'mm', si: 0.0125 }],
    ['1100 t', 'kg', '600', '3000', { unit: 'kg', si: 1100 }],
    ['3.5 mm', 'mm', '5', '180', { says: 'the decimal point one place too far left', si: 0.035 }],
    ['350 mm', 'mm', '5', '180', { says: 'the decimal point one place too far right', si: 0.035 }],
    ['20.0 deg', 'deg', '0', '15', { says: 'the decimal point one place too far right' }],
    ['-20.0 deg', 'deg', '0', '15', { says: 'the decimal point one place too far right' }],
    ['6.1 mm', 'mm', '0.5', '6', { says: 'the decimal point one place too far right' }],
    ['[35, 350, 36] mm', 'mm', '5', '180', { si: 0.035 }],
    ['8.2 degC', 'degC', '50', '120', { says: 'the decimal point one place too far left', si: 355.15 }],
    ['820 degC', 'degC', '50', '120', { says: 'the decimal point one place too far right', si: 355.15 }],
    ['37.0', '1', '2', '8', { si: 3.7 }],
  ])('%s', (text, fits, min, max, expected) => {
    expect(judged(text, fits, min, max)).toMatchObject(expected);
  });

  it.each([
    ['2.5 mm', '1.2', '6'],
    ['1.2 mm', '1.2', '6'],
    ['6 mm', '1.2', '6'],
    ['0.01 mm', '0', '6'],
    ['7 mm', '1.2', '6'],
    ['0 mm', '1.2', '6'],
    ['-2.5 mm', '1.2', '6'],
    ['900 mm', '1.2', '6'],
  ])('%s is usual, or no slip explains it', (text, min, max) => {
    expect(judged(text, 'mm', min, max)).toBeUndefined();
  });
});
