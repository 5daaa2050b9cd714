import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Limit } from '../../checks/codes/limit.js';
import type { Finding } from '../../checks/engine/finding.js';
import { type Changes, isSame } from '../../history/compare/compare.js';
import { anchor, capitalised, pointer } from '../anchors.js';
import { boundText, restsText } from '../limit-text.js';
import { outcomeMark } from '../outcome.js';
import { printable } from '../printable.js';
import type { Subject } from '../subject.js';
import { below, type Row, table } from '../table.js';
import { changeText, fieldPointer, noteName } from './history.js';
import { findingPointer } from './open-items.js';

/** What a re-issue opens with: all that differs from the issue before, by meaning. */
export function changesSection(changes: Changes, subject: Subject): Element {
  const { from, to, notes, values, outcomes, limits, photos, papers, queries, untold } = changes;
  const files = [...photos.map((p) => ['photo', p] as const), ...papers.map((p) => ['paper', p] as const)];
  const parts: (Element | false)[] = [
    notes.length > 0 &&
      table(
        'notes',
        'Notes',
        ['Note', 'What changed'],
        notes.map((n) => [
          noteName(n.path, subject),
          n.change === 'renamed' ? `renamed, was ${printable(n.from!)}` : n.change === 'added' ? 'new' : 'taken out',
        ]),
        { id: 'changed-notes' },
      ),
    values.length > 0 &&
      table(
        'values',
        'Measured values',
        [
          ['Field', 42],
          ['From, to', 38],
          ['Difference', 20],
        ],
        byNote(values, subject),
        { id: 'changed-values' },
      ),
    outcomes.length > 0 &&
      table(
        'outcomes',
        'Outcomes',
        [
          ['Finding', 46],
          ['Was', 27],
          ['Is', 27],
        ],
        outcomes.map((o) => [
          o.to ? findingPointer(o.to) : h('span', [printable(o.title), below(h('code', printable(o.id)))]),
          outcome(o.from, 'not asked'),
          outcome(o.to, 'asked no more'),
        ]),
        { id: 'changed-outcomes' },
      ),
    limits.length > 0 &&
      table(
        'limits',
        'Limits and editions',
        [
          ['Check', 26],
          ['Was', 37],
          ['Is', 37],
        ],
        limits.map((l) => [
          h('span', [l.title, below(l.subjects.map(printable).join(', ') || 'the whole')]),
          limit(l.from),
          limit(l.to),
        ]),
        { id: 'changed-limits' },
      ),
    files.length > 0 &&
      table(
        'files',
        'Photos and papers',
        ['File', 'What changed', 'Shows'],
        files.map(([kind, f]) => [
          h('code', printable(f.path)),
          fileText(kind, f),
          h('span', [
            printable(f.shows ?? '–'),
            ...(f.showed === undefined ? [] : [below(`was: ${printable(f.showed)}`)]),
          ]),
        ]),
        { id: 'changed-files' },
      ),
    queries.length > 0 &&
      table(
        'queries',
        'Queries',
        ['Query', 'Was', 'Is', 'Question'],
        queries.map((q) => [
          subject.build.queries.some((b) => b.name === q.name)
            ? pointer(anchor.query(q.name), q.name)
            : printable(q.name),
          q.from ?? 'not asked',
          q.to ?? 'taken out',
          printable(q.question),
        ]),
        { id: 'changed-queries' },
      ),
  ];
  return h('section', { id: anchor.section('changes') }, [
    h('h2', `What changed since ${from.label}`),
    h('p', [
      `Compared are the notes of ${from.label} (commit `,
      h('code', from.commit.slice(0, 8)),
      `) and of ${to.label} (commit `,
      h('code', to.commit.slice(0, 8)),
      '), both examined by the rules of this version, by meaning and not by their text.',
    ]),
    ...(from.madeWith !== undefined && from.madeWith !== subject.identity.tool
      ? [
          h(
            'p',
            printable(
              `${capitalised(from.label)} was made with ${from.madeWith}. Figures that come with the program, and that changed between that version and this one, do not show here.`,
            ),
          ),
        ]
      : []),
    ...(isSame(changes) ? [h('p', 'Nothing that is measured, found or shown has changed.')] : []),
    ...parts.filter((part) => part !== false),
    ...untold.map((text) => h('p', h('b', printable(text)))),
  ]);
}

function byNote(values: Changes['values'], subject: Subject): Row[] {
  return [...new Set(values.map((v) => v.note))].flatMap((note): Row[] => [
    { group: noteName(note, subject) },
    ...values
      .filter((v) => v.note === note)
      .map(
        (v): Row => [
          fieldPointer(v.note, v.field, subject),
          changeText(v),
          v.rewritten ? 'same value' : (v.difference ?? '–'),
        ],
      ),
  ]);
}

/** An earlier finding may speak of what no shipped font has; its mark alone does not. */
const outcome = (finding: Finding | undefined, none: string): Element | string =>
  finding ? outcomeMark({ ...finding, marks: finding.marks.map(printable) }) : none;

const limit = (of: Limit | undefined): Element | string =>
  of ? h('span', [boundText(of), below(printable(restsText(of)))]) : 'no confirmed figure';

function fileText(kind: string, { change, from }: Changes['photos'][number]): string {
  if (change === 'replaced') return `another ${kind} under the same name`;
  if (change === 'renamed') return `renamed, was ${printable(from!)}`;
  return { added: `new ${kind}`, removed: `${kind} taken out`, 'described otherwise': 'described otherwise' }[change];
}
