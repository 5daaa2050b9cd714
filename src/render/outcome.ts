import { h } from 'hastscript';
import type { Element } from 'hast';
import { answerSays, outcomeSays, type Finding, type Outcome } from '../checks/finding.js';

/** Outcomes are told by sign and word; colour only follows. */
export const signs: Readonly<Record<Outcome, string>> = {
  conforming: '✓',
  nonconforming: '✗',
  undecided: '≈',
  unconfirmed: '?',
  missing: '○',
  notApplicable: '–',
};

export function outcomeWord(finding: Pick<Finding, 'outcome' | 'form'>): string {
  const numeric = finding.form === 'limit' || finding.form === 'test' || finding.form === 'agreement' || finding.form === 'order';
  if (finding.form === 'order') return { ...answerSays, conforming: 'in order', nonconforming: 'out of order', missing: 'not shown', undecided: 'not dated' }[finding.outcome];
  if (finding.form === 'agreement') return { ...outcomeSays, conforming: 'agree', nonconforming: 'disagree' }[finding.outcome];
  if (finding.form === 'evidence') return { ...answerSays, conforming: 'shown', missing: 'not shown' }[finding.outcome];
  return (numeric ? outcomeSays : answerSays)[finding.outcome];
}

export function outcomeMark(finding: Pick<Finding, 'outcome' | 'form' | 'marks' | 'concession'>): Element {
  const concession = finding.concession ? [`concession ${finding.concession.word.replace('-', ' ')}`] : [];
  const marks = [...finding.marks, ...concession];
  return h(`span.outcome.outcome-${finding.outcome}`, [
    h('span.sign', { ariaHidden: 'true' }, signs[finding.outcome]),
    ' ',
    outcomeWord(finding),
    ...(marks.length > 0 ? [' ', h('span.marks', marks.map((m) => `(${m})`).join(' '))] : []),
  ]);
}
