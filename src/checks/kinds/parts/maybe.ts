import type { Value } from '../../../calc/value.js';
import { isMissing, type Maybe, type Missing } from '../../engine/work.js';

/** The same value counted the other way round. */
export function negated(value: Maybe): Maybe {
  if (isMissing(value)) return value;
  return { ...value, si: -value.si, parts: new Map([...value.parts].map(([source, part]) => [source, -part])) };
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
  return { ...from, si: from.si - less.si, ...together(from, 1, less, -1) };
}

/** Both together, with the uncertainty of each. */
export function sum(a: Maybe, b: Maybe): Maybe {
  if (isMissing(a) || isMissing(b)) return bothMissing(a, b);
  return {
    si: a.si + b.si,
    unit: a.unit,
    ...together(a, 1, b, 1),
    origin: { kind: 'given', text: `${shown(a)} and ${shown(b)} together` },
  };
}

/** A value times an exact number, with the words that say what that does. */
export function times(value: Maybe, factor: number, text: string): Maybe {
  if (isMissing(value)) return value;
  return {
    ...value,
    si: value.si * factor,
    parts: new Map([...value.parts].map(([source, part]) => [source, part * factor])),
    origin: { kind: 'given', text: `${shown(value)}, ${text}` },
  };
}

const shown = ({ origin }: Value) => (origin.kind === 'sheet' ? origin.result : origin.text);

/** Product of two ratios, with the uncertainty of both. */
export function product(a: Maybe, b: Maybe): Maybe {
  if (isMissing(a) || isMissing(b)) return bothMissing(a, b);
  return {
    si: a.si * b.si,
    unit: '1',
    ...together(a, b.si, b, a.si),
    origin: { kind: 'given', text: `${shown(a)} times ${shown(b)}` },
  };
}

function together(a: Value, byA: number, b: Value, byB: number): Pick<Value, 'parts' | 'assumed'> {
  const parts = new Map([...a.parts].map(([source, part]) => [source, part * byA]));
  for (const [source, part] of b.parts) parts.set(source, (parts.get(source) ?? 0) + part * byB);
  return { parts, assumed: new Set([...a.assumed, ...b.assumed]) };
}

/** What the missing ones of several values lack. */
export function bothMissing(...values: readonly Maybe[]): Missing {
  const missing = values.filter(isMissing);
  return { missing: missing.flatMap((m) => m.missing), reason: missing.find((m) => m.reason)?.reason };
}
