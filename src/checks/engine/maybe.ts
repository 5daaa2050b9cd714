import type { Value } from '../../calc/value.js';
import type { NamedPath } from '../../project/find-field.js';

/** What is missing for a number: the fields to measure, or the reason why the sheet gives none. */
export interface Missing {
  missing: readonly { says: string; where: string; how?: string | undefined; path: NamedPath }[];
  reason?: string | undefined;
  run?: string | undefined;
}
export type Maybe = Value | Missing;
export const isMissing = (value: Maybe): value is Missing => 'missing' in value;
