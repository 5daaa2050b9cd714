import type { Element } from 'hast';
import { h } from 'hastscript';
import { expanded, spread } from '../../calc/value.js';
import { type Finding, resultOf } from '../../checks/engine/finding.js';
import { judgementText } from '../../checks/engine/judgements.js';
import type { Note } from '../../project/model.js';
import { showQuantity } from '../../units/show.js';
import { differenceUnit } from '../../units/unit.js';
import { anchor, capitalised, label, noteNumber, pointer } from '../anchors.js';
import { drawingForFinding, drawingsForFindings } from '../drawings/for-finding.js';
import { grouped } from '../grouped.js';
import { inline } from '../inline.js';
import { comparison, itemCode } from '../item.js';
import { boundText, restsText } from '../limit-text.js';
import { fieldPointer } from '../origin.js';
import { outcomeMark } from '../outcome.js';
import type { Subject } from '../subject.js';
import { below, type Row, table } from '../table.js';

/** Comparisons of a number with a limit: each limit with what it rests on, below it what was compared with it. */
export function comparisonsTable(note: Note, findings: readonly Finding[], subject: Subject): Element[] {
  if (findings.length === 0) return [];
  const groups = grouped(findings, (f) => `${f.item}\n${limitOf(f)}`);
  const rows = groups.flatMap((group): Row[] => [
    { group: limitLine(group[0], subject) },
    ...group.map((f) => rowOf(f, subject, f === governing(group))),
  ]);
  const drawings = groups.flatMap(drawn);
  return [
    table(
      'findings',
      'Measured against limits',
      [
        ['Of what', 20],
        ['Measured', 38],
        ['Margin', 12],
        ['Outcome', 30],
      ],
      rows,
      { id: `${note.name}/findings` },
    ),
    ...(drawings.length > 0
      ? [h('p.list-title', h('b', 'Values against their limits')), h('div.drawings', drawings)]
      : []),
  ];
}

/** Several values in one drawing where one scale can show them; else each that is near its limit in its own. */
function drawn(group: readonly Finding[]): Element[] {
  const sizes = group.flatMap((f) => (f.measured ? [Math.abs(f.measured.si)] : []));
  const together = Math.max(...sizes) <= 10 * Math.min(...sizes) ? drawingsForFindings(group) : [];
  return together.length > 0 ? together : group.filter(isNear).flatMap((f) => drawingForFinding(f) ?? []);
}

/** Beyond the limit, across it, or inside by less than a quarter of it or three times the uncertainty. */
function isNear(f: Finding): boolean {
  if (resultOf(f.outcome) !== 'met' || !f.measured || !f.limit || f.margin === undefined) return true;
  const bounds = [f.limit.min, f.limit.max].flatMap((b) => (b ? [Math.abs(b.si)] : []));
  return f.margin < Math.max(Math.min(...bounds) / 4, 3 * expanded(f.measured));
}

const limitOf = (f: Finding): string => (f.limit ? `${boundText(f.limit)}\n${restsText(f.limit)}` : '');

function limitLine(f: Finding, subject: Subject): Element {
  const item = subject.evaluation.raised.find((r) => r.item.id === f.item)?.item;
  const limit = f.limit
    ? [
        `: ${boundText(f.limit)}. `,
        h('span.rests', [
          ...(f.limit.from ? [`Reckoned as ${f.limit.from.replaceAll('_', ' ')}. `] : []),
          restsText(f.limit),
        ]),
      ]
    : [];
  return h('span', [h('b', f.title), ' ', itemCode(f.item, subject), ...limit, ...comparison(item)]);
}

/** Of several values against one limit, the one with the least margin. */
function governing(group: readonly Finding[]): Finding | undefined {
  const margins = group.flatMap((f) => (f.limit && f.margin !== undefined ? [{ f, margin: f.margin }] : []));
  return margins.length < 2 ? undefined : margins.reduce((least, one) => (one.margin < least.margin ? one : least)).f;
}

function rowOf(f: Finding, subject: Subject, governs: boolean): (Element | string)[] {
  const margin =
    f.limit && f.margin !== undefined
      ? `${f.margin < 0 ? 'beyond by ' : ''}${showQuantity(Math.abs(f.margin), differenceUnit(f.limit.unit))}`
      : '–';
  const says =
    f.limit && f.margin !== undefined ? (f.onlyIf ? [below(...inline(f.onlyIf))] : []) : [below(...inline(f.says))];
  return [
    h('span', { id: anchor.finding(f.id) }, f.subject || 'the whole'),
    measuredCell(f, subject),
    governs ? h('span', [margin, below('governs')]) : margin,
    h('span', [outcomeMark(f), ...says, ...against(f, subject), ...todo(f)]),
  ];
}

function measuredCell(f: Finding, subject: Subject): Element | string {
  if (!f.measured) return f.answer ?? '–';
  const { origin } = f.measured;
  const field = origin.kind === 'note' ? [' ', fieldPointer(origin.place, subject, f.note)] : [];
  return h('span', [
    h('b', showQuantity(f.measured.si, f.limit?.unit ?? f.measured.unit, spread(f.measured))),
    ...sheetOf(f, subject),
    ...field,
  ]);
}

function sheetOf(f: Finding, { evaluation }: Subject): Element[] {
  return f.run && evaluation.runs.some((r) => r.id === f.run)
    ? [below(pointer(anchor.sheet(f.run), label.sheet(f.run)))]
    : [];
}

/** Checks that lack a number, those that lack the same thing together. */
export function unmeasuredTable(note: Note, findings: readonly Finding[], subject: Subject): Element[] {
  if (findings.length === 0) return [];
  const rows = grouped(findings, (f) => `${f.says}\n${f.todo}`).map((group) => [
    h(
      'ul.plain',
      group.map((f) =>
        h('li', { id: anchor.finding(f.id) }, [nameOf(f), ' ', itemCode(f.item, subject), ...sheetOf(f, subject)]),
      ),
    ),
    h('span', [outcomeMark(group[0]), below(...inline(group[0].says))]),
    h('span', inline(group[0].todo ?? '–')),
  ]);
  return [
    table(
      'unmeasured',
      'Not measured yet',
      [
        ['Check', 45],
        ['What is missing', 29],
        ['To do', 26],
      ],
      rows,
      { id: `${note.name}/unmeasured` },
    ),
  ];
}

export const nameOf = (f: Pick<Finding, 'title' | 'subject'>): string =>
  f.subject ? `${f.title} (${f.subject})` : f.title;

/** The other of two places that do not agree. A key of the frontmatter need not have a row of its own, so it is no link. */
export function against({ outcome, related }: Finding, { build }: Subject): Element[] {
  if (outcome !== 'contradicted' || !related) return [];
  const note = build.notes.find((n) => n.file === related.place.file);
  return [below('against ', note ? noteNumber(note.name) : 'build.md', ' ', h('code', related.place.path))];
}

/** What is left to do about a finding, and the certifier's word and judgements on it. */
export function todo(f: Pick<Finding, 'todo' | 'concession' | 'judgements'>): Element[] {
  return [
    ...(f.todo ? [h('span.below.todo', ['→ ', ...inline(f.todo)])] : []),
    ...concession(f),
    ...(f.judgements ?? []).map((j) => below(`${capitalised(judgementText(j))}.`)),
  ];
}

function concession({ concession: c }: Pick<Finding, 'concession'>): Element[] {
  if (!c) return [];
  const because = [c.because, ...(c.condition ? [`on condition: ${c.condition}`] : [])]
    .map((words) => words.replace(/\.$/, ''))
    .join('; ');
  return [
    below(
      `Concession ${c.word.replace('-', ' ')}${c.by ? ` by ${c.by}` : ''}${c.on ? ` on ${c.on}` : ''}: ${because}.`,
    ),
  ];
}
