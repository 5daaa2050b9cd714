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
  /** Names of those sources whose uncertainty nobody stated, so that half the last digit written was taken. */
  assumed: ReadonlySet<string>;
  origin: Origin;
}

/** Expanded uncertainty (k = 2) in SI units: independent sources combine as the root of the sum of squares (JCGM 100, 5.1.2). */
export function expanded(value: Pick<Value, 'parts'>): number {
  return Math.hypot(...value.parts.values());
}

/** A number without uncertainty, for constants and for values typed at the bench. */
export function exactly(si: number, unit: string, text = ''): Value {
  return { si, unit, parts: new Map(), assumed: new Set(), origin: { kind: 'given', text } };
}
