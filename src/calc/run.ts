import type { Input, Inputs, QuantityInput, Results, Sheet } from './sheet.js';
import { OutOfRange } from './sheet.js';
import { expanded, type Value } from './value.js';

export type SeriesValue = readonly Readonly<Record<string, Value>>[];
export type InputValue = Value | string | SeriesValue;
export type InputValues = Readonly<Record<string, InputValue | undefined>>;

/** One sheet worked through with one set of inputs. */
export interface Run {
  /** Stable within a build: sheet, note and subject, for instance `030-driveline/driveline-angles/ride`. */
  id: string;
  sheet: Sheet;
  inputs: InputValues;
  /** Absent when out of range. */
  results?: Readonly<Record<string, Value>>;
  /** Why there is no number. */
  outOfRange?: string;
  /** What share of the squared uncertainty of each result each source brings, largest first. */
  shares: Readonly<Record<string, readonly { source: string; share: number }[]>>;
}

type Numbers = Record<string, number | string | undefined | readonly Record<string, number>[]>;

/**
 * Works a sheet through. Uncertainty is propagated linearly with sensitivities found numerically: each source moves all
 * the inputs that rest on it by one standard uncertainty up and down (JCGM 100:2008, 5.1.3 note 2), which keeps
 * correlated inputs right.
 */
export function run(id: string, sheet: Sheet, inputs: InputValues): Run {
  const at = (source?: string, by = 0) => sheet.calculate(numbers(sheet.inputs, inputs, source, by) as never);
  const nominal = numbers(sheet.inputs, inputs);
  const broken = sheet.validity.find((v) => !v.holds(nominal as never));
  if (broken) return { id, sheet, inputs, outOfRange: broken.says, shares: {} };
  try {
    const middle = finite(at());
    const sources = [...new Set(allValues(inputs).flatMap((v) => [...v.parts.keys()]))];
    const moved = sources.map((s) => ({ source: s, up: finite(at(s, 0.5)), down: finite(at(s, -0.5)) }));
    const assumed = new Set(allValues(inputs).flatMap((v) => [...v.assumed]));
    const results = Object.fromEntries(
      Object.entries(sheet.results as Results).map(([name, result]) => {
        const parts = new Map<string, number>();
        for (const m of moved) {
          const part = m.up[name]! - m.down[name]!;
          if (part !== 0) parts.set(m.source, part);
        }
        const value: Value = {
          si: middle[name]!,
          unit: result.unit,
          parts,
          assumed: new Set([...assumed].filter((s) => parts.has(s))),
          origin: { kind: 'sheet', run: id, result: name },
        };
        return [name, value];
      }),
    );
    return { id, sheet, inputs, results, shares: Object.fromEntries(Object.entries(results).map(([n, v]) => [n, shares(v)])) };
  } catch (error) {
    if (error instanceof OutOfRange) return { id, sheet, inputs, outOfRange: error.message, shares: {} };
    throw error;
  }
}

function shares(value: Value): { source: string; share: number }[] {
  const total = expanded(value) ** 2;
  return [...value.parts]
    .map(([source, part]) => ({ source, share: total === 0 ? 0 : part ** 2 / total }))
    .sort((a, b) => b.share - a.share);
}

function numbers(declared: Inputs, given: InputValues, source?: string, by = 0): Numbers {
  const number = (v: Value) => v.si + by * ((source === undefined ? undefined : v.parts.get(source)) ?? 0);
  return Object.fromEntries(
    Object.keys(declared).map((name) => {
      const value = given[name];
      if (value === undefined || typeof value === 'string') return [name, value];
      if (isSeries(value)) {
        return [name, value.map((row) => Object.fromEntries(Object.entries(row).map(([k, v]) => [k, number(v)])))];
      }
      return [name, number(value)];
    }),
  );
}

function finite(results: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  const bad = Object.entries(results).find(([, x]) => !Number.isFinite(x));
  if (bad) throw new OutOfRange(`the inputs give no finite ${bad[0]}`);
  return results;
}

export function isSeries(value: InputValue | undefined): value is SeriesValue {
  return Array.isArray(value);
}

export function isQuantity(input: Input): input is QuantityInput {
  return 'unit' in input;
}

function allValues(inputs: InputValues): Value[] {
  return Object.values(inputs).flatMap((v) =>
    v === undefined || typeof v === 'string' ? [] : isSeries(v) ? v.flatMap((row) => Object.values(row)) : [v as Value],
  );
}
