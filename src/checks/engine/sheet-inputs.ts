import type { Inputs } from '../../calc/sheet.js';
import { isMissing, type Maybe, type Missing } from './maybe.js';

/** What the evaluation of a note hands to a calculation sheet: values, or what is missing of them. */
type Rows = readonly Readonly<Record<string, Maybe>>[];
type MaybeInput<I> = I extends { choices: infer C }
  ? (keyof C & string) | Missing | undefined
  : I extends { columns: unknown }
    ? Rows
    : Maybe | undefined;
export type MaybeInputs<I extends Inputs> = { readonly [K in keyof I]?: MaybeInput<I[K]> };

/** All that a set of inputs lacks; inputs that are optional or have a usual value may be left out. */
export function lacks(declared: Inputs, given: Readonly<Record<string, unknown>>): Missing {
  const all = Object.entries(declared).flatMap(([name, input]): Missing[] => {
    const value = given[name];
    if (value === undefined)
      return 'usual' in input || 'optional' in input
        ? []
        : [{ missing: [{ says: input.says, where: name, path: [] }] }];
    if (Array.isArray(value)) return (value as Rows).flatMap((row) => Object.values(row).filter(isMissing));
    return typeof value === 'object' && isMissing(value as Maybe) ? [value as Missing] : [];
  });
  const seen = new Set<string>();
  return {
    missing: all.flatMap((m) => m.missing).filter((m) => !seen.has(m.where) && seen.add(m.where)),
    reason: all.find((m) => m.reason)?.reason,
    run: all.find((m) => m.run)?.run,
  };
}
