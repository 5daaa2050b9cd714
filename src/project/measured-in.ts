import type { Measured } from './fields.js';

/** Every measured value within the data of a note or a block of it, in the order of the file. Data that were read stay as they are, so they are searched once. */
export function measuredIn(value: object): readonly Measured[] {
  const known = found.get(value) ?? search(value);
  found.set(value, known);
  return known;
}

const found = new WeakMap<object, readonly Measured[]>();

function search(value: unknown): readonly Measured[] {
  if (Array.isArray(value)) return value.flatMap(search);
  if (typeof value !== 'object' || value === null) return [];
  if ('quantity' in value && 'at' in value) return [value as Measured];
  return Object.values(value).flatMap(search);
}
