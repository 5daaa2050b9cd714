import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allSheets, findSheet } from '../../src/calc/catalogue.js';
import { type InputValues, isQuantity } from '../../src/calc/inputs.js';
import { model } from '../../src/calc/model.js';
import { type Example, type Sheet, sheet } from '../../src/calc/sheet.js';
import { solveFor } from '../../src/calc/solve.js';
import { exactly } from '../../src/calc/value.js';
import { toSI } from '../../src/units/unit.js';
import { work } from './sheet-rules.js';

const typed = (of: Sheet, given: Example['given']) => work(of, given).inputs;

const number = (symbol: string) => ({ symbol, unit: '1', says: symbol });
const plain = { subject: 'uncertainty', title: 't', purpose: 'p', sources: [], examples: [] as never } as const;
const one = (id: string, y: (x: number) => number, validity: Sheet['validity'] = []) =>
  sheet({
    ...plain,
    id,
    inputs: { x: number('x') },
    results: { y: number('y') },
    validity,
    calculate: ({ x }) => ({ y: y(x) }),
  }) as unknown as Sheet;

describe('solving a sheet backwards', () => {
  it('finds the one value', async () => {
    const engine = (await findSheet('engine-capacity'))!;
    const { roots } = solveFor(
      engine,
      typed(engine, { stroke: '86 mm', cylinders: '4' }),
      'bore',
      'capacity',
      toSI(1998.2, 'cm3'),
    );
    expect(roots).toHaveLength(1);
    expect(roots[0]! * 1000).toBeCloseTo(86, 2);
  });

  it('finds every value, on both sides of zero and close together', () => {
    expect(
      solveFor(
        one('square', (x) => x * x),
        {},
        'x',
        'y',
        4,
      ).roots.map((x) => Math.round(x * 1e9) / 1e9),
    ).toEqual([-2, 2]);
    const cubic = (x: number) => (x - 1) * (x - 2) * (x + 30);
    expect(solveFor(one('cubic', cubic), {}, 'x', 'y', 0).roots.map((x) => Math.round(x * 1e9) / 1e9)).toEqual([
      -30, 1, 2,
    ]);
    const close = solveFor(
      one('close', (x) => (x - 3.0001) * (x - 3.0002)),
      {},
      'x',
      'y',
      0,
    ).roots;
    expect(close).toHaveLength(2);
    expect(close[0]).toBeCloseTo(3.0001, 9);
    expect(close[1]).toBeCloseTo(3.0002, 9);
  });

  it('tells a pole and a jump from a solution', () => {
    expect(
      solveFor(
        one('pole', (x) => 1 / (x - 1.05)),
        {},
        'x',
        'y',
        0,
      ),
    ).toMatchObject({ roots: [], why: 'no solution: the result jumps over this value' });
    expect(
      solveFor(
        one('step', (x) => Math.round(x)),
        {},
        'x',
        'y',
        1.3,
      ),
    ).toMatchObject({ roots: [], why: 'no solution: the result jumps over this value' });
  });

  it('names the rule that stops it, and the nearest there is', async () => {
    const height = (await findSheet('centre-of-mass-height'))!;
    const { given } = height.examples[0];
    const solution = solveFor(height, typed(height, given), 'raise', 'sensitivity', toSI(1, 'mm/kg'));
    expect(solution.roots).toEqual([]);
    expect(solution.why).toBe(
      'no solution in the range of validity (the axle must be raised by at least a tenth and at most half of the wheelbase)',
    );
    expect(solution.nearest!.input * 1000).toBeCloseTo(1300, 3);
  });

  it('reaches a solution at the very edge of validity', () => {
    const edge = one('edge', (x) => x, [{ says: 'x must be at most 5', holds: ({ x }) => (x as number) <= 5 }]);
    expect(solveFor(edge, {}, 'x', 'y', 4.999).roots[0]).toBeCloseTo(4.999, 9);
    expect(solveFor(edge, {}, 'x', 'y', 5.001).why).toContain('x must be at most 5');
  });

  it('says so where nothing can be solved for', async () => {
    const mean = (await findSheet('energy-mean'))!;
    expect(solveFor(mean, {}, 'levels', 'mean', 90)).toEqual({ roots: [], why: 'it is not a single number' });
  });

  it('finds whole numbers of what is counted', async () => {
    const engine = (await findSheet('engine-capacity'))!;
    const inputs = typed(engine, { bore: '86 mm', stroke: '86 mm' });
    const six = model(engine, { ...inputs, cylinders: exactly(6, '1') }).at()['capacity']!;
    expect(solveFor(engine, inputs, 'cylinders', 'capacity', six).roots).toEqual([6]);
  });

  it('is met by calculating with what it found, on every sheet', async () => {
    for (const s of await allSheets()) {
      const inputs = typed(s, s.examples[0].given);
      const at = (given: InputValues) => calculated(s, given);
      const results = at(inputs)!;
      for (const [name, input] of Object.entries(s.inputs)
        .filter(([n, i]) => isQuantity(i) && inputs[n] !== undefined)
        .slice(0, 3)) {
        const result = Object.keys(s.results).find((r) => s.results[r]!.step === undefined)!;
        const moved = at({
          ...inputs,
          [name]: exactly(siOf(inputs, name) * 1.01 || 1e-3, 'unit' in input ? input.unit : '1'),
        });
        if (!moved || Math.abs(moved[result]! - results[result]!) < 1e-6 * Math.abs(results[result]!)) continue;
        const { roots, why } = solveFor(s, inputs, name, result, results[result]!);
        expect(roots.length, `${s.id}: ${name} for ${result}: ${why}`).toBeGreaterThan(0);
        for (const x of roots) {
          const again = at({ ...inputs, [name]: exactly(x, 'unit' in input ? input.unit : '1') })?.[result] ?? NaN;
          expect(Math.abs(again - results[result]!), `${s.id}: ${name} = ${x}`).toBeLessThanOrEqual(
            1e-8 * Math.max(Math.abs(results[result]!), 1e-12),
          );
        }
      }
    }
  });

  it('finds any root of a rising function', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (x, power) => {
          const { roots } = solveFor(
            one('power', (v) => Math.sign(v) * Math.abs(v) ** power),
            {},
            'x',
            'y',
            x ** power,
          );
          expect(roots).toHaveLength(1);
          expect(Math.abs(roots[0]! / x - 1)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 30 },
    );
  });
});

function calculated(of: Sheet, given: InputValues): Readonly<Record<string, number>> | undefined {
  const { at, nominal } = model(of, given);
  return of.validity.every((v) => v.holds(nominal as never)) ? at() : undefined;
}

function siOf(inputs: InputValues, name: string): number {
  const value = inputs[name];
  return value !== undefined && typeof value === 'object' && 'si' in value ? value.si : 0;
}
