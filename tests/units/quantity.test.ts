import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Quantity, type QuantityProblem, readQuantity } from '../../src/units/quantity.js';
import { showQuantity } from '../../src/units/show.js';
import { COVERAGE, studentT } from '../../src/units/student.js';

function quantity(text: string, fits: string): Quantity {
  const read = readQuantity(text, fits);
  if (!read.ok) throw new Error(`${text}: ${JSON.stringify(read.problem)}`);
  return read.quantity;
}

function problem(text: string, fits: string): QuantityProblem {
  const read = readQuantity(text, fits);
  if (read.ok) throw new Error(`${text} was read as ${read.quantity.si}`);
  return read.problem;
}

describe('everyday forms', () => {
  it.each([
    ['2.5mm', 'mm', 0.0025, 'mm'],
    ['2.5 mm', 'mm', 0.0025, 'mm'],
    ['.5 mm', 'mm', 0.0005, 'mm'],
    ['+2.5 mm', 'mm', 0.0025, 'mm'],
    ['-2.5 mm', 'mm', -0.0025, 'mm'],
    ['−2.5 mm', 'mm', -0.0025, 'mm'],
    ['3/4 in', 'mm', 0.01905, 'in'],
    ['3/4"', 'mm', 0.01905, 'in'],
    ['3/4″', 'mm', 0.01905, 'in'],
    ['1-1/8 in', 'mm', 0.028575, 'in'],
    ['1 1/8 in', 'mm', 0.028575, 'in'],
    ['1⅛ in', 'mm', 0.028575, 'in'],
    ['½"', 'mm', 0.0127, 'in'],
    ['-1-1/8 in', 'mm', -0.028575, 'in'],
    ['0.002 thou', 'mm', 5.08e-8, 'thou'],
    ['2 thou', 'mm', 0.0000508, 'thou'],
    ['120 Nm', 'N·m', 120, 'N·m'],
    ['4.5e3 N', 'N', 4500, 'N'],
    ['4.5×10³ N', 'N', 4500, 'N'],
    ['4.5x10^3 N', 'N', 4500, 'N'],
    ['4.5×10⁻³ N', 'N', 0.0045, 'N'],
    ['3.73', '1', 3.73, '1'],
    ['3.73:1', '1', 3.73, '1'],
    ['3.73 : 1', '1', 3.73, '1'],
    ['41:11', '1', 41 / 11, '1'],
    ['41/11', '1', 41 / 11, '1'],
    ['95 %', '1', 0.95, '%'],
    ['95%', '1', 0.95, '%'],
    ['8', '1', 8, '1'],
    ['20 degC', 'degC', 293.15, 'degC'],
    ['300 K', 'degC', 300, 'K'],
    ['3 1/min', '1/min', 0.05, '1/min'],
    ['0 mm', 'mm', 0, 'mm'],
  ])('%s', (text, fits, si, unit) => {
    const read = quantity(text, fits);
    expect(read.si).toBe(si);
    expect(read.unit).toBe(unit);
    expect(read.expanded).toBeUndefined();
  });

  /** 1 ft·lbf = 1.355 817 948 N·m (NIST SP 811, app. B.8). */
  it.each(['90 ft·lbf', '90 ft-lbf', '90 ft lbf', '90 ft.lbf', '90 lbf·ft', '90ft·lbf'])('%s', (text) => {
    expect(quantity(text, 'N·m').si).toBeCloseTo(90 * 1.355817948, 6);
  });

  it.each(['5°', '5 deg', '5deg', '5 °'])('%s', (text) => {
    expect(quantity(text, 'deg').si).toBe(Math.PI / 36);
  });

  it('degrees and minutes of arc', () => {
    expect(quantity('1°30′', 'deg').si).toBe(quantity('1.5 deg', 'deg').si);
    expect(quantity("-0° 45'", 'deg').si).toBe(quantity('-0.75 deg', 'deg').si);
    expect(quantity('1°30′ ± 5 arcmin', 'deg').expanded).toBeCloseTo(Math.PI / 2160, 12);
    expect(problem('1°75′', 'deg').code).toBe('unit-unknown');
  });

  it('3500 rpm is 366.52 rad/s', () => {
    expect(quantity('3500 rpm', 'rpm').si).toBeCloseTo(366.519, 3);
  });
});

describe('half the last place written', () => {
  it.each([
    ['2.5 mm', 'mm', 0.00005],
    ['2.50 mm', 'mm', 0.000005],
    ['25 mm', 'mm', 0.0005],
    ['4500 kg', 'kg', 0.5],
    ['4.5e3 kg', 'kg', 50],
    ['3/8 in', 'mm', 0.0015875],
    ['3.73:1', '1', 0.005],
    ['41:11', '1', 0],
    ['41/11', '1', 0],
    ['20 degC', 'degC', 0.5],
    ['[2.5, 2.51] mm', 'mm', 0.00005],
  ])('%s', (text, fits, half) => {
    expect(quantity(text, fits).halfDigit).toBe(half);
  });
});

describe('stated uncertainty', () => {
  it.each([
    '1.2 ± 0.05 mm',
    '1.2±0.05mm',
    '1.2 +/- 0.05 mm',
    '1.2 +- 0.05 mm',
    '1.2 mm ± 0.05 mm',
    '1.2 mm ± 50 µm',
    '(1.2 ± 0.05) mm',
  ])('%s', (text) => {
    const read = quantity(text, 'mm');
    expect([read.si, read.expanded]).toEqual([0.0012, 0.00005]);
  });

  it('as a share of the value', () => {
    expect(quantity('1.2 mm ± 4 %', 'mm').expanded).toBe(0.000048);
    expect(quantity('-1.2 mm ± 4 %', 'mm').expanded).toBe(0.000048);
    expect(quantity('(95 ± 2) %', '1')).toMatchObject({ si: 0.95, expanded: 0.02 });
  });

  it('of a temperature is a difference', () => {
    expect(quantity('90 ± 2 degC', 'degC')).toMatchObject({ si: 363.15, expanded: 2 });
    expect(quantity('90 degC ± 2 K', 'degC')).toMatchObject({ si: 363.15, expanded: 2 });
  });

  it.each([
    ['1.2 ± 0 mm', 'uncertainty'],
    ['1.2 ± -0.1 mm', 'uncertainty'],
    ['0 mm ± 4 %', 'uncertainty'],
    ['1.2 ± 4 %', 'uncertainty'],
    ['90 degC ± 2 %', 'dimension'],
    ['1.2 mm ± 0.05', 'unit-missing'],
    ['1.2 mm ± 0.05 kg', 'dimension'],
    ['1.2 mm ± 0.05 mn', 'unit-unknown'],
    ['1.2 mm ±', 'number'],
    ['± 0.1 mm', 'number'],
    ['1.2 ± 0.1', 'unit-missing'],
    ['(1.2 ± 0.1 mm', 'number'],
    ['(1.2) mm', 'number'],
  ])('%s is refused', (text, code) => {
    expect(problem(text, 'mm').code).toBe(code);
  });

  it('a share of a temperature or a level has no meaning', () => {
    expect(problem('90 degC ± 2 %', 'degC').code).toBe('uncertainty');
    expect(problem('90 dB(A) ± 2 %', 'dB(A)').code).toBe('uncertainty');
    expect(problem('95 % ± 2 %', '1').hint).toContain('(95 ± 2) %');
    expect(problem('3.73 ± 1 %', '1').code).toBe('uncertainty');
  });
});

describe('readings', () => {
  /** s = 0.015275 mm, t = 4.53 for 2 degrees of freedom (JCGM 100:2008, table G.2): 4.53 · 0.015275/√3 = 0.0399 mm. */
  it('give their mean and type A uncertainty', () => {
    const read = quantity('[2.48, 2.51, 2.50] mm', 'mm');
    expect(read.readings).toEqual([0.00248, 0.00251, 0.0025]);
    expect(read.si).toBeCloseTo(0.00249667, 8);
    expect(read.spread).toBeCloseTo(0.0000399, 7);
    expect(read.expanded).toBeUndefined();
    expect(read.text).toBe('[2.48, 2.51, 2.50] mm');
  });

  it('of one have no spread', () => {
    const read = quantity('[2.48] mm', 'mm');
    expect(read.readings).toEqual([0.00248]);
    expect(read.spread).toBeUndefined();
  });

  it('that are equal have no spread, and keep half the last place written', () => {
    expect(quantity('[2.5, 2.5, 2.5] mm', 'mm')).toMatchObject({ spread: 0, halfDigit: 0.00005 });
  });

  /** JCGM 100:2008, H.2, table H.2, first column: five voltages, mean 4.9990 V, s of the mean 0.0032 V [from memory]. */
  it('give the mean and its standard uncertainty of the worked example of the Guide', () => {
    const read = quantity('[5.007, 4.994, 5.005, 4.990, 4.999] V', 'V');
    expect(read.si).toBeCloseTo(4.999, 10);
    expect(read.spread! / studentT(4, COVERAGE)).toBeCloseTo(0.0032, 4);
  });

  it('keep each its own unit', () => {
    expect(quantity('[40 mm, 40 in, 40 in]', 'mm').readings).toEqual([0.04, 1.016, 1.016]);
    expect(quantity('[25.4 mm, 1 in, 2.54 cm]', 'mm')).toMatchObject({ si: 0.0254, unit: 'mm', spread: 0 });
    expect(quantity('[20 degC, 293.15 K]', 'degC').si).toBeCloseTo(293.15, 9);
  });

  it('keep each its own ±', () => {
    expect(quantity('[40 mm, 41 ± 500 mm]', 'mm').eachStated).toEqual([undefined, 0.5]);
    expect(quantity('[40 ± 1, 41 ± 2] mm', 'mm').eachStated).toEqual([0.001, 0.002]);
    expect(quantity('[40 mm ± 1 %, (41 ± 2) mm]', 'mm').eachStated).toEqual([0.0004, 0.002]);
  });

  it('tell which of them is of another kind', () => {
    expect(problem('[40 mm, 40 kg]', 'mm')).toMatchObject({ code: 'dimension', at: [11, 13] });
    expect(problem('[40 mm, 40 kg, 40 mm]', 'mm')).toMatchObject({ code: 'dimension', at: [11, 13] });
    expect(problem('[40 mm, 40 in, 40]', 'mm')).toMatchObject({ code: 'unit-missing', at: [15, 17] });
  });

  it('read a number with an exponent to its own digits', () => {
    expect(quantity('4.9e1 mm', 'mm')).toMatchObject({ si: 0.049, halfDigit: quantity('49 mm', 'mm').halfDigit });
    expect(quantity('4.90e1 mm', 'mm').halfDigit).toBe(quantity('49.0 mm', 'mm').halfDigit);
  });

  it('in another order are the same, whatever they are', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 9999 }), fc.constantFrom('mm', 'in', 'm')), {
          minLength: 2,
          maxLength: 6,
        }),
        (readings) => {
          const written = readings.map(([n, u]) => `${n} ${u}`);
          const one = quantity(`[${written.join(', ')}]`, 'mm');
          const other = quantity(`[${written.toReversed().join(', ')}]`, 'mm');
          const alone = written.map((w) => quantity(w, 'mm').si);
          expect(one.readings).toEqual(alone);
          expect(other.si).toBeCloseTo(one.si, 9);
          expect(one.si).toBeGreaterThanOrEqual(Math.min(...alone) * (1 - 1e-12));
          expect(one.si).toBeLessThanOrEqual(Math.max(...alone) * (1 + 1e-12));
        },
      ),
    );
  });

  it.each(['[2.48 mm, 2.51 mm]', '[2.48mm; 2.51mm]', '[2.48, 2.51 mm]', '[2.48,2.51] mm', '[ 2.48 , 2.51 ]mm'])(
    '%s',
    (text) => {
      expect(quantity(text, 'mm').readings).toEqual([0.00248, 0.00251]);
    },
  );

  it.each([
    ['[2,48, 2,51] mm', 'decimal-comma'],
    ['[248,251] mm', 'decimal-comma'],
    ['[] mm', 'readings'],
    ['[2.48, 2.51 mm', 'readings'],
    ['[2.48, 2.51] ± 0.02 mm', 'readings'],
    ['[2.48 mm, 2.51 in] mm', 'readings'],
    ['[2.48 mm, 2.51] in', 'readings'],
    ['[2.48, , 2.51] mm', 'number'],
    ['[2.48, 2.51]', 'unit-missing'],
    ['[2.48, x] mm', 'number'],
  ])('%s is refused', (text, code) => {
    expect(problem(text, 'mm').code).toBe(code);
  });
});

describe('what cannot be read says what to write', () => {
  it.each([
    ['', 'mm', 'empty', 'write a value, such as 10 mm'],
    ['2,5 mm', 'mm', 'decimal-comma', 'write 2.5 mm'],
    ['1,100 kg', 'kg', 'decimal-comma', 'write 1100 kg, or 1.100 kg if the comma marks decimals'],
    ['1,234,567 kg', 'kg', 'decimal-comma', 'write 1234567 kg'],
    ['1,100.5 kg', 'kg', 'decimal-comma', 'write 1100.5 kg'],
    ['1.100,5 kg', 'kg', 'decimal-comma', 'write 1100.5 kg'],
    ['1.2 ± 0,05 mm', 'mm', 'decimal-comma', 'write 1.2 ± 0.05 mm'],
    ['1 100 kg', 'kg', 'number', 'write 1100 kg'],
    ['2.5', 'mm', 'unit-missing', 'write 2.5 mm'],
    ['2.5 kg', 'mm', 'dimension', 'give the value in mm'],
    ['90 ft lb', 'N·m', 'dimension', 'did you mean ft·lbf?'],
    ['3000 1/min', 'rpm', 'dimension', 'did you mean rpm?'],
    ['3.73 mm', '1', 'dimension', 'leave the unit out'],
    ['2.5 MM', 'mm', 'unit-unknown', 'did you mean mm?'],
    ['300 Mpa', 'MPa', 'unit-unknown', 'did you mean MPa?'],
    ['12 KG', 'kg', 'unit-unknown', 'did you mean kg?'],
    ['90 nm', 'N·m', 'unit-unknown', 'did you mean N·m?'],
    ['2-3 mm', 'mm', 'range', 'write 2.5 ± 0.5 mm'],
    ['2 to 3 mm', 'mm', 'range', 'write 2.5 ± 0.5 mm'],
    ['2–3', 'mm', 'range', 'write 2.5 ± 0.5 mm'],
    ['~2 mm', 'mm', 'number', 'write the value itself, and how far it can be off: 2 mm ± …'],
    ['thick', 'mm', 'number', 'write the number first, such as 10 mm'],
    ['1e31 mm', 'mm', 'number', 'write at most 30 digits and an exponent within ±30'],
    [`${'9'.repeat(31)} mm`, 'mm', 'number', 'write at most 30 digits and an exponent within ±30'],
    ['12/0 in', 'mm', 'number', 'write a fraction of whole numbers, such as 3/4 or 1-1/8'],
    ['2.5/3 in', 'mm', 'number', 'write a fraction of whole numbers, such as 3/4 or 1-1/8'],
    ['1/0 in', 'mm', 'number', 'write a fraction of whole numbers, such as 3/4 or 1-1/8'],
  ])('%s', (text, fits, code, hint) => {
    expect(problem(text, fits)).toMatchObject({ code, hint });
  });

  it('names what was found and what fits', () => {
    expect(problem('2.5 kg', 'mm')).toMatchObject({
      found: 'kg, which is a mass',
      expected: 'a length such as mm or in',
      at: [4, 6],
    });
    expect(problem('  2.5', 'in')).toMatchObject({
      found: '“2.5” without a unit',
      expected: 'a length such as in or mm',
      at: [2, 5],
    });
  });

  it('takes the largest and smallest that it accepts', () => {
    expect(quantity('1e30 mm', 'mm').si).toBe(1e27);
    expect(quantity('1e-30 mm', 'mm').si).toBe(1e-33);
    expect(quantity(`${'9'.repeat(30)} mm`, 'mm').si).toBeCloseTo(1e27, -15);
  });
});

const pieces = fc.array(
  fc.oneof(
    fc.constantFrom(
      ...[
        '[',
        ']',
        '(',
        ')',
        ',',
        ', ',
        '±',
        '+/-',
        ' ',
        '-',
        '−',
        '/',
        ':',
        '.',
        '°',
        '′',
        '"',
        '%',
        '^',
        '×10',
        '⁻³',
        'e',
        '½',
      ],
      ...[
        'mm',
        'in',
        'kg',
        'N·m',
        'Nm',
        'ft lbf',
        'deg',
        'rpm',
        'degC',
        'dB(A)',
        'MM',
        '1',
        '0',
        '25',
        '2.5',
        '1/8',
        '9999999999',
      ],
    ),
    fc.string({ unit: 'binary', maxLength: 3 }),
  ),
  { maxLength: 14 },
);
const anything = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 600 }),
  pieces.map((p) => p.join('')),
);
const fits = fc.constantFrom('mm', 'kg', '1', 'deg', 'N·m', 'degC', 'dB(A)', 'rpm', '%', 'kN/mm');

describe('laws', () => {
  it('never throws, and points inside the text', () => {
    fc.assert(
      fc.property(anything, fits, (text, unit) => {
        const read = readQuantity(text, unit);
        if (read.ok) {
          expect(Number.isFinite(read.quantity.si)).toBe(true);
          expect(read.quantity.expanded ?? 1).toBeGreaterThan(0);
          return;
        }
        const [start, end] = read.problem.at;
        expect(0 <= start && start <= end && end <= text.length).toBe(true);
        for (const part of [read.problem.found, read.problem.expected, read.problem.hint])
          expect(part.length).toBeGreaterThan(0);
      }),
      { numRuns: 3000 },
    );
  });

  it('what is shown is read again as what is shown', () => {
    const number = fc
      .tuple(fc.integer({ min: -99999, max: 99999 }), fc.integer({ min: -9, max: 9 }))
      .map(([n, e]) => `${n}e${e}`);
    const unit = fc.constantFrom(
      'mm',
      'in',
      'kg',
      'N·m',
      'ft·lbf',
      'MPa',
      'deg',
      'rpm',
      'degC',
      'dB(A)',
      '1',
      '%',
      'cm³/kg',
    );
    const spread = fc.option(fc.integer({ min: 1, max: 9999 }).map(String), { nil: undefined });
    fc.assert(
      fc.property(number, unit, spread, (n, u, s) => {
        const text = s === undefined ? `${n} ${u === '1' ? '' : u}` : `(${n} ± ${s}) ${u === '1' ? '' : u}`;
        const first = quantity(text, u);
        const shown = showQuantity(first.si, first.unit, first.expanded);
        const second = quantity(shown, u);
        expect(showQuantity(second.si, second.unit, second.expanded)).toBe(shown);
      }),
      { numRuns: 1000 },
    );
  });
});
