import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assumedOf, combine, propagate, type Spread, weighted } from '../../src/calc/propagate.js';
import { run } from '../../src/calc/run.js';
import { OutOfRange, type Sheet, sheet } from '../../src/calc/sheet.js';
import { expanded, type Value } from '../../src/calc/value.js';

/** A value with expanded uncertainty `U` from one source. */
const value = (si: number, U: number, source: string): Value => ({
  si,
  unit: '1',
  parts: new Map([[source, U]]),
  assumed: new Set(),
  origin: { kind: 'given', text: '' },
});
const number = fc.integer({ min: -1000, max: 1000 }).map((n) => n / 8);
const uncertainty = fc.integer({ min: 0, max: 100 }).map((n) => n / 8);
const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(b)));
const same = (a: Spread, b: Spread) => {
  near(a.si, b.si);
  near(expanded(a), expanded(b));
  for (const source of new Set([...a.parts.keys(), ...b.parts.keys()]))
    near(a.parts.get(source) ?? 0, b.parts.get(source) ?? 0);
};

describe('one propagation', () => {
  // JCGM 100:2008, 5.2.2, example (memory): ten resistors of 1000 Ω, calibrated with one standard of u = 100 mΩ, in series
  // have u = 1 Ω; independent ones would have 0.32 Ω.
  it('adds what rests on one standard, and not as if each were independent', () => {
    const series = (source: (i: number) => string) =>
      combine(
        Array.from({ length: 10 }, (_, i) => value(1000, 0.2, source(i))),
        (...of) => of.reduce((a, b) => a + b, 0),
      );
    expect(expanded(series(() => 'standard')) / 2).toBeCloseTo(1, 9);
    expect(expanded(series((i) => `standard ${i}`)) / 2).toBeCloseTo(0.316, 3);
  });

  it('x − x is exact', () => {
    fc.assert(
      fc.property(number, uncertainty, (x, U) => {
        const one = value(x, U, 'x');
        expect(expanded(combine([one, one], (a, b) => a - b))).toBe(0);
        expect(weighted([1, one], [-1, one])).toMatchObject({ si: 0, parts: new Map() });
      }),
    );
  });

  it('2 x has twice the uncertainty, and so has x + x', () => {
    fc.assert(
      fc.property(number, uncertainty, (x, U) => {
        const one = value(x, U, 'x');
        near(expanded(combine([one], (a) => 2 * a)), 2 * U);
        near(expanded(combine([one, one], (a, b) => a + b)), 2 * U);
        expect(expanded(weighted([1, one], [1, one]))).toBe(2 * U);
      }),
    );
  });

  it('is linear: a x + b y by known sensitivities as by sensitivities found', () => {
    fc.assert(
      fc.property(
        number,
        number,
        number,
        number,
        uncertainty,
        uncertainty,
        fc.constantFrom('x', 'y'),
        (a, b, x, y, u, v, source) => {
          const [one, other] = [value(x, u, 'x'), value(y, v, source)];
          same(
            combine([one, other], (p, q) => a * p + b * q),
            weighted([a, one], [b, other]),
          );
        },
      ),
    );
  });

  it('of independent values is the root of the sum of squares (JCGM 100:2008, 5.1.2)', () => {
    fc.assert(
      fc.property(number, number, uncertainty, uncertainty, (x, y, u, v) => {
        near(expanded(combine([value(x, u, 'x'), value(y, v, 'y')], (a, b) => a - b)), Math.hypot(u, v));
      }),
    );
    // 30 ± 0.3 times 20 ± 0.4: relative 1 % and 2 %, together 2.236 % of 600.
    expect(expanded(combine([value(30, 0.3, 'x'), value(20, 0.4, 'y')], (a, b) => a * b))).toBeCloseTo(13.416, 3);
  });

  it('gives what a sheet of the same formula gives', () => {
    const formula = sheet({
      id: 'formula',
      subject: 'uncertainty',
      title: 't',
      purpose: 'p',
      sources: [],
      validity: [],
      examples: [] as never,
      inputs: { a: { symbol: 'a', unit: '1', says: 'a' }, b: { symbol: 'b', unit: '1', says: 'b' } },
      results: { y: { symbol: 'y', unit: '1', says: 'y' } },
      calculate: ({ a, b }) => ({ y: (a * a) / b }),
    }) as unknown as Sheet;
    const [a, b] = [value(3, 0.1, 'a'), value(2, 0.05, 'b')];
    const { y } = run('r', formula, { a, b }).results!;
    same(
      combine([a, b], (p, q) => (p * p) / q),
      y!,
    );
  });

  // JCGM 100:2008, 5.1.3, note 2: half the difference of the results one standard uncertainty up and down. Of x + x²/50 at
  // zero with u = 1 that is exactly 1, where one side alone gives 1.02 or 0.98.
  it('takes sensitivities from both sides', () => {
    const bent = combine([value(0, 2, 'x')], (x) => x + (x * x) / 50);
    expect(bent.interval).toBeUndefined();
    expect(bent.parts.get('x')).toBeCloseTo(2, 12);
  });

  it('keeps the sign with which a source moves the result', () => {
    expect(combine([value(5, 1, 'x')], (x) => -3 * x).parts.get('x')).toBeCloseTo(-3, 12);
  });

  it('names as assumed only what the result rests on', () => {
    const [x, y] = [value(1, 0.1, 'x'), value(2, 0.1, 'y')].map((v) => ({ ...v, assumed: new Set(v.parts.keys()) }));
    expect([...combine([x!, y!], (a, b) => a + 0 * b).assumed]).toEqual(['x']);
  });

  it('gives no number where the calculation gives none', () => {
    expect(() => combine([value(0, 0.1, 'x')], (x) => 1 / x)).toThrow(OutOfRange);
    expect(() => combine([value(0.001, 0.1, 'x')], (x) => Math.sqrt(x))).toThrow(OutOfRange);
  });
});

describe('a result that is not straight', () => {
  const squares = (x: number, y: number) =>
    combine([value(x, 0.01, 'x'), value(y, 0.01, 'y')], (a, b) => a * a + b * b);

  // Exact: with both at zero y/u² is chi-squared with two degrees of freedom, whose points are −2 u² ln(1 − p).
  it('has its 2.5 % and 97.5 % points', () => {
    const { interval } = squares(0, 0);
    const at = (p: number) => -2 * 0.005 ** 2 * Math.log(1 - p);
    expect(interval!.low / at(0.025)).toBeGreaterThan(0.8);
    expect(interval!.low / at(0.025)).toBeLessThan(1.2);
    expect(interval!.high / at(0.975)).toBeGreaterThan(0.95);
    expect(interval!.high / at(0.975)).toBeLessThan(1.05);
  });

  it('has none where it is straight', () => {
    expect(squares(1, 1).interval).toBeUndefined();
  });

  const skew: Value = { ...value(10, 6, 'x'), interval: { low: 8, high: 18 } };

  it('turns round with its sign, and grows with a factor', () => {
    expect(weighted([-1, skew]).interval).toEqual({ low: -18, high: -8 });
    expect(weighted([2, skew]).interval).toEqual({ low: 16, high: 36 });
  });

  it('meets what it is added to on each side apart', () => {
    const { interval } = weighted([1, skew], [1, value(0, 1.5, 'y')]);
    expect(interval!.low).toBeCloseTo(10 - Math.hypot(2, 1.5), 12);
    expect(interval!.high).toBeCloseTo(10 + Math.hypot(8, 1.5), 12);
  });

  it('adds up with what rests on the same source, and never cancels', () => {
    const { interval } = weighted([1, skew], [-1, value(0, 1, 'x')]);
    expect(interval!.low).toBeCloseTo(10 - 3, 12);
    expect(interval!.high).toBeCloseTo(10 + 9, 12);
  });

  it('keeps its two sides in what is calculated from it', () => {
    const { interval } = combine([skew], (x) => 2 * x);
    expect(interval!.low).toBeGreaterThan(16 - 0.3);
    expect(interval!.low).toBeLessThan(16 + 0.3);
    expect(interval!.high).toBeGreaterThan(36 - 1);
    expect(interval!.high).toBeLessThan(36 + 1);
  });

  it('is as good as linear where both sides are alike', () => {
    const even: Value = { ...value(10, 2, 'x'), interval: { low: 10 - 1.96, high: 10 + 1.96 } };
    const twice = combine([even], (x) => 2 * x);
    expect(twice.interval).toBeUndefined();
    expect(expanded(twice)).toBeCloseTo(4, 3);
  });
});

describe('results on the way', () => {
  const of = (isStep: (name: string) => boolean) =>
    propagate((z) => ({ step: z[0]! ** 2, y: 3 * z[0]! }), ['x'], isStep);

  it('are not worth the trials: they keep a width that is not zero at a least value', () => {
    const { step, y } = of((name) => name === 'step');
    expect(step).toEqual({ si: 0, parts: expect.any(Map), method: 'linear' });
    // One standard uncertainty moves the square by 1 both ways: twice that, as of a straight line so steep.
    expect(step!.parts.get('x')).toBeCloseTo(2, 12);
    expect(y).toMatchObject({ method: 'linear', parts: new Map([['x', 6]]) });
  });

  it('are propagated with what is compared', () => {
    const { step, y } = of(() => false);
    expect(step!.method).toBe('monte-carlo');
    expect(y!.method).toBe('linear');
    expect(propagate((z) => ({ step: z[0]! ** 2 }), ['x'])['step']!.method).toBe('monte-carlo');
  });

  it('that bend keep their sign', () => {
    const bent = (sign: number) =>
      propagate(
        (z) => ({ y: sign * Math.exp(z[0]!) }),
        ['x'],
        () => true,
      )['y']!.parts.get('x')!;
    // √2 · √((e − 1)² + (1 − 1/e)²)
    expect(bent(1)).toBeCloseTo(Math.SQRT2 * Math.hypot(Math.E - 1, 1 - 1 / Math.E), 12);
    expect(bent(-1)).toBeCloseTo(-bent(1), 12);
  });

  it('are linear while they are nearly straight', () => {
    const method = (bend: number) =>
      propagate((z) => ({ y: z[0]! + bend * z[0]! ** 2 }), ['x'], undefined)['y']!.method;
    expect(method(0.02)).toBe('linear');
    expect(method(0.3)).toBe('monte-carlo');
  });

  it('without a source are exact', () => {
    expect(propagate(() => ({ y: 5 }), [])).toEqual({ y: { si: 5, parts: new Map(), method: 'linear' } });
  });
});

describe('what moves a simulated result', () => {
  const simulated = (fn: (z: ArrayLike<number>) => number, sources: string[]) =>
    propagate((z) => ({ y: fn(z) }), sources)['y']!;

  it('keeps its proportions and adds up to the half width', () => {
    const { parts, method, interval } = simulated((z) => z[0]! ** 2 + (2 * z[1]!) ** 2, ['a', 'b']);
    expect(method).toBe('monte-carlo');
    expect(parts.get('b')! / parts.get('a')!).toBeCloseTo(4, 9);
    expect(expanded({ parts })).toBeGreaterThan(interval!.high / 2);
    expect(expanded({ parts })).toBeLessThan(interval!.high);
  });

  it('is shared alike where no source alone moves it', () => {
    const { parts } = simulated((z) => z[0]! * z[1]!, ['a', 'b']);
    expect([...parts.keys()]).toEqual(['a', 'b']);
    expect(parts.get('a')).toBe(parts.get('b'));
    // The product of two standard normal numbers lies within ±2.28 with 95.45 % (integrated by us).
    expect(expanded({ parts })).toBeGreaterThan(2.15);
    expect(expanded({ parts })).toBeLessThan(2.42);
  });

  it('is nothing where all trials give the same', () => {
    const { parts, interval } = simulated(
      (z) => {
        if (z[0] === 1) throw new OutOfRange('just there');
        return 5;
      },
      ['a'],
    );
    expect(parts).toEqual(new Map());
    expect(interval).toEqual({ low: 5, high: 5 });
  });

  it('gives no number where too many trials give none, and says why', () => {
    const root = (z: ArrayLike<number>) => {
      if (z[0]! < -1) throw new OutOfRange('a root of less than nothing');
      return Math.sqrt(1 + z[0]!);
    };
    expect(() => simulated(root, ['a'])).toThrow('within their uncertainty, a root of less than nothing');
    expect(() => combine([value(1, 2, 'x')], (x) => Math.sqrt(x))).toThrow(
      'within their uncertainty, the inputs give no finite number',
    );
  });

  it('gives no number where the calculation as it stands gives none', () => {
    expect(() => combine([value(0, 0, 'x')], (x) => 1 / x)).toThrow('the inputs give no finite number');
    expect(() => combine([], () => NaN)).toThrow(OutOfRange);
  });
});

describe('a sum with known weights', () => {
  it('of nothing is nothing', () => expect(weighted()).toEqual({ si: 0, parts: new Map(), interval: undefined }));

  it('has an interval where one of its terms has', () => {
    const skew: Value = { ...value(10, 6, 'x'), interval: { low: 8, high: 18 } };
    const [one] = [weighted([1, skew], [2, value(1, 0, 'y')])];
    expect(one.interval!.low).toBeCloseTo(10, 12);
    expect(one.interval!.high).toBeCloseTo(20, 12);
    // Turned round, its high end leads down.
    const turned = weighted([1, value(0, 1.5, 'y')], [-1, skew]).interval!;
    expect(turned.low).toBeCloseTo(-10 - Math.hypot(8, 1.5), 12);
    expect(turned.high).toBeCloseTo(-10 + Math.hypot(2, 1.5), 12);
    expect(weighted([1, value(1, 1, 'x')], [1, value(1, 1, 'y')]).interval).toBeUndefined();
  });

  it('adds what rests on one source whichever way it moves', () => {
    const skew: Value = { ...value(10, -6, 'x'), interval: { low: 8, high: 18 } };
    const { interval } = weighted([1, skew], [1, value(0, 1, 'x')]);
    expect(interval!.low).toBeCloseTo(10 - 3, 12);
    expect(interval!.high).toBeCloseTo(10 + 9, 12);
  });
});

describe('what nobody stated', () => {
  it('counts only where the result rests on it', () => {
    const of = (...names: string[]) => ({ assumed: new Set(names) });
    expect([
      ...assumedOf(
        [of('a', 'b'), of('b', 'c')],
        new Map([
          ['b', 1],
          ['c', 1],
          ['d', 1],
        ]),
      ),
    ]).toEqual(['b', 'c']);
    expect(assumedOf([], new Map([['b', 1]])).size).toBe(0);
  });
});
