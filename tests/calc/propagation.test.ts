import { describe, expect, it } from 'vitest';
import { sheetsOf } from '../../src/calc/catalogue.js';
import { type InputValue, type InputValues, isQuantity, isSeries } from '../../src/calc/inputs.js';
import { model } from '../../src/calc/model.js';
import { monteCarlo, tolerance } from '../../src/calc/monte-carlo.js';
import { normals } from '../../src/calc/random.js';
import { run } from '../../src/calc/run.js';
import { type Sheet, type Subject, subjects } from '../../src/calc/sheet.js';
import { expanded, type Value } from '../../src/calc/value.js';
import { COVERAGE } from '../../src/units/student.js';
import { work } from './sheet-rules.js';

const TRIALS = 800;
const SEED = 3;

/**
 * The first example with an uncertainty of 1 % on every number, each from a source of its own; none on whole numbers
 * without a unit, which are counts, and on nominal sizes that the sheet looks up.
 */
function blurred(sheet: Sheet): InputValues {
  const one = (value: Value, source: string): Value => ({
    ...value,
    parts: new Map(value.si === 0 ? [] : [[source, 0.01 * Math.abs(value.si)]]),
  });
  const { inputs } = work(sheet, sheet.examples[0].given);
  const input = (name: string, value: InputValue | undefined): InputValue | undefined => {
    if (value === undefined || typeof value === 'string') return value;
    if (isSeries(value))
      return value.map((row, i) =>
        Object.fromEntries(Object.entries(row).map(([k, v]) => [k, one(v, `${name}.${i}.${k}`)])),
      );
    const moved = { ...inputs, [name]: { ...(value as Value), si: (value as Value).si * 1.0001 } };
    return isQuantity(sheet.inputs[name]!) && sheet.validity.every((v) => v.holds(model(sheet, moved).nominal as never))
      ? one(value as Value, name)
      : value;
  };
  return Object.fromEntries(Object.entries(inputs).map(([name, value]) => [name, input(name, value)]));
}

/** The half width that the linear parts give with the very draws of the Monte Carlo run, so that only the bend is compared. */
function linearHalfWidth(value: Value, sources: readonly string[]): number {
  const normal = normals(SEED);
  const away = Array.from({ length: TRIALS }, () =>
    Math.abs(sources.reduce((sum, source) => sum + (normal() * (value.parts.get(source) ?? 0)) / 2, 0)),
  );
  return away.sort((a, b) => a - b)[Math.ceil(COVERAGE * TRIALS) - 1]!;
}

describe('linear propagation against Monte Carlo (JCGM 101:2008, clause 8)', () => {
  it.each(Object.keys(subjects) as Subject[])(
    'agrees wherever it is used on the sheets of %s',
    async (subject) => {
      let compared = 0;
      for (const sheet of await sheetsOf(subject)) {
        const inputs = blurred(sheet);
        const done = run('x', sheet, inputs);
        expect(done.outOfRange, sheet.id).toBeUndefined();
        const { sources } = model(sheet, inputs);
        const trials = monteCarlo(sheet, inputs, { block: TRIALS, most: TRIALS, seed: SEED });
        for (const [name, value] of Object.entries(done.results!)) {
          const U = expanded(value);
          if (sheet.results[name]!.step || done.methods[name] !== 'linear' || U < 1e-9 * Math.abs(value.si)) continue;
          compared++;
          const gap = Math.abs(trials.results[name]!.expanded - linearHalfWidth(value, sources));
          expect(
            gap,
            `${sheet.id}: ${name}, linear ${U}, Monte Carlo ${trials.results[name]!.expanded}`,
          ).toBeLessThanOrEqual(2 * tolerance(U / 2, 1));
        }
      }
      expect(compared).toBeGreaterThan(2);
    },
    600_000,
  );
});
