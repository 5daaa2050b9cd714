/** The place in a file from which something was read. Lines and columns count from 1. */
export interface Place {
  file: string;
  line: number;
  column: number;
  endColumn?: number | undefined;
  /** Keys down to the value; items of a list stand under their `id` (`pieces.crossmember.now.wall`). */
  path: string;
}

/** Where a number comes from, so that the document can point there. */
type Origin =
  | { kind: 'note'; place: Place; text: string }
  | { kind: 'sheet'; run: string; result: string }
  | { kind: 'given'; text: string }
  | { kind: 'usual'; text: string };

/** Ends of a coverage interval, in SI units. */
export interface Interval {
  low: number;
  high: number;
}

/**
 * A number in SI base units with the sources of its uncertainty. Two values that rest on the same measurement share a
 * key in `parts`, which is how correlated inputs are handled.
 */
export interface Value {
  si: number;
  /** Unit in which it is shown. */
  unit: string;
  /** Expanded uncertainty (k = 2) that each source contributes, signed, in SI units. */
  parts: ReadonlyMap<string, number>;
  /** Of a simulated result: its 2.5 % and 97.5 % points, which are judged instead of ± U (JCGM 101:2008, 7.7). */
  interval?: Interval | undefined;
  /** Names of those sources whose uncertainty nobody stated, so that half the last digit written was taken. */
  assumed: ReadonlySet<string>;
  origin: Origin;
  /** Of a measurement at several places, each by itself: a limit is held against all, and the least favourable decides. */
  places?: readonly Value[] | undefined;
}

/** Expanded uncertainty (k = 2) in SI units: independent sources combine as the root of the sum of squares (JCGM 100, 5.1.2). */
export function expanded(value: Pick<Value, 'parts'>): number {
  return Math.hypot(...value.parts.values());
}

/** What is shown behind a number: the interval of a simulated result, else the expanded uncertainty; in SI units. */
export function spread(value: Pick<Value, 'parts' | 'interval'>): number | Interval {
  return value.interval ?? expanded(value);
}

/** A number without uncertainty, for constants and for values typed at the bench. */
export function exactly(si: number, unit: string, text = ''): Value {
  return { si, unit, parts: new Map(), assumed: new Set(), origin: { kind: 'given', text } };
}
