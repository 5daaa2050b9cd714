import { type CompareOptions, isMissing, type Maybe, type Work } from '../../engine/work.js';

/** Compares with a bound that the note itself measures, under the name by which the item's figure asks for it. */
export function compareAgainst(
  item: string,
  subject: string,
  value: Maybe,
  [name, bound]: readonly [name: string, bound: Maybe],
  work: Work,
  options?: CompareOptions,
): void {
  work.publish(name, bound);
  work.compare(item, subject, isMissing(bound) && !isMissing(value) ? bound : value, options);
}

/** Whether the build has a note of that kind, which then is the one to ask. */
export const hasNote = (work: Work, kind: string): boolean => work.hasNote(kind);
