import { describe, expect, it } from 'vitest';
import { monteCarlo } from '../../src/calc/monte-carlo.js';
import { run } from '../../src/calc/run.js';
import { type Sheet, sheet } from '../../src/calc/sheet.js';
import { expanded, type Value } from '../../src/calc/value.js';

const number = (symbol: string) => ({ symbol, unit: '1', says: symbol });
const plain = {
  subject: 'uncertainty',
  title: 't',
  purpose: 'p',
  sources: [],
  validity: [],
  examples: [] as never,
} as const;

/** A value with standard uncertainty `u` from a source of its own. */
const uncertain = (si: number, u: number, source: string): Value => ({
  si,
  unit: '1',
  parts: new Map([[source, 2 * u]]),
  assumed: new Set(),
  origin: { kind: 'given', text: '' },
});

const sumOfSquares = sheet({
  ...plain,
  id: 'sum-of-squares',
  inputs: { a: number('a'), b: number('b') },
  results: { y: number('y') },
  calculate: ({ a, b }) => ({ y: a * a + b * b }),
}) as unknown as Sheet;

const sumOfFour = sheet({
  ...plain,
  id: 'sum-of-four',
  inputs: { a: number('a'), b: number('b'), c: number('c'), d: number('d') },
  results: { y: number('y') },
  calculate: ({ a, b, c, d }) => ({ y: a + b + c + d }),
}) as unknown as Sheet;

describe('Monte Carlo', () => {
  // JCGM 101:2008, 9.2.2 (memory): four standard normal inputs add to u = 2.00.
  it('finds the standard uncertainty of a sum', () => {
    const inputs = Object.fromEntries(['a', 'b', 'c', 'd'].map((n) => [n, uncertain(0, 1, n)]));
    const { results } = monteCarlo(sumOfFour, inputs);
    expect(results.y!.standard).toBeCloseTo(2, 1);
    expect(results.y!.mean).toBeCloseTo(0, 1);
    expect(results.y!.expanded).toBeCloseTo(4, 1);
    // The same clause: the probabilistically symmetric 95 % interval is [−3.92, 3.92].
    expect(results.y!.interval.low).toBeCloseTo(-3.92, 1);
    expect(results.y!.interval.high).toBeCloseTo(3.92, 1);
  });

  // JCGM 101:2008, 9.4.2 (memory): comparison loss, y = x1² + x2² with x2 = 0 and both standard uncertainties 0.005;
  // mean and standard uncertainty in units of 1e-6.
  it.each([
    [0, 50, 50],
    [0.01, 150, 112],
    [0.05, 2550, 502],
  ])('reproduces the comparison loss at x1 = %d', (x1, mean, standard) => {
    const { results } = monteCarlo(sumOfSquares, { a: uncertain(x1, 0.005, 'a'), b: uncertain(0, 0.005, 'b') });
    expect(results.y!.mean * 1e6).toBeGreaterThan(mean * 0.98 - 0.5);
    expect(results.y!.mean * 1e6).toBeLessThan(mean * 1.02 + 0.5);
    expect(results.y!.standard * 1e6).toBeGreaterThan(standard * 0.98);
    expect(results.y!.standard * 1e6).toBeLessThan(standard * 1.02);
  });

  // Exact: with both inputs at zero y/u² is chi-squared with two degrees of freedom, so the interval from zero that holds
  // the share p ends at −2 u² ln(1 − p).
  it('finds the exact interval at a least value', () => {
    const { results } = monteCarlo(sumOfSquares, { a: uncertain(0, 0.005, 'a'), b: uncertain(0, 0.005, 'b') });
    const exact = -2 * 0.005 ** 2 * Math.log(1 - 0.9545);
    expect(Math.abs(results.y!.expanded / exact - 1)).toBeLessThan(0.015);
    expect(Math.abs(results.y!.shortest[1] / exact - 1)).toBeLessThan(0.015);
    expect(results.y!.shortest[0]).toBeLessThan(0.01 * exact);
  });

  it('gives the same numbers for the same seed and others for another', () => {
    const inputs = { a: uncertain(1, 0.1, 'a'), b: uncertain(2, 0.1, 'b') };
    const one = monteCarlo(sumOfSquares, inputs, { seed: 5 });
    expect(monteCarlo(sumOfSquares, inputs, { seed: 5 })).toEqual(one);
    expect(monteCarlo(sumOfSquares, inputs, { seed: 6 })).not.toEqual(one);
  });

  it('moves inputs that rest on one measurement together', () => {
    const shared = {
      a: uncertain(1, 0.1, 'same'),
      b: uncertain(-1, 0.1, 'same'),
      c: uncertain(0, 0, 'c'),
      d: uncertain(0, 0, 'd'),
    };
    const { results } = monteCarlo(sumOfFour, shared);
    expect(results.y!.standard).toBeCloseTo(0.2, 2);
  });
});

describe('the way uncertainty is propagated', () => {
  const ratio = sheet({
    ...plain,
    id: 'ratio',
    inputs: { a: number('a'), b: number('b') },
    results: { q: number('q'), least: number('least'), root: number('root') },
    calculate: ({ a, b }) => ({ q: a / b, least: Math.min(a, b), root: Math.sqrt(a - 0.99) }),
  }) as unknown as Sheet;

  it('stays linear where the sheet is straight within the uncertainty of its inputs', () => {
    const done = run('r', sumOfFour, Object.fromEntries(['a', 'b', 'c', 'd'].map((n) => [n, uncertain(1, 0.3, n)])));
    expect(done.method).toBe('linear');
    expect(expanded(done.results!.y!)).toBeCloseTo(1.2, 12);
  });

  it('uses Monte Carlo at a least value, where the linear part is nothing', () => {
    const done = run('r', sumOfSquares, { a: uncertain(0, 0.005, 'a'), b: uncertain(0, 0.005, 'b') });
    expect(done.method).toBe('monte-carlo');
    expect(Math.abs(expanded(done.results!.y!) / (-2 * 0.005 ** 2 * Math.log(0.0455)) - 1)).toBeLessThan(0.05);
    expect(done.shares.y!.map((s) => Math.round(s.share * 100))).toEqual([50, 50]);
  });

  it('uses it across an edge, for the result that has the edge only', () => {
    const done = run('r', ratio, { a: uncertain(1, 0.001, 'a'), b: uncertain(1.0005, 0.001, 'b') });
    expect(done.methods).toMatchObject({ q: 'linear', least: 'monte-carlo' });
    expect(done.method).toBe('monte-carlo');
  });

  it('gives no number where the inputs, within their uncertainty, give none too often', () => {
    const done = run('r', ratio, { a: uncertain(1, 0.01, 'a'), b: uncertain(2, 0.001, 'b') });
    expect(done.results).toBeUndefined();
    expect(done.outOfRange).toBe('within their uncertainty, the inputs give no finite root');
  });

  it.each([
    // 0.6 % of the trials have no root: they are counted below the interval and above it.
    [0.004, true],
    // 3 %: they may hold the 2.5 % point or the 97.5 % point.
    [0.0053, false],
  ])('counts what gives no number beyond both ends: u = %d', (u, isNumber) => {
    const done = run('r', ratio, { a: uncertain(1, u, 'a'), b: uncertain(2, 0.001, 'b') });
    expect(done.results !== undefined).toBe(isNumber);
  });

  // Exact: the 2.5 % point of the input is 1 − 1.96 × 0.004, whatever share of the trials below it has no root.
  it('finds the end of the interval with the lost trials below it', () => {
    const inputs = { a: uncertain(1, 0.004, 'a'), b: uncertain(2, 0.001, 'b') };
    const { results, lost } = monteCarlo(ratio, inputs, { block: 50_000, most: 50_000 });
    expect(lost).toBeGreaterThan(200);
    expect(Math.abs(results.root!.interval.low - Math.sqrt(0.01 - 1.96 * 0.004))).toBeLessThan(0.002);
  });

  it('leaves a result without uncertain inputs exact', () => {
    const done = run('r', sumOfSquares, {
      a: { ...uncertain(1, 0, 'a'), parts: new Map() },
      b: { ...uncertain(2, 0, 'b'), parts: new Map() },
    });
    expect(done.method).toBe('linear');
    expect(expanded(done.results!.y!)).toBe(0);
  });

  it('where Monte Carlo found the uncertainty, the parts add up to it', () => {
    const done = run('r', sumOfSquares, { a: uncertain(1, 0.3, 'a'), b: uncertain(0.1, 0.3, 'b') });
    const trials = monteCarlo(
      sumOfSquares,
      { a: uncertain(1, 0.3, 'a'), b: uncertain(0.1, 0.3, 'b') },
      { digits: 1, block: 2500 },
    );
    expect(done.method).toBe('monte-carlo');
    expect(expanded(done.results!.y!)).toBeCloseTo(trials.results.y!.expanded, 12);
  });
});
