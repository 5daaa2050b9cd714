import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestUnits } from '../../src/units/nearest.js';
import { differenceUnit, readUnit, sameDimension, toSI, toUnit, unit } from '../../src/units/unit.js';

describe('units as people write them', () => {
  it.each([
    ['Nm', 'N·m'],
    ['N m', 'N·m'],
    ['N.m', 'N·m'],
    ['N*m', 'N·m'],
    ['N-m', 'N·m'],
    ['kNm', 'kN·m'],
    ['Nmm', 'N·mm'],
    ['ft-lbf', 'ft·lbf'],
    ['ft lbf', 'ft·lbf'],
    ['lbf.in', 'lbf·in'],
    ['mm^4', 'mm⁴'],
    ['mm4', 'mm⁴'],
    ['mm⁴', 'mm⁴'],
    ['cm3/kg', 'cm³/kg'],
    ['cc/kg', 'cm³/kg'],
    ['rad/s2', 'rad/s²'],
    ['rad/s^2', 'rad/s²'],
    ['kg/m^3', 'kg/m³'],
    ['s-1', 's⁻¹'],
    ['s^-1', 's⁻¹'],
    ['s⁻¹', 's⁻¹'],
    ['1/min', '1/min'],
    ['kg/(m·s)', 'kg/(m·s)'],
    ['N·m/deg', 'N·m/deg'],
    ['Nm / °', 'N·m/deg'],
    ['"', 'in'],
    ['°', 'deg'],
    ['°C', 'degC'],
    ['dBA', 'dB(A)'],
    ['um', 'µm'],
    ['μm', 'µm'],
    ['l', 'L'],
    [' mm ', 'mm'],
  ])('%s is %s', (written, text) => {
    expect(readUnit(written)?.text).toBe(text);
    expect(readUnit(text)?.text).toBe(text);
  });

  it.each([
    '',
    'MM',
    'nm',
    'Mpa',
    'mPa',
    'kg/m·s',
    'm/s/s',
    '1',
    '1·m',
    'm0',
    'm^',
    'degC/s',
    '%/s',
    '/',
    'm/',
    '()',
    'm/(',
    'mm^99',
    'constructor',
    '__proto__',
  ])('%s is not guessed at', (written) => {
    if (written === '1') expect(readUnit('1')?.dimension).toEqual({});
    else expect(readUnit(written)).toBeUndefined();
  });

  it('throws on a slip of the program', () => {
    expect(() => unit('furlong')).toThrow('furlong');
  });

  it('never throws on a slip of a person', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => void readUnit(text)));
    fc.assert(fc.property(fc.stringMatching(/^[mNkgs0-9/·^()"° .-]{0,45}$/), (text) => void readUnit(text)));
  });
});

describe('dimensions', () => {
  it.each([
    ['N·m', 'J', true],
    ['MPa', 'N/mm²', true],
    ['cc', 'in3', true],
    ['deg', '1', false],
    ['dB(A)', '1', false],
    ['rpm', '1/min', false],
    ['N·m/deg', 'N·m', false],
    ['lb', 'lbf', false],
  ])('%s and %s: %s', (a, b, same) => {
    expect(sameDimension(unit(a).dimension, unit(b).dimension)).toBe(same);
  });
});

describe('conversion', () => {
  it.each([
    ['2.5', 'mm', 0.0025],
    ['0.1', 'mm', 0.0001],
    ['1', 'in', 0.0254],
    ['3', 'thou', 0.0000762],
    ['1', 'mm⁴', 1e-12],
    ['7', 'kN/mm', 7e6],
    ['12.5', 'cm³', 0.0000125],
    ['20', 'degC', 293.15],
  ])('%s %s has no noise', (x, from, si) => {
    expect(toSI(x, from)).toBe(si);
    expect(toUnit(si, from)).toBe(Number(x));
  });

  it('goes there and back', () => {
    const written = fc.constantFrom('mm', 'in', 'thou', 'kg', 'lbf', 'N·m', 'MPa', 'deg', 'rpm', 'degC', 'km/h', '%');
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), written, (x, u) => {
        expect(Math.abs(toUnit(toSI(x, u), u) - x)).toBeLessThanOrEqual(
          1e-12 * Math.max(Math.abs(x), u === 'degC' ? 1000 : 1e-200),
        );
      }),
    );
  });
});

it('differences on a scale with a zero of its own are in kelvin, all others in their own unit', () => {
  expect(['degC', 'K', 'mm', 'dB(A)'].map(differenceUnit)).toEqual(['K', 'K', 'mm', 'dB(A)']);
});

describe('nearest units', () => {
  it.each([
    ['MM', ['mm']],
    ['Mpa', ['MPa']],
    ['KG', ['kg']],
    ['nm', ['N·m']],
    ['RPM', ['rpm']],
    ['ft lb', ['ft·lbf']],
    ['lb-ft', ['ft·lbf']],
    ['inches', ['in']],
    ['lbs', ['lb', 'lbf']],
    ['kph', ['km/h']],
    ['min-1', ['rpm']],
    ['DBA', ['dB(A)']],
  ])('%s was meant as %j', (written, meant) => {
    expect(nearestUnits(written)).toEqual(meant);
  });

  it('names those that fit where nothing is close', () => {
    expect(nearestUnits('furlong', { length: 1 })).toEqual(['mm', 'in', 'thou']);
    expect(nearestUnits('furlong')).toEqual([]);
    expect(nearestUnits('', { level: 1 })).toEqual(['dB(A)', 'dB']);
  });

  it('stays within the wanted dimension', () => {
    expect(nearestUnits('lbs', { mass: 1 })).toEqual(['lb']);
  });
});
