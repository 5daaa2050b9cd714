import type { Value } from '../calc/value.js';
import { isMissing, type Maybe } from './work.js';

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

/** First less second, each with its own uncertainty; it stands where the first was written. */
export function difference(from: Maybe, less: Maybe): Maybe {
  if (isMissing(from) || isMissing(less)) {
    const missing = [from, less].flatMap((value) => (isMissing(value) ? [value] : []));
    return { missing: missing.flatMap((m) => m.missing), reason: missing.find((m) => m.reason)?.reason };
  }
  const parts = new Map(from.parts);
  for (const [source, part] of less.parts) parts.set(source, (parts.get(source) ?? 0) - part);
  return { ...from, si: from.si - less.si, parts, assumed: new Set([...from.assumed, ...less.assumed]) };
}
