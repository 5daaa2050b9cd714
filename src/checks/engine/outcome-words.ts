import type { Finding, Outcome } from './finding.js';

export const outcomeSays: Readonly<Record<Outcome, string>> = {
  conforming: 'conforms',
  nonconforming: 'does not conform',
  undecided: 'undecided',
  unconfirmed: 'limit unconfirmed',
  missing: 'not measured',
  notApplicable: 'not applicable',
};

/** What an outcome is called where nothing is measured: an answer, a photo, a report. */
const answerSays: Readonly<Record<Outcome, string>> = {
  conforming: 'answered',
  nonconforming: 'answered against what is asked',
  undecided: 'for the certifier',
  unconfirmed: 'recorded, not judged',
  missing: 'not answered',
  notApplicable: 'not applicable',
};

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
  const numeric =
    finding.form === 'limit' || finding.form === 'test' || finding.form === 'agreement' || finding.form === 'order';
  if (finding.form === 'order')
    return {
      ...answerSays,
      conforming: 'in order',
      nonconforming: 'out of order',
      missing: 'not shown',
      undecided: 'not dated',
    }[finding.outcome];
  if (finding.form === 'agreement')
    return { ...outcomeSays, conforming: 'agree', nonconforming: 'disagree' }[finding.outcome];
  if (finding.form === 'evidence') return { ...answerSays, conforming: 'shown', missing: 'not shown' }[finding.outcome];
  return (numeric ? outcomeSays : answerSays)[finding.outcome];
}
