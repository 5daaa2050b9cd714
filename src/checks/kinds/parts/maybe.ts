import { assumedOf, combine, weighted } from '../../../calc/propagate.js';
import type { Value } from '../../../calc/value.js';
import { isMissing, type Maybe, type Missing } from '../../engine/work.js';

/** The same value counted the other way round. */
export function negated(value: Maybe): Maybe {
  if (isMissing(value)) return value;
  return { ...value, ...weighted([-1, value]), places: value.places?.map((one) => negated(one) as Value) };
}

/** A number that the program puts in, with the words that say where it comes from. */
export function given(si: number, unit: string, text: string): Value {
  return { si, unit, parts: new Map(), assumed: new Set(), origin: { kind: 'given', text } };
}

/** How far a value is from zero, either way. */
export function magnitude(value: Maybe): Maybe {
  if (isMissing(value)) return value;
  const whole = value.si < 0 ? (negated(value) as Value) : value;
  return value.places ? { ...whole, places: value.places.map((one) => magnitude(one) as Value) } : whole;
}

/** First less second, with the uncertainty of both; it stands where the first was written. */
export function difference(from: Maybe, less: Maybe): Maybe {
  if (isMissing(from) || isMissing(less)) return bothMissing(from, less);
  const places = pairs(from, less).map(([a, b]) => difference(a, b) as Value);
  return { ...from, ...together([1, from], [-1, less]), places: places.length > 0 ? places : undefined };
}

/** Where either was measured at several places: each of the one with each of the other. */
function pairs(a: Value, b: Value): [Value, Value][] {
  if (!a.places && !b.places) return [];
  return (a.places ?? [a]).flatMap((one) => (b.places ?? [b]).map((other): [Value, Value] => [one, other]));
}

/** Both together, with the uncertainty of each. */
export function sum(a: Maybe, b: Maybe): Maybe {
  if (isMissing(a) || isMissing(b)) return bothMissing(a, b);
  return {
    ...together([1, a], [1, b]),
    unit: a.unit,
    origin: { kind: 'given', text: `${shown(a)} and ${shown(b)} together` },
    places: a.places || b.places ? pairs(a, b).map(([one, other]) => sum(one, other) as Value) : undefined,
  };
}

/** A value times an exact number, with the words that say what that does. */
export function times(value: Maybe, factor: number, text: string): Maybe {
  if (isMissing(value)) return value;
  return {
    ...value,
    ...weighted([factor, value]),
    places: value.places?.map((one) => times(one, factor, text) as Value),
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
