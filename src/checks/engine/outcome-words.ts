import { type Finding, type FindingClass, type Outcome, type Result, resultOf } from './finding.js';

/** What each class of finding is about, as a heading above its counts. */
export const classLabels: Readonly<Record<FindingClass, string>> = {
  requirement: 'Values against requirements',
  practice: 'Values against common practice',
  answer: 'Answers',
  proof: 'Photos and supporting documents',
  date: 'Dates',
  element: 'Load paths',
};

/** The same where there is little room. */
export const shortClassLabels: Readonly<Record<FindingClass, string>> = {
  requirement: 'values',
  practice: 'practice',
  answer: 'answers',
  proof: 'proofs',
  date: 'dates',
  element: 'load paths',
};

/** `does-not-conform` as it is read. */
export const outcomeLabel = (outcome: Outcome): string =>
  ({
    'outside-usual-practice': 'outside usual practice (justify)',
    within: 'within capacity',
    beyond: 'beyond capacity',
  })[outcome as string] ?? outcome.replaceAll('-', ' ');

const byResult: Readonly<Record<Result, string>> = {
  met: '●',
  against: '✗',
  contradicted: '✗',
  unclear: '≈',
  unconfirmed: '?',
  partly: '○',
  missing: '○',
  out: '–',
};

/** Outcomes are told by sign and word; colour only follows. The tick is for what conforms and for nothing else. */
export const signOf = (outcome: Outcome): string => (outcome === 'conforms' ? '✓' : byResult[resultOf(outcome)]);

/** The word of an outcome, with what it still waits for. */
export const outcomeWord = ({ outcome, waits }: Pick<Finding, 'outcome' | 'waits'>): string =>
  `${outcomeLabel(outcome)}${waits === undefined ? '' : `, ${waits}`}`;
