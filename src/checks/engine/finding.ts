import type { Place, Value } from '../../calc/value.js';
import type { Basis, Limit } from '../codes/limit.js';

/**
 * The words for what came of a check, by the class of what was checked and by how it came out. *Conforms* is said of a value
 * against a requirement and of nothing else; classes are counted apart and never summed.
 */
export const outcomesByClass = {
  /** A value against a requirement. */
  requirement: {
    met: 'conforms',
    against: 'does-not-conform',
    unclear: 'inconclusive',
    unconfirmed: 'limit-not-confirmed',
    missing: 'not-measured',
    out: 'not-applicable',
  },
  /** A value against common practice of the trade. */
  practice: {
    met: 'within-usual-practice',
    against: 'outside-usual-practice',
    unclear: 'inconclusive',
    missing: 'not-measured',
    out: 'not-applicable',
  },
  answer: {
    met: 'answered',
    against: 'requirement-not-met',
    contradicted: 'contradicted',
    missing: 'unanswered',
    out: 'not-applicable',
  },
  /** What one picture or document has to show. */
  proof: { met: 'seen', partly: 'part-missing', missing: 'not-shown', out: 'not-applicable' },
  date: { met: 'in-order', against: 'out-of-order' },
  /** Demand against capacity, in an element of a load path. */
  element: { met: 'within', against: 'beyond', unclear: 'inconclusive', missing: 'not-checked', out: 'not-applicable' },
} as const;

export type FindingClass = keyof typeof outcomesByClass;
export const findingClasses = Object.keys(outcomesByClass) as FindingClass[];

type Words = { [C in FindingClass]: (typeof outcomesByClass)[C][keyof (typeof outcomesByClass)[C]] };
export type Outcome = Words[FindingClass];

/** How a check came out, whatever its class calls it. */
export type Result = 'met' | 'against' | 'contradicted' | 'unclear' | 'unconfirmed' | 'partly' | 'missing' | 'out';

/** The word of a class for a result. @throws Error where the class has none, which is a programmer's mistake */
export function outcomeOf(of: FindingClass, result: Result): Outcome {
  const word = (outcomesByClass[of] as Partial<Record<Result, Outcome>>)[result];
  if (word === undefined) throw new Error(`a finding of class ${of} cannot be ${result}`);
  return word;
}

const results = new Map(
  Object.values(outcomesByClass).flatMap((words) =>
    Object.entries(words).map(([result, word]) => [word, result] as [Outcome, Result]),
  ),
);

/** How a check came out, from its word: each word stands for one result. */
export const resultOf = (outcome: Outcome): Result => results.get(outcome)!;

/** All outcomes, in the order of their classes. */
export const outcomes: readonly Outcome[] = [...results.keys()];

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
  of: FindingClass;
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
  /** Of what is inconclusive: what would have to hold, in words. */
  onlyIf?: string | undefined;
  /** Of what is inconclusive: what would settle it by itself, any one; empty where no one thing does. */
  settledBy?: readonly Settler[] | undefined;
  /** What an answer still waits for, although it was given: it stays open until then. */
  waits?: string | undefined;
  /** What to do next; absent when there is nothing to do. */
  todo?: string | undefined;
  /** Words that a reader must see beside the outcome ("confirm against your copy"). */
  marks: string[];
  /** Run of the calculation sheet that gives the measured side. */
  run?: string | undefined;
  place: Place;
  /** Another place that matters: the second of two notes that disagree, the photo out of order. */
  related?: { place: Place; says: string } | undefined;
  /** Id of the hold point that it is about. */
  point?: string | undefined;
  /** Of a proof: each part (empty: the whole) with what shows it; a part that nothing shows has an empty list. */
  proof?: readonly { part: string; by: readonly ShownIn[] }[] | undefined;
  /** Judgements given on it; they change no outcome. */
  judgements?: readonly Judgement[] | undefined;
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

/**
 * What would settle an inconclusive finding by itself: a measurement, named as the source of its uncertainty, or something
 * else in words, such as a test.
 */
export type Settler = { source: string } | { words: string };

/** A photo or document of a note. */
export interface ShownIn {
  is: 'photo' | 'paper';
  note: string;
  file: string;
}

/** A person's word on a finding, a photo or a document. */
export interface Judgement {
  /** `note/id`. */
  id: string;
  words: string;
  basis: 'seen' | 'calculated' | 'document';
  by: string;
  role: string;
  on: string;
  letter?: string | undefined;
  /** What was judged, as it was then. */
  of: string;
  /** Why it holds no more. */
  lapsed?: string | undefined;
  place: Place;
}

/** What came of an answer or a piece of evidence, before its class gives it a word. */
export type Judged = Pick<Finding, 'says' | 'todo' | 'answer' | 'waits' | 'proof'> & { result: Result };

/** Whether something is left to do about a finding before the document can be signed. */
export function isOpen(finding: Pick<Finding, 'outcome' | 'waits' | 'concession'>): boolean {
  if (finding.concession?.word === 'accepted') return false;
  if (finding.waits !== undefined) return true;
  const result = resultOf(finding.outcome);
  return result !== 'met' && result !== 'out';
}

/** How many findings of each class came out how; a class without findings is left out. */
export function countsByClass(
  findings: readonly Pick<Finding, 'of' | 'outcome'>[],
): { of: FindingClass; counts: { outcome: Outcome; count: number }[] }[] {
  return findingClasses.flatMap((of) => {
    const own = findings.filter((f) => f.of === of);
    if (own.length === 0) return [];
    const words: readonly Outcome[] = Object.values(outcomesByClass[of]);
    return [
      { of, counts: words.map((outcome) => ({ outcome, count: own.filter((f) => f.outcome === outcome).length })) },
    ];
  });
}
