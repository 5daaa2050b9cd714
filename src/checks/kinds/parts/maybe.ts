import { assumedOf, combine, weighted } from '../../../calc/propagate.js';
import type { Value } from '../../../calc/value.js';
import { isMissing, type Maybe, type Missing } from '../../engine/work.js';

/** The same value counted the other way round. */
export function negated(value: Maybe): Maybe {
  if (isMissing(value)) return value;
  return { ...value, ...weighted([-1, value]) };
}

/** A number that the program puts in, with the words that say where it comes from. */
export function given(si: number, unit: string, text: string): Value {
  return { si, unit, parts: new Map(), assumed: new Set(), origin: { kind: 'given', text } };
}

/** How far a value is from zero, either way. */
export function magnitude(value: Maybe): Maybe {
  return !isMissing(value) && value.si < 0 ? negated(value) : value;
}

/** First less second, with the uncertainty of both; it stands where the first was written. */
export function difference(from: Maybe, less: Maybe): Maybe {
  if (isMissing(from) || isMissing(less)) return bothMissing(from, less);
  return { ...from, ...together([1, from], [-1, less]) };
}

/** Both together, with the uncertainty of each. */
export function sum(a: Maybe, b: Maybe): Maybe {
  if (isMissing(a) || isMissing(b)) return bothMissing(a, b);
  return {
    ...together([1, a], [1, b]),
    unit: a.unit,
    origin: { kind: 'given', text: `${shown(a)} and ${shown(b)} together` },
  };
}

/** A value times an exact number, with the words that say what that does. */
export function times(value: Maybe, factor: number, text: string): Maybe {
  if (isMissing(value)) return value;
  return {
    ...value,
    ...weighted([factor, value]),
    origin: { kind: 'given', text: `${shown(value)}, ${text}` },
  };
}

const shown = ({ origin }: Value) => (origin.kind === 'sheet' ? origin.result : origin.text);

/** Product of two ratios, with the uncertainty of both. */
export function product(a: Maybe, b: Maybe): Maybe {
  if (isMissing(a) || isMissing(b)) return bothMissing(a, b);
  return {
    ...combine([a, b], (x, y) => x * y),
    unit: '1',
    origin: { kind: 'given', text: `${shown(a)} times ${shown(b)}` },
  };
}

function together(...terms: readonly (readonly [number, Value])[]) {
  const spread = weighted(...terms);
  return {
    ...spread,
    assumed: assumedOf(
      terms.map(([, value]) => value),
      spread.parts,
    ),
  };
}

/** What the missing ones of several values lack. */
export function bothMissing(...values: readonly Maybe[]): Missing {
  const missing = values.filter(isMissing);
  return { missing: missing.flatMap((m) => m.missing), reason: missing.find((m) => m.reason)?.reason };
}
