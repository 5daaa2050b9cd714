import type { Element } from 'hast';
import { h } from 'hastscript';
import { type Finding, isOpen } from '../../checks/engine/finding.js';
import { groupSays } from '../../checks/engine/settler-words.js';
import { bySeverity } from '../../checks/engine/severity.js';
import { anchor, joined, noteNumber, pointer } from '../anchors.js';
import { grouped } from '../grouped.js';
import { inline } from '../inline.js';
import { outcomeMark } from '../outcome.js';
import type { Subject } from '../subject.js';
import { table } from '../table.js';
import { isBlank } from './answers.js';
import { nameOf, todo } from './findings.js';
import { fieldPointer } from './history.js';

/** All that is left to do or to decide: what somebody must decide first, then what still waits for a record. */
export function openItems(subject: Subject): Element {
  const open = subject.evaluation.findings.filter(isOpen).sort(bySeverity);
  const waits = open.filter((f) => (isBlank(f) || f.form === 'order') && f.note !== 'build');
  const serious = open.filter((f) => !waits.includes(f));
  return h('section', { id: anchor.section('open') }, [
    h('h2', 'Open items'),
    ...(open.length === 0 ? [h('p', 'No finding is open.')] : []),
    ...settledByConcession(subject),
    ...(serious.length > 0
      ? [
          table(
            'open',
            'To be decided or put right, most serious first',
            [
              ['Finding', 34],
              ['Outcome', 24],
              ['What to do', 42],
            ],
            serious.map((f) => [
              findingPointer(f),
              outcomeMark(f),
              h('span', [...(f.concession ? [] : inline(f.todo ?? f.says)), ...(f.concession ? todo(f) : [])]),
            ]),
            { id: 'open' },
          ),
        ]
      : []),
    ...settling(subject),
    ...changedLate(subject),
    ...doubtful(subject),
    ...(waits.length > 0 ? [h('h3', 'Waiting for a number, an answer or a picture'), ...waiting(waits, subject)] : []),
  ]);
}

/** What is inconclusive, under the one measurement or test that would settle most of it. */
function settling({ evaluation: { settledTogether } }: Subject): Element[] {
  if (settledTogether.length === 0) return [];
  const count = settledTogether.reduce((sum, { findings }) => sum + findings.length, 0);
  return [
    h('h3', 'What would settle the inconclusive findings'),
    h(
      'ul',
      settledTogether.map((group) =>
        h('li', [
          ...inline(groupSays(group, count)),
          ': ',
          ...joined(
            group.findings.map((f) => findingPointer(f)),
            '; ',
          ),
          '.',
        ]),
      ),
    ),
  ];
}

/** Values that somebody changed when the work had covered what they measure: nobody has seen what they tell now. */
function changedLate(subject: Subject): Element[] {
  const fields = subject.history?.values.fields.filter((f) => f.events.some((e) => e.late)) ?? [];
  if (fields.length === 0) return [];
  return [
    h('h3', 'Changed after it was covered'),
    h('p', [
      'What was recorded, or released, before the work went on was another value of these. From what to what, by whom and when stands in the ',
      pointer(anchor.section('history'), 'history'),
      '.',
    ]),
    h(
      'ul.columns',
      fields.map((f) =>
        h('li', [`${noteNumber(f.note.replace(/^.*\//, ''))} `, fieldPointer(f.note, f.field, subject)]),
      ),
    ),
  ];
}

/** What does not conform and is no longer open, because the certifier accepted it. */
function settledByConcession({ evaluation }: Subject): Element[] {
  const count = evaluation.findings.filter((f) => f.concession?.word === 'accepted').length;
  if (count === 0) return [];
  return [
    h('p', [
      `${count} ${count === 1 ? 'finding' : 'findings'} with an accepted concession ${count === 1 ? 'stands' : 'stand'} under `,
      pointer(anchor.section('concessions'), 'concessions'),
      ', not here.',
    ]),
  ];
}

/** Values that were probably not meant as they stand. */
function doubtful({ evaluation: { doubts } }: Subject): Element[] {
  if (doubts.length === 0) return [];
  const rows = doubts.map((d) => [
    d.note === 'build'
      ? h('span', ['build: ', d.place.path])
      : pointer(anchor.value(d.note, d.place.path), `${noteNumber(d.note)}: ${d.place.path}`),
    d.found,
    `${d.expected}; ${d.hint}`,
  ]);
  return [
    h('h3', 'Values to look at again'),
    h(
      'p',
      'They are unlike what is usual for their field, by a factor that a slip of the unit or of the point explains. The findings take them as written.',
    ),
    table(
      'doubts',
      'Improbable values',
      [
        ['Value', 34],
        ['Found', 20],
        ['Expected', 46],
      ],
      rows,
      { id: 'doubts' },
    ),
  ];
}

function waiting(findings: readonly Finding[], { build }: Subject): Element[] {
  return build.notes.flatMap((note) => {
    const own = findings.filter((f) => f.note === note.name);
    if (own.length === 0) return [];
    return [
      h('p.list-title', h('b', `Note ${noteNumber(note.name)}: ${note.data.title}`)),
      ...grouped(own, kindOf).map((group) =>
        h('div.blank-group', [
          h('p', `${kindOf(group[0])} (${group.length}):`),
          h(
            'ul.columns',
            group.map((f) => h('li', pointer(anchor.finding(f.id), nameOf(f)))),
          ),
        ]),
      ),
    ];
  });
}

function kindOf(f: Finding): string {
  if (f.form === 'order') return 'Not recorded before it was covered, or not yet';
  if (f.form === 'evidence') return 'Not shown';
  return f.form === 'answer' ? 'Not answered' : 'Not measured';
}

/** A pointer to a finding, by note and subject, and by its title where that does not stand above. */
export function findingPointer(f: Finding, titled = true): Element {
  const where = f.note === 'build' ? '' : `${noteNumber(f.note)}${f.subject ? ` ${f.subject}` : ''}`;
  return pointer(anchor.finding(f.id), where === '' ? f.title : titled ? `${where}: ${f.title}` : where);
}
