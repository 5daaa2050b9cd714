import type { Element } from 'hast';
import { h } from 'hastscript';
import { type FieldThroughTime, isChanged, type ValueChange } from '../../history/history.js';
import type { DocumentHistory } from '../../history/issues.js';
import { measuredIn } from '../../project/measured-in.js';
import { anchor, pointer } from '../anchors.js';
import { printable } from '../printable.js';
import type { Subject } from '../subject.js';
import { below, type Row, table } from '../table.js';

/** Which measured values changed since they were entered, by whom and when, and the issues of the document. */
export function historySection({ values, issues }: DocumentHistory, subject: Subject): Element {
  const changed = values.fields.filter(isChanged);
  const late = changed.flatMap((f) => f.events).filter((e) => e.late).length;
  const counted = `${values.fields.length} values and designations are recorded in the commits up to this one; ${values.fields.length - changed.length} were entered once and never changed, ${changed.length} changed since.`;
  return h('section', { id: anchor.section('history') }, [
    h('h2', 'History of measured values'),
    h('p', counted),
    ...(late > 0
      ? [
          h(
            'p',
            h('b', `Dated after the work had covered what was measured, and marked below: ${late} of the changes.`),
          ),
        ]
      : []),
    ...(changed.length > 0 ? [changesTable(changed, subject)] : []),
    ...values.unread.map(({ commit, path, reason }) =>
      h('p.quiet', [
        'In commit ',
        h('code', commit.slice(0, 8)),
        ` ${printable(path)} could not be read (${printable(reason)}): values may have changed there unseen.`,
      ]),
    ),
    ...values.limits.map((limit) => h('p.quiet', printable(limit))),
    h('h3', 'What this proves'),
    h(
      'p',
      'Each commit names the one before it by a digest of all that it holds, so that nothing in this history can be altered without altering every commit after it; a signed tag fixes the whole of it under one key. It does not prove who sat at the keyboard or when: names and dates are what each computer was told, and a history that nobody else holds can be written anew. Whose key signed, and whether it fits, is told by `gusset verify`.'.replaceAll(
        '`',
        '',
      ),
    ),
    h('h3', 'Issues of this document'),
    issues.length > 0
      ? table(
          'issues',
          'Issues, each with the tag and the commit that it was made of',
          ['Issue', 'Tag', 'Commit', 'Of', 'Tag signed'],
          issues.map((i) => [
            i.letter,
            h('code', printable(i.tag)),
            h('code', i.commit.slice(0, 12)),
            i.date,
            i.signed ? 'yes' : 'no',
          ]),
          { id: 'issues', narrow: true },
        )
      : h('p', 'None has been made yet.'),
  ]);
}

function changesTable(changed: readonly FieldThroughTime[], subject: Subject): Element {
  const notes = [...new Set(changed.map((f) => f.note))];
  const rows = notes.flatMap((note): Row[] => [
    { group: noteName(note, subject) },
    ...changed
      .filter((f) => f.note === note)
      .flatMap((f) => f.events.map((event, i) => row(f, event, i === 0, subject))),
  ]);
  return table(
    'changes',
    'Values that changed since they were entered',
    [
      ['Field', 27],
      ['From, to', 23],
      ['Difference', 13],
      ['By, on', 17],
      ['Commit', 20],
    ],
    rows,
    { id: 'history' },
  );
}

function row(field: FieldThroughTime, event: ValueChange, first: boolean, subject: Subject): Row {
  const { author, date, commit, subject: says } = event;
  return [
    first
      ? h('span', [
          fieldPointer(field.note, field.field, subject),
          ...(field.present ? [] : [below('no longer there')]),
        ])
      : '',
    h('span', [changeText(event), ...remarks(event).map((remark) => below(remark))]),
    event.rewritten ? 'same value' : (event.difference ?? '–'),
    h('span', [printable(author.name.trim() || author.email), below(date.slice(0, 10))]),
    h('span', [printable(says), below(h('code', commit.slice(0, 8)))]),
  ];
}

/** `2.48 mm → 0.1 in`. */
export function changeText({ from, to }: Pick<ValueChange, 'from' | 'to'>): string {
  if (from === undefined) return `entered: ${printable(to ?? '')}`;
  return to === undefined ? `${printable(from)}, taken out` : `${printable(from)} → ${printable(to)}`;
}

function remarks({ late, sides, boundary, unread }: ValueChange): string[] {
  return [
    ...(late ? [`! after “${late.stage}” on ${late.on} had covered it`] : []),
    ...(sides
      ? [
          `! settled in a merge of ${sides.map((side) => (side === undefined ? 'nothing' : printable(side))).join(' and ')}`,
        ]
      : []),
    ...(unread ? ['! the note could not be read in the commits before'] : []),
    ...(boundary ? ['! older commits are not at hand'] : []),
  ];
}

/** A field, as a pointer where the document shows its value. */
export function fieldPointer(path: string, field: string, { build }: Subject): Element {
  const note = build.notes.find((n) => n.path === path);
  const isShown = note && measuredIn(note.data).some((m) => m.at.path === field);
  return isShown ? pointer(anchor.value(note.name, field), field) : h('code', printable(field));
}

/** The note at a path, as a pointer where the document has it. */
export function noteName(path: string, { build }: Subject): Element {
  const note = build.notes.find((n) => n.path === path);
  if (note) return pointer(anchor.note(note.name), `${path}: ${note.data.title}`);
  return path === 'build.md' ? pointer(anchor.section('identity'), path) : h('span', printable(path));
}
