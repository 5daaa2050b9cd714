import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Place } from '../../../calc/value.js';
import type { Finding } from '../../../checks/engine/finding.js';
import { shownBy } from '../../../checks/engine/shown.js';
import { measuredIn } from '../../../project/measured-in.js';
import { anchor, joined, label, pointer } from '../../anchors.js';
import { grouped } from '../../grouped.js';
import { itemCode } from '../../item.js';
import { fieldPointers } from '../../origin.js';
import { outcomeMark } from '../../outcome.js';
import { evidenceOf } from '../../shown.js';
import type { Subject } from '../../subject.js';
import { type Row, table } from '../../table.js';
import { keyOf, servedBy, traceOf } from '../../trace.js';
import { isBlank } from '../answers.js';
import { findingPointer } from '../open-items.js';

/** From each item of the code to what shows it, and back: what was measured and serves no item is listed as information. */
export function matrix(subject: Subject): Element {
  const { evaluation } = subject;
  const order = new Map(evaluation.raised.map(({ item }, i) => [item.id, i]));
  const at = (f: Finding) => order.get(f.item) ?? order.size;
  const kept = evaluation.findings
    .filter((f) => f.outcome !== 'not-applicable' && !(isBlank(f) && !f.run))
    .sort((a, b) => at(a) - at(b));
  const bare = evaluation.findings.filter((f) => f.outcome !== 'not-applicable' && !kept.includes(f));
  return h('section.landscape', { id: anchor.section('matrix') }, [
    h('h2', 'Traceability'),
    ...tables(kept, subject),
    ...(bare.length > 0
      ? [
          h('p', [
            `${bare.length} findings have no record yet; they stand under `,
            pointer(anchor.section('open'), 'open items'),
            '.',
          ]),
        ]
      : []),
    ...information(subject),
  ]);
}

interface Traced {
  f: Finding;
  fields: Place[];
  runs: string[];
  shown: Element[];
}

/** What rests on numbers, and after it what rests on answers and evidence alone. */
function tables(findings: readonly Finding[], subject: Subject): Element[] {
  const traced = findings.map((f): Traced => {
    const trace = traceOf(f, subject.evaluation);
    return { f, ...trace, shown: pictures(f, trace.fields.map(keyOf), subject) };
  });
  const [numbers, words] = [
    (t: Traced) => t.fields.length + t.runs.length > 0,
    (t: Traced) => t.fields.length + t.runs.length === 0,
  ].map((are) => alike(traced.filter(are)));
  return [
    table(
      'matrix',
      'From each item that compares numbers to findings, their outcomes, measured fields, sheets, photos and papers',
      [
        ['Finding and its outcome', 31],
        ['Measured', 34],
        ['Sheets', 21],
        ['Photos, papers', 14],
      ],
      byItem(numbers!, subject),
      { id: 'traceability' },
    ),
    table(
      'matrix',
      'From each item that asks for an answer or for evidence to finding and outcome, photos and papers',
      [
        ['Item', 20],
        ['Findings and their outcomes', 46],
        ['Photos, papers', 34],
      ],
      words!.map((group) => [
        itemCode(group[0].f.item, subject),
        cell(group.map(({ f }) => h('span', [findingPointer(f), ' ', outcomeMark(f, false)]))),
        cell(group[0].shown, '; '),
      ]),
      { id: 'traceability-answers' },
    ),
  ];
}

/** An item, and under it a row for the findings that rest on the same records. */
function byItem(rows: readonly [Traced, ...Traced[]][], subject: Subject): Row[] {
  return grouped(rows, ([{ f }]) => f.item).flatMap((ofItem): Row[] => [
    { group: h('span', [h('b', ofItem[0][0].f.title), ' ', itemCode(ofItem[0][0].f.item, subject)]) },
    ...ofItem.map((group) => [
      cell(group.map(({ f }) => h('span', [findingPointer(f, false), ' ', outcomeMark(f, false)]))),
      cell(fieldPointers(group[0].fields, subject)),
      cell(group[0].runs.map((run) => pointer(anchor.sheet(run), label.sheet(run).replace(/^sheet /, '')))),
      cell(group[0].shown),
    ]),
  ]);
}

/** Findings of one item that rest on the same records share a row. */
function alike(traced: readonly Traced[]): [Traced, ...Traced[]][] {
  return grouped(traced, ({ f, fields, runs, shown }) =>
    [f.item, fields.map(keyOf), runs, shown.map((p) => p.properties['href'])].join('\n'),
  );
}

const cell = (of: readonly (Element | string)[], between: Element | string = h('br')): Element | string =>
  of.length > 0 ? h('span', joined(of, between)) : '–';

/** Evidence of the item, and photos of the measured values that the finding rests on. */
function pictures(f: Finding, fields: readonly string[], subject: Subject): Element[] {
  const { build } = subject;
  const ofValues = build.notes.flatMap((n) =>
    measuredIn(n.data).flatMap((m) =>
      m.photo !== undefined && fields.includes(keyOf(m.at)) ? shownBy(`photo ${m.photo}`, n, build, []) : [],
    ),
  );
  const photos = ofValues.flatMap((s) => (s.is === 'photo' ? [{ note: s.note, file: s.file }] : []));
  const all = [
    ...evidenceOf(f, subject),
    ...photos.map((p) => pointer(anchor.photo(`${p.note.name}/${p.file}`), label.photo(p.note.name, p.file))),
  ];
  return [...new Map(all.map((e) => [String(e.properties['href']), e])).values()];
}

/** Measured values that no finding rests on. */
function information(subject: Subject): Element[] {
  const served = servedBy(subject.evaluation);
  const rows = subject.build.notes.flatMap((note) => {
    const idle = measuredIn(note.data).filter((m) => !served.has(keyOf(m.at)));
    return idle.length > 0
      ? [
          h('li', [
            pointer(anchor.note(note.name), label.note(note.name)),
            ': ',
            ...joined(idle.map((m) => h('span', [h('code', m.at.path), ` ${m.quantity.text}`]))),
            '.',
          ]),
        ]
      : [];
  });
  if (rows.length === 0) return [h('p', 'Every measured value serves an item of the code.')];
  return [h('p', [h('b', 'Measured for information. '), 'These values serve no item of the code:']), h('ul', rows)];
}
