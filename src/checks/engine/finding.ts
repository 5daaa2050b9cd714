import type { Place, Value } from '../../calc/value.js';
import type { Basis, Limit } from '../codes/limit.js';

export const outcomes = [
  'conforming',
  'nonconforming',
  'undecided',
  'unconfirmed',
  'missing',
  'notApplicable',
] as const;
export type Outcome = (typeof outcomes)[number];

/** The outcome of one check on one subject. */
export interface Finding {
  /** Stable: note, subject and item (`020-crossmember/crossmember/body.thickness-ratio`). */
  id: string;
  /** Name of the note, or `build` for what concerns the whole. */
  note: string;
  /** What it is about within the note (`crossmember`); empty for the note as a whole. */
  subject: string;
  item: string;
  title: string;
  outcome: Outcome;
  form: 'limit' | 'answer' | 'evidence' | 'test' | 'order' | 'agreement';
  measured?: Value | undefined;
  /** What was answered or found, for checks without a number. */
  answer?: string | undefined;
  limit?: Limit | undefined;
  basis: Basis;
  /** In the unit of the limit, SI: positive inside. */
  margin?: number | undefined;
  /** Why, in a sentence: found, expected. */
  says: string;
  /** What to do next; absent when there is nothing to do. */
  todo?: string | undefined;
  /** Words that a reader must see beside the outcome ("confirm against your copy"). */
  marks: string[];
  /** Run of the calculation sheet that gives the measured side. */
  run?: string | undefined;
  place: Place;
  /** Another place that matters: the second of two notes that disagree, the photo out of order. */
  related?: { place: Place; says: string } | undefined;
  /** A thing that stops the note whatever else it says. */
  stop?: boolean | undefined;
  /** The certifier's word on what does not conform. */
  concession?:
    | {
        word: 'accepted' | 'refused' | 'on-condition' | 'asked';
        because: string;
        condition?: string | undefined;
        by?: string | undefined;
        on?: string | undefined;
      }
    | undefined;
}

/** Whether something is left to do about a finding before the document can be signed. */
export function isOpen(finding: Finding): boolean {
  if (finding.concession?.word === 'accepted') return false;
  return finding.outcome !== 'conforming' && finding.outcome !== 'notApplicable';
}
