import type { Limit } from '../codes/limit.js';
import type { FindingClass, Result } from './finding.js';
import type { Range } from './range.js';

/** What a kind of note may say of a comparison beside value and item. */
export interface CompareOptions {
  todo?: string;
  marks?: readonly string[];
  /** A limit that the note itself states, such as the maker's window with its paper. */
  limit?: Limit | undefined;
  /** The value is the utilisation of an element of a load path. */
  element?: boolean;
  /** The demand is only proposed: its utilisation is shown, and is no pass. */
  proposed?: boolean;
  /** The value is the least favourable of a range; what decides where the outcome hangs on where in it the truth lies. */
  range?: Range;
  /** Words for the applicability to this subject, where they differ from those of the note. */
  states?: Readonly<Record<string, string | undefined>>;
  /** Why the value does not count: a condition of its test unmet or unstated, its sheet out of range. It is then inconclusive. */
  invalid?: readonly string[] | undefined;
  /** What else speaks on it: a test that settles what the value leaves open, or the words that say which test would. */
  settle?: (limit: Limit, compared: Result) => Settled | undefined;
}

/** How a finding comes out in place of the comparison. */
export interface Settled {
  of?: FindingClass;
  result: Result;
  says: string;
  todo?: string;
  /** Of what stays inconclusive: the test that would settle it, as a phrase. */
  by?: string;
}
