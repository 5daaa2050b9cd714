import { type InputValue, type InputValues, isSeries, valuesOf } from './inputs.js';
import { type Moving, movedBy, sourcesOf } from './moves.js';
import { type Inputs, OutOfRange, type Sheet } from './sheet.js';
import type { Value } from './value.js';

/** A sheet as a function of how far each source of uncertainty is moved. All inputs that rest on a source move with it. */
export interface Model extends Moving {
  /** Names of those sources that nobody stated. */
  assumed: ReadonlySet<string>;
  /** The results of the inputs as they stand, or moved. @throws OutOfRange where a result is no finite number */
  at: (moves?: ArrayLike<number>) => Readonly<Record<string, number>>;
  /** The numbers as the calculation sees them, unmoved. */
  nominal: Numbers;
}

type Numbers = Readonly<Record<string, number | string | undefined | readonly Readonly<Record<string, number>>[]>>;

export function model(sheet: Sheet, inputs: InputValues): Model {
  const values = valuesOf(inputs);
  const sources = sourcesOf(values);
  const place = new Map(sources.map((s, i) => [s, i]));
  const numbers = moving(sheet.inputs, inputs, place);
  const still = new Float64Array(sources.length);
  return {
    sources,
    assumed: new Set(values.flatMap((v) => [...v.assumed])),
    at: (moves = still) => finite(sheet.calculate(numbers(moves) as never)),
    nominal: numbers(still),
  };
}

/** The inputs as a function of the moves, laid out once so that many thousand moves stay cheap. */
function moving(
  declared: Inputs,
  given: InputValues,
  place: ReadonlyMap<string, number>,
): (moves: ArrayLike<number>) => Numbers {
  const number = (value: Value): At<number> => movedBy(value, place);
  const input = (value: InputValue | undefined): At<Numbers[string]> => {
    if (value === undefined || typeof value === 'string') return () => value;
    if (!isSeries(value)) return number(value);
    const rows = value.map((row) => together(Object.entries(row).map(([name, cell]) => [name, number(cell)])));
    return (moves) => rows.map((at) => at(moves));
  };
  return together(Object.keys(declared).map((name) => [name, input(given[name])]));
}

type At<T> = (moves: ArrayLike<number>) => T;

function together<T>(fields: readonly (readonly [string, At<T>])[]): At<Record<string, T>> {
  return (moves) => {
    const all: Record<string, T> = {};
    for (const [name, at] of fields) all[name] = at(moves);
    return all;
  };
}

function finite(results: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  for (const name in results)
    if (!Number.isFinite(results[name])) throw new OutOfRange(`the inputs give no finite ${name}`);
  return results;
}
