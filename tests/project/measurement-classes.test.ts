import { describe, expect, it } from 'vitest';
import { kinds } from '../../src/checks/kinds/index.js';
import { fieldTree, leaves } from '../../src/project/field-tree.js';
import {
  classBasis,
  classBySize,
  type MeasuredAs,
  measurementClasses,
  methodOf,
  rangeOf,
  usualOf,
} from '../../src/project/measurement-classes.js';
import { buildSchema } from '../../src/project/vehicle.js';
import { readQuantity } from '../../src/units/quantity.js';
import { toSI } from '../../src/units/unit.js';

function quantity(text: string, fits: string) {
  const read = readQuantity(text, fits);
  if (!read.ok) throw new Error(`${text}: ${JSON.stringify(read.problem)}`);
  return read.quantity;
}

const everyClass = Object.keys(measurementClasses) as MeasuredAs[];

/** All figures are common practice of the trade, no source. */
describe('classes of measurement', () => {
  it.each([
    ['thickness', '2.48 mm', 'mm', '0.1', 'mm'],
    ['length', '749 mm', 'mm', '2', 'mm'],
    ['ride-height', '362 mm', 'mm', '5', 'mm'],
    ['slope', '3.0 deg', 'deg', '0.3', 'deg'],
    ['axle-mass', '612 kg', 'kg', '20', 'kg'],
    ['torque', '100 N·m', 'N·m', '6', 'N·m'],
    ['sound', '88.4 dB(A)', 'dB(A)', '2', 'dB'],
    ['ratio', '0.92', '1', '0.046', '1'],
    ['temperature', '90 degC', 'degC', '3', 'K'],
    ['aim', '1.1 %', '%', '0.2', '%'],
    ['pressure', '-0.25 kPa', 'kPa', '0.0125', 'kPa'],
  ] as const)('%s: a reading of %s is uncertain by %4$s %5$s', (as, text, fits, u, unit) => {
    expect(usualOf(as, quantity(text, fits))).toBeCloseTo(toSI(u, unit), 12);
  });

  it('rest on practice, have a method whose part is smaller than the whole, and a range that is one', () => {
    expect(classBasis).toBe('practice');
    const examples: readonly [string, string][] = [
      ['100 mm', 'mm'],
      ['10 deg', 'deg'],
      ['100 kg', 'kg'],
      ['100 N', 'N'],
      ['100 N·m', 'N·m'],
      ['100 kPa', 'kPa'],
      ['100 degC', 'degC'],
      ['12 V', 'V'],
      ['10 A', 'A'],
      ['1000 rpm', 'rpm'],
      ['80 km/h', 'km/h'],
      ['6 m/s2', 'm/s2'],
      ['10 s', 's'],
      ['90 dB', 'dB'],
      ['50 cm3', 'cm3'],
      ['28 N/mm', 'N/mm'],
      ['60', '1'],
    ];
    for (const as of everyClass) {
      const of = measurementClasses[as];
      const [least, most] = rangeOf(as);
      expect(least).toBeLessThan(most);
      if (!('usual' in of)) continue;
      const fitting = examples.map(([text, fits]) => quantity(text, fits)).filter((q) => usualOf(as, q) !== undefined);
      expect([as, fitting.length > 0]).toEqual([as, true]);
      for (const q of fitting) {
        expect(methodOf(as, q)).toBeGreaterThan(0);
        expect(methodOf(as, q)).toBeLessThan(usualOf(as, q)!);
      }
    }
  });

  it.each([
    ['0.99 mm', 'mm', 'feeler'],
    ['1 mm', 'mm', 'thickness'],
    ['39.9 mm', 'mm', 'thickness'],
    ['40 mm', 'mm', 'length'],
    ['-40 mm', 'mm', 'length'],
    ['10 m', 'mm', 'distance'],
    ['99 kg', 'kg', 'part-mass'],
    ['100 kg', 'kg', 'axle-mass'],
    ['3 MPa', 'MPa', 'pressure'],
    ['490 MPa', 'MPa', 'paper'],
    ['20 degC', 'degC', 'temperature'],
    ['66 kW', 'kW', 'paper'],
    ['3.73', '1', 'ratio'],
    ['41:11', '1', 'named'],
  ] as const)('%s has by its size the class %3$s', (text, fits, as) => {
    expect(classBySize(quantity(text, fits))).toBe(as);
  });

  it('every measured field has one, or takes a quantity of any dimension', () => {
    const shapes = [
      ...[...kinds].map(([id, kind]) => [id, kind.shape] as const),
      ['build', buildSchema.shape] as const,
    ];
    const without = shapes.flatMap(([id, shape]) =>
      leaves(fieldTree(shape))
        .filter(({ field: { meta } }) => ['quantity', 'slope'].includes(meta.form ?? '') && !meta.measuredAs)
        .map(({ path }) => `${id} ${path.join('.')}`),
    );
    expect(without).toEqual([
      'general measurements.[].was',
      'general measurements.[].value',
      'general measurements.[].least',
      'general measurements.[].greatest',
      'inspection readings.[].builder',
      'inspection readings.[].certifier',
    ]);
  });
});
