import type { InputValues } from './inputs.js';
import { model } from './model.js';
import { type Method, propagate } from './propagate.js';
import { OutOfRange, type Sheet } from './sheet.js';
import { expanded, type Value } from './value.js';

export { type InputValue, type InputValues, isSeries, type SeriesValue } from './inputs.js';

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
  /** How the uncertainty was propagated: `monte-carlo` where at least one result needed it. */
  method: Method;
  /** The same for each result. */
  methods: Readonly<Record<string, Method>>;
}

/** Works a sheet through, with the uncertainty of its inputs; the run says where that took Monte Carlo. */
export function run(id: string, sheet: Sheet, inputs: InputValues): Run {
  const none = (outOfRange: string): Run => ({
    id,
    sheet,
    inputs,
    outOfRange,
    shares: {},
    method: 'linear',
    methods: {},
  });
  const of = model(sheet, inputs);
  const broken = sheet.validity.find((v) => !v.holds(of.nominal as never));
  if (broken) return none(broken.says);
  try {
    const propagated = propagate(of.at, of.sources, (name) => sheet.results[name]?.step === true);
    const results = Object.fromEntries(
      Object.entries(sheet.results).map(([name, { unit }]): [string, Value] => {
        const { si, parts, interval } = propagated[name]!;
        const assumed = new Set([...of.assumed].filter((source) => parts.has(source)));
        return [name, { si, unit, parts, interval, assumed, origin: { kind: 'sheet', run: id, result: name } }];
      }),
    );
    const shares = Object.fromEntries(Object.entries(results).map(([name, value]) => [name, sharesOf(value)]));
    const methods = Object.fromEntries(Object.entries(propagated).map(([name, { method }]) => [name, method]));
    const method = Object.values(methods).includes('monte-carlo') ? 'monte-carlo' : 'linear';
    return { id, sheet, inputs, results, shares, method, methods };
  } catch (error) {
    if (error instanceof OutOfRange) return none(error.message);
    throw error;
  }
}

function sharesOf(value: Value): { source: string; share: number }[] {
  const total = expanded(value) ** 2;
  return [...value.parts]
    .map(([source, part]) => ({ source, share: total === 0 ? 0 : part ** 2 / total }))
    .sort((a, b) => b.share - a.share);
}
