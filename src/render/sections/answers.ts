import type { Element } from 'hast';
import { h } from 'hastscript';
import { type Finding, resultOf } from '../../checks/engine/finding.js';
import type { Note } from '../../project/model.js';
import { anchor, capitalised, joined } from '../anchors.js';
import { grouped } from '../grouped.js';
import { inline } from '../inline.js';
import { itemCode } from '../item.js';
import { outcomeMark } from '../outcome.js';
import { evidenceOf, partLines } from '../shown.js';
import type { Subject } from '../subject.js';
import { below, table } from '../table.js';
import { against, nameOf, todo } from './findings.js';

/** Answers and evidence; what has neither stands below in one list. */
export function answersTable(note: Note, findings: readonly Finding[], subject: Subject): Element[] {
  const given = findings.filter((f) => !isBlank(f));
  const rows = given.map((f) => [
    h('span', { id: anchor.finding(f.id) }, [h('b', nameOf(f)), below(itemCode(f.item, subject))]),
    answerCell(f, note, subject),
    h('span', [outcomeMark(f), ...todo(f)]),
  ]);
  return rows.length === 0
    ? []
    : [
        table(
          'answers',
          'Answers and evidence',
          [
            ['Item', 30],
            ['Answer and where it is shown', 42],
            ['Outcome', 28],
          ],
          rows,
          { id: `${note.name}/answers` },
        ),
      ];
}

/** Nothing was measured, answered or shown, and nobody said anything to it. */
export const isBlank = (f: Finding): boolean =>
  resultOf(f.outcome) === 'missing' &&
  f.measured === undefined &&
  f.answer === undefined &&
  !f.concession &&
  !f.judgements;

function answerCell(f: Finding, note: Note, subject: Subject): Element {
  const because = f.outcome === 'contradicted' ? undefined : note.data.answers?.[f.item]?.because;
  const parts = partLines(f, subject);
  const shown = parts.length > 0 ? [] : evidenceOf(f, subject);
  const says =
    f.answer === undefined || resultOf(f.outcome) === 'missing' || f.outcome === 'contradicted'
      ? [below(...inline(f.says))]
      : [];
  return h('span', [
    f.answer ?? '',
    ...(because ? [f.answer ? '; ' : '', because] : []),
    ...says,
    ...parts,
    ...against(f, subject),
    ...(shown.length > 0 ? [below('shown by ', ...joined(shown))] : []),
  ]);
}

/** Items that wait for an answer or for evidence, by what is missing. */
export function blankList(findings: readonly Finding[], subject: Subject): Element[] {
  const blank = findings.filter(isBlank);
  if (blank.length === 0) return [];
  return [
    h('div.blanks', [
      h('p.list-title', h('b', 'Still to be answered or shown')),
      ...grouped(blank, (f) => f.says).map((group) =>
        h('div.blank-group', [
          h('p', [...inline(capitalised(group[0].says)), ':']),
          h(
            'ul.columns',
            group.map((f) => h('li', { id: anchor.finding(f.id) }, [nameOf(f), ' ', itemCode(f.item, subject)])),
          ),
        ]),
      ),
    ]),
  ];
}
