import type { Element } from 'hast';
import { h } from 'hastscript';
import { type Finding, resultOf } from '../checks/engine/finding.js';
import { outcomeWord, signOf } from '../checks/engine/outcome-words.js';

/** Short forms of the marks, each explained on the page on how to read the document; any other mark stands in full. */
const shortMarks: Readonly<Record<string, string>> = {
  'confirm against your copy': 'confirm',
  'common practice': 'common practice',
  'recalled, not confirmed': 'recalled',
  'superseded text': 'superseded',
  'currency not known': 'currency not known',
  'proposed: load case not yet agreed with the certifier': 'proposed',
  'uncertainty of a usual instrument assumed': 'U assumed',
  'uncertainty assumed from the last digit of a figure': 'U of a figure assumed',
  'instrument out of date, its uncertainty doubled': 'instrument out of date',
};

/** Sign and word, and after them what weakens the outcome; that may be left out where it stands elsewhere. */
export function outcomeMark(
  finding: Pick<Finding, 'outcome' | 'waits' | 'marks' | 'concession'>,
  withMarks = true,
): Element {
  const concession = finding.concession ? [`concession ${finding.concession.word.replace('-', ' ')}`] : [];
  const marks = [...(withMarks ? finding.marks.map((m) => shortMarks[m] ?? m) : []), ...concession];
  return h(`span.outcome.outcome-${resultOf(finding.outcome)}`, [
    h('span.sign', { ariaHidden: 'true' }, signOf(finding.outcome)),
    ' ',
    h('span.word', outcomeWord(finding)),
    ...(marks.length > 0 ? [' ', h('span.marks', marks.join(' · '))] : []),
  ]);
}
