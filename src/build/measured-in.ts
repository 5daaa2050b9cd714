import type { Measured } from './fields.js';

/** Every measured value within the data of a note or a block of it, in the order of the file. */
export function measuredIn(value: unknown): Measured[] {
  if (Array.isArray(value)) return value.flatMap(measuredIn);
  if (typeof value !== 'object' || value === null) return [];
  if ('quantity' in value && 'at' in value) return [value as Measured];
  return Object.values(value).flatMap(measuredIn);
}
