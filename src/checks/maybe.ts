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
