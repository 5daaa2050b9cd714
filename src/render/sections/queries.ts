import type { Element } from 'hast';
import { h } from 'hastscript';
import { aboutOf, queryFinding } from '../../checks/engine/queries.js';
import type { Note } from '../../project/model.js';
import type { Query } from '../../project/queries.js';
import { queryStates } from '../../project/queries.js';
import { anchor, noteNumber, pointer } from '../anchors.js';
import { outcomeMark } from '../outcome.js';
import type { Subject } from '../subject.js';
import { words } from '../words.js';

/** Every query with its answer and what it is about. */
export function queryRegister(subject: Subject): Element {
  const { queries } = subject.build;
  return h('section', { id: anchor.section('queries') }, [
    h('h2', 'Queries'),
    ...(queries.length === 0 ? [h('p', 'No query has been recorded.')] : queries.map((q) => entry(q, subject))),
  ]);
}

function entry(query: Query, subject: Subject): Element {
  const { data } = query;
  const finding = subject.evaluation.findings.find((f) => f.id === queryFinding(query));
  const answered = [data['answered-by'], data['answered-on']].filter(Boolean).join(', ');
  return h('section.query', { id: anchor.query(query.name) }, [
    h('h3', { id: anchor.finding(queryFinding(query)) }, queryLabel(query).replace(/^q/, 'Q')),
    h('p.quiet', [
      `${data.from}, ${data.date}. About `,
      ...listed(data.about.map((r) => aboutPointer(r, subject))),
      `. State: ${data.state} (${queryStates[data.state]}). `,
      ...(finding ? [outcomeMark(finding)] : []),
    ]),
    h('p', [h('b', 'Question. '), data.question]),
    h('p', [h('b', `Answer${answered ? ` (${answered})` : ''}. `), data.answer ?? 'None yet.']),
    ...words(query, subject, 3),
  ]);
}

function aboutPointer(reference: string, subject: Subject): Element {
  const { build, evaluation } = subject;
  // The checklist shows the items of the codes that some note raises; the builder's own stand with their findings alone.
  const listed = evaluation.raised.filter(({ item }) => item.code !== 'own');
  const about = aboutOf(reference, build, new Set(listed.map(({ item }) => item.id)));
  if (about?.is === 'note') return pointer(anchor.note(about.note.name), `note ${noteNumber(about.note.name)}`);
  if (about?.is === 'item') return pointer(anchor.item(about.item), about.item);
  const finding = evaluation.findings.find((f) => f.id === reference);
  return finding ? pointer(anchor.finding(finding.id), `${finding.title} (${finding.id})`) : h('code', reference);
}

/** Pointers from a note to the queries about it, its findings and its items. */
export function queriesAbout(note: Note, subject: Subject): Element[] {
  const { build, evaluation } = subject;
  const items = new Set(evaluation.findings.filter((f) => f.note === note.name).map((f) => f.item));
  const about = build.queries.filter((q) =>
    q.data.about.some((r) => r.startsWith(`${note.name}/`) || items.has(r) || aboutIs(r, note, subject)),
  );
  if (about.length === 0) return [];
  return [
    h('p.queries-about', [
      h('b', 'Asked about this note: '),
      ...listed(about.map((q) => pointer(anchor.query(q.name), `${queryLabel(q)} (${q.data.state})`))),
      '.',
    ]),
  ];
}

function aboutIs(reference: string, note: Note, { build }: Subject): boolean {
  const about = aboutOf(reference, build, new Set());
  return about?.is === 'note' && about.note === note;
}

const queryLabel = (query: Query): string => `query ${noteNumber(query.name)}`;

const listed = (of: readonly Element[]): (Element | string)[] =>
  of.flatMap((one, i) => (i === 0 ? [one] : [', ', one]));
