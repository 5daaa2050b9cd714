import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate, type Names } from '../../../src/checks/codes/evaluate.js';
import * as module from '../../../src/checks/codes/expression.js';
import { readExpression } from '../../../src/checks/codes/expression.js';
import { type Dimension, readUnit } from '../../../src/units/unit.js';

const of = (unit: string): Dimension => readUnit(unit)!.dimension;
const given =
  (values: Readonly<Record<string, [number, string]>>): Names =>
  (name) => {
    const value = Object.hasOwn(values, name) ? values[name] : undefined;
    return value && { si: value[0], dimension: of(value[1]) };
  };
const work = (text: string, names: Names = () => undefined) => {
  const read = readExpression(text);
  if (!read.ok) throw new Error(`${text}: ${read.problem.found}`);
  return evaluate(read.expression, names);
};
const number = (text: string, names?: Names) => {
  const result = work(text, names);
  if (result.is !== 'number') throw new Error(`${text} gives ${result.is}`);
  return result.si;
};

test('exports reading, and the operators it knows', () => {
  expect(Object.keys(module).sort()).toEqual(['arithmetic', 'comparisons', 'readExpression']);
});

describe('numbers with units', () => {
  test.each([
    ['2.5', 2.5, '1'],
    ['25 mm', 0.025, 'm'],
    ['25mm', 0.025, 'm'],
    ['5.0 cm3/kg', 5e-6, 'm3/kg'],
    ['400 rad/s2', 400, 'rad/s2'],
    ['7 %', 0.07, '1'],
    ['90 dB(A)', 90, 'dB(A)'],
    ['90 degC', 363.15, 'K'],
    ['1e3 mm', 1, 'm'],
    ['.5 m', 0.5, 'm'],
    ['3/4 in', 0.01905, 'm'],
    ['1-1/8 in', 0.028575, 'm'],
    ['1 1/8 in', 0.028575, 'm'],
    ['3/4"', 0.01905, 'm'],
    ['2 * 3/4 in', 0.0381, 'm'],
    ['25 mm - 3/4 in', 0.00595, 'm'],
    ['3/4', 0.75, '1'],
  ])('%s', (text, si, unit) => {
    expect(work(text)).toMatchObject({ is: 'number', si, dimension: of(unit) });
  });

  test('a fraction without a unit, or with a name behind it, is a quotient', () => {
    expect(number('100/80')).toBe(1.25);
    expect(number('3/mass', given({ mass: [2, 'kg'] }))).toBe(1.5);
    expect(work('3 / 4 in')).toMatchObject({ dimension: { length: -1 } });
  });

  test('a division right after a unit stays a division where the unit ends', () => {
    expect(number('25 mm/2')).toBe(0.0125);
    expect(number('3000 cm3/mass', given({ mass: [1000, 'kg'] }))).toBe(0.000003);
  });

  test('arithmetic is decimal: 3.0 mm over 1.2 mm is 2.5 and not a digit beside it', () => {
    expect(number('3.0 mm / 1.2 mm')).toBe(2.5);
    expect(number('new / old', given({ new: [0.003, 'm'], old: [0.0012, 'm'] }))).toBe(2.5);
    expect(work('0.1 mm + 0.2 mm == 0.3 mm')).toEqual({ is: 'truth', holds: true });
  });

  test('what binds first', () => {
    expect(number('2 + 3 * 4 - 6 / 2')).toBe(11);
    expect(number('-(2 + 3) * -2')).toBe(10);
    expect(number('8 / 4 / 2')).toBe(1);
    expect(work('1 < 2 or 3 < 2 and 5 < 4')).toEqual({ is: 'truth', holds: true });
  });

  test('min, max and abs', () => {
    expect(number('min(50 mm, travel / 3)', given({ travel: [0.12, 'm'] }))).toBe(0.04);
    expect(number('max(1, 2, 3)')).toBe(3);
    expect(number('abs(-2 mm)')).toBe(0.002);
  });
});

describe('what is refused', () => {
  test.each([
    'constructor',
    '__proto__',
    'toString',
    'hasOwnProperty',
    'this',
    'true',
    'min',
    'and',
    'a.b',
    'a.constructor',
    'a["b"]',
    'a[0]',
    '"text"',
    "'text'",
    '`text`',
    '[1, 2]',
    '{}',
    'eval(1)',
    'constructor(1)',
    '(a)(1)',
    'min.constructor(1, 2)',
    'max(1, 2)(3)',
    'process()',
    'abs(1, 2)',
    'min(1)',
    'max()',
    'a = 1',
    'a += 1',
    'a++',
    '++a',
    '!a',
    '~a',
    'a ? b : c',
    'a; b',
    'a, b',
    '(a, b)',
    'a b',
    '()',
    'a => a',
    'function () {}',
    'while (1) {}',
    'for (;;) {}',
    'new a',
    'typeof a',
    'a ** 2',
    'a ^ 2',
    'a % 2',
    'a << 2',
    'a & b',
    'a && b',
    'a || b',
    'a === b',
    '2 ** 3 ** 9',
    '',
    '   ',
    '1 +',
    '* 2',
    '(1',
    '1)',
    '1..2',
    '1.2.3',
    '0x10',
    '1_000',
    '5 foo',
    '2.5 Mm2x',
    '1e999',
    '9'.repeat(400),
    '𝒙',
    'Ä',
    'a\u202eb',
    'A',
    '90 degC + 1 K',
    '2 * 90 degC',
    '-(5 degC)',
    'a < b < c',
    'a and b',
    '(a < b) + 1',
    'min(a < b, 1)',
    '('.repeat(150) + '1' + ')'.repeat(150) + '+'.repeat(120),
    `${'-'.repeat(300)}a`,
    `${'('.repeat(300)}`,
    `a${' + a'.repeat(99)}`.padEnd(401, ' '),
  ])('%s', (text) => {
    const read = readExpression(text);
    expect(read.ok).toBe(false);
    if (!read.ok) {
      expect(read.problem.found).not.toBe('');
      expect(read.problem.at).toBeGreaterThanOrEqual(0);
      expect(read.problem.at).toBeLessThanOrEqual(text.length);
    }
  });

  test('a long product stays a refusal or a number, never a crash', () => {
    const text = Array.from({ length: 60 }, () => '9e9').join(' * ');
    const read = readExpression(text);
    if (read.ok) expect(evaluate(read.expression, () => undefined)).toMatchObject({ is: 'problem' });
    else expect(read.problem.found).toContain('nested');
  });

  test('the offset points at the culprit', () => {
    expect(readExpression('mass * Ä')).toMatchObject({ ok: false, problem: { at: 7 } });
    expect(readExpression('2.5 * 3 foo')).toMatchObject({
      ok: false,
      problem: { found: '`foo` after a number', at: 7 },
    });
    expect(readExpression('a < b and c')).toMatchObject({ ok: false, problem: { at: 10 } });
  });

  test('anything typed is read or refused, and never runs', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), (text) => {
        const read = readExpression(text);
        if (read.ok) evaluate(read.expression, () => undefined);
      }),
    );
    const pieces = fc.constantFrom(
      'a',
      '1',
      '2 mm',
      '+',
      '-',
      '*',
      '/',
      '(',
      ')',
      '<',
      'and',
      'or',
      'min',
      ',',
      '.',
      '[',
      ']',
      '"',
      '?',
      ':',
      ' ',
      'constructor',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), (words) => {
        const read = readExpression(words.join(' '));
        if (read.ok) evaluate(read.expression, given({ a: [1, '1'] }));
      }),
    );
  });
});

describe('dimensions', () => {
  test.each([
    ['3 mm + 2 kg', 7],
    ['3 mm - 2', 7],
    ['3 mm < 2 kg', 7],
    ['max(1 mm, 2 kg)', 10],
    ['1 deg + 1', 8],
    ['90 dB(A) + 5', 11],
    ['3 / 4 in + 1 in', 11],
  ])('%s is a problem where it stands', (text, at) => {
    expect(work(text)).toMatchObject({ is: 'problem', problem: { at } });
  });

  test('products and quotients carry their dimension', () => {
    expect(work('5.0 cm3/kg * mass', given({ mass: [1100, 'kg'] }))).toMatchObject({ si: 0.0055, dimension: of('m3') });
    expect(work('force / area', given({ force: [10, 'N'], area: [2, 'm2'] }))).toMatchObject({
      si: 5,
      dimension: of('Pa'),
    });
  });

  test('division by nothing is a problem, not infinity', () => {
    expect(work('1 / (a - a)', given({ a: [1, '1'] }))).toMatchObject({ is: 'problem' });
    expect(work('0 / 0 < 1')).toMatchObject({ is: 'problem' });
  });
});

describe('missing names', () => {
  const some = given({ mass: [900, 'kg'] });
  test('are all reported', () => {
    const result = work('a * b + mass * a', some);
    expect(result.is).toBe('missing');
    if (result.is === 'missing') expect([...result.names].sort()).toEqual(['a', 'b']);
  });
  test('do not matter where one side decides', () => {
    expect(work('mass < 800 kg and age > 3 s', some)).toEqual({ is: 'truth', holds: false });
    expect(work('mass > 800 kg or age > 3 s', some)).toEqual({ is: 'truth', holds: true });
    expect(work('mass > 800 kg and age > 3 s', some)).toMatchObject({ is: 'missing' });
  });
  test('are listed by reading', () => {
    expect(readExpression('min(top_speed, 180 km/h) - a * a')).toMatchObject({
      ok: true,
      gives: 'number',
      names: new Set(['top_speed', 'a']),
    });
    expect(readExpression('a < 1')).toMatchObject({ ok: true, gives: 'truth' });
  });
});

describe('laws', () => {
  const amount = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((n) => n / 1000);
  test('sums and products commute, and a difference undoes a sum', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        const names = given({ a: [a, 'mm'], b: [b, 'mm'] });
        expect(number('a + b', names)).toBe(number('b + a', names));
        expect(number('a * b', names)).toBe(number('b * a', names));
        expect(number('a + b - b', names) + 0).toBe(a + 0);
        expect(number('max(a, b)', names) + 0).toBe(Math.max(a, b) + 0);
      }),
    );
  });
  test('exactly one of less, equal and greater holds', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        const names = given({ a: [a, 'kg'], b: [b, 'kg'] });
        const holds = ['a < b', 'a == b', 'a > b']
          .map((text) => work(text, names))
          .filter((r) => r.is === 'truth' && r.holds);
        expect(holds).toHaveLength(1);
      }),
    );
  });
  test('a unit and its SI form give the same number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (n) => {
        expect(number(`${n} mm`)).toBe(number(`${n} m / 1000`));
      }),
    );
  });
});
