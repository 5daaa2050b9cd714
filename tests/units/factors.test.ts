import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { Decimal } from '../../src/units/decimal.js';
import { units } from '../../src/units/factors.js';
import { toSI, toUnit, unit } from '../../src/units/unit.js';

/**
 * The independent library of units is mathjs (Apache-2.0) in decimal arithmetic. The right-hand side is what it calls
 * our unit, or how it is composed of units that it knows; it rounds its own psi, hp and kip, so these are composed.
 */
const math = create(all!, { number: 'BigNumber', precision: 60 });

const named: Readonly<Record<string, string>> = {
  in: 'inch',
  thou: 'mil',
  t: 'tonne',
  lb: 'lbm',
  h: 'hour',
  min: 'minute',
  ozf: 'lbf/16',
  kip: '1000 lbf',
  psi: 'lbf/inch^2',
  ksi: '1000 lbf/inch^2',
  mbar: '0.001 bar',
  hp: '550 ft lbf/s',
  PS: '75 kgf m/s',
  'cm³': 'cm^3',
  mph: 'mi/hour',
  g_n: 'kgf/kg',
  rev: 'cycle',
  rpm: 'cycle/minute',
  Hz: '1/s',
  kHz: '1000/s',
  Ah: 'A hour',
};
const without = ['1', '%', 'dB', 'dB(A)', 'degC'];

const bases = {
  length: 'm',
  mass: 'kg',
  time: 's',
  temperature: 'K',
  angle: 'rad',
  current: 'A',
  level: 'none',
} as const;

function theirs(text: string): Decimal {
  const si = Object.entries(unit(text).dimension)
    .map(([base, n]) => `${bases[base as keyof typeof bases]}^${n}`)
    .join(' ');
  const one = math.evaluate(`1 * ${named[text] ?? text.replace('µ', 'u')}`) as {
    toNumeric(unit: string): { toString(): string };
  };
  return new Decimal(one.toNumeric(si).toString());
}

describe('factors of units', () => {
  const printed = [...new Set([...units.values()].map((u) => u.text))].filter((text) => !without.includes(text));

  it.each(printed)('%s is what mathjs says', (text) => {
    const ours = unit(text).factor;
    expect(ours.minus(theirs(text)).div(ours).abs().lt('1e-30')).toBe(true);
  });

  it('covers every spelling', () => {
    for (const [spelling, atom] of units) expect(unit(spelling).factor.eq(unit(atom.text).factor), spelling).toBe(true);
  });

  /** NIST Special Publication 811 (2008), appendix B.8, printed to seven digits [from memory]. */
  it.each([
    ['lbf', '4.448222'],
    ['kgf', '9.80665'],
    ['kip', '4448.222'],
    ['psi', '6894.757'],
    ['ksi', '6894757'],
    ['ft·lbf', '1.355818'],
    ['lbf·in', '0.1129848'],
    ['ozf·in', '0.007061552'],
    ['hp', '745.6999'],
    ['PS', '735.4988'],
    ['mph', '0.44704'],
    ['thou', '0.0000254'],
    ['in⁴', '0.0000004162314'],
    ['in³', '0.00001638706'],
    ['lb/in³', '27679.90'],
    ['lbf/in', '175.1268'],
    ['rpm', '0.1047198'],
    ['oz', '0.02834952'],
    ['km/h', '0.2777778'],
    ['rad/s', '1'],
  ])('%s is %s in NIST SP 811', (text, printedFactor) => {
    const digits = printedFactor.replace(/^0\.0*|\./g, '').length;
    expect(unit(text).factor.toSignificantDigits(digits).eq(printedFactor)).toBe(true);
  });

  /** Worked in calculations of the trade: 1 oz·in = 28.349523125 g × 25.4 mm (exact by definition). */
  it('1 oz·in is 720.078 g·mm', () => {
    expect(toSI(1, 'oz·in')).toBe(0.000720077887375);
    expect(toUnit(toSI(1, 'oz·in'), 'g·mm')).toBe(720.077887375);
  });

  it('the zero of degC is 273.15 K', () => {
    expect(toSI('0', 'degC')).toBe(273.15);
    expect(toSI('-40', '°C')).toBe(233.15);
  });
});
