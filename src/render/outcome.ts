import { h } from 'hastscript';
import type { Element } from 'hast';
import type { Finding } from '../checks/finding.js';
import { outcomeWord, signs } from '../checks/outcome-words.js';

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
