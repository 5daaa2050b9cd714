import { h } from 'hastscript';
import type { Element } from 'hast';
import type { Note } from '../../build/model.js';
import { expanded } from '../../calc/value.js';
import { valueOf } from '../../checks/values.js';
import { showQuantity } from '../../units/show.js';
import { anchor, joined, pointer } from '../anchors.js';
import { itemCode } from '../item.js';
import { recordOf, sideBySide, states, type Compared, type Recorded, type State } from '../record.js';
import { shownPointers } from '../shown.js';
import type { Subject } from '../subject.js';
import { below, table, type Column, type Row } from '../table.js';
import { keyOf, servedBy } from '../trace.js';
import { grouped } from './findings.js';

/** All that the note records, with the instrument, and with the items of the code that each measured value serves. */
export function recordSection(note: Note, subject: Subject): Element[] {
  const kind = subject.rules.kinds.get(note.kind)!;
  const record = recordOf(note, kind);
  const { compared, single } = sideBySide(record);
  if (record.length === 0) return [h('p.no-measurements', 'Nothing is measured in this note.')];
  return [...comparedTable(compared, note, subject), ...recordedTable(single, note, subject), ...methods(record)];
}

/** What was there, what was planned and what is there now, side by side. */
function comparedTable(compared: readonly Compared[], note: Note, subject: Subject): Element[] {
  if (compared.length === 0) return [];
  const shown = (Object.keys(states) as State[]).filter((state) => compared.some((row) => row[state]));
  const columns: Column[] = [['What', 18], ...shown.map((s): Column => [capitals[s], 58 / shown.length]), ['Serves', 24]];
  const rows = grouped(compared, (row) => row.of.slice(0, -1).join('.')).flatMap((group): Row[] => [
    ...(group[0].of.length > 1 ? [{ group: groupName(group[0].of) }] : []),
    ...group.map((row) => [h('code', row.of.at(-1)!), ...shown.map((s) => (row[s] ? valueCell(row[s], note, subject, true) : '–')), servesCell(shown.flatMap((s) => row[s] ?? []), subject)]),
  ]);
  return [table('compared', 'Before and after', columns, rows, { id: `${note.name}/states` })];
}

function recordedTable(single: readonly Recorded[], note: Note, subject: Subject): Element[] {
  if (single.length === 0) return [];
  const rows = grouped(single, (one) => one.path.slice(0, -1).join('.')).flatMap((group): Row[] => [
    ...(group[0].path.length > 1 ? [{ group: groupName(group[0].path) }] : []),
    ...group.map((one) => [h('span', [one.meta.says ?? one.path.at(-1)!, ' ', h('code', one.path.at(-1)!)]), valueCell(one, note, subject, false), howCell(one, note, subject), servesCell([one], subject)]),
  ]);
  return [table('recorded', 'Recorded and measured', [['What', 39], ['Value', 21], ['Uncertainty, how', 20], ['Serves', 20]], rows, { id: `${note.name}/record` })];
}

/** `crossmember, rail-left` over the fields of that weld. */
const groupName = (path: readonly string[]): Element => h('span', [h('b', path.slice(1, -1).filter((_, i) => i % 2 === 0).join(', ') || path[0]!), ' ', h('code', path.slice(0, -1).join('.'))]);

const capitals: Readonly<Record<State, string>> = { was: 'As received', planned: 'As planned', now: 'As built' };

/** As written; with uncertainty and how below it where there is no column for them. */
function valueCell(one: Recorded, note: Note, subject: Subject, withHow: boolean): Element | string {
  const { measured } = one;
  if (!measured) return one.text ?? '';
  const how = withHow ? howCell(one, note, subject) : '';
  return h('span', { id: anchor.value(note.name, measured.at.path) }, [measured.quantity.text, ...(how ? [below(how)] : [])]);
}

/** Expanded uncertainty, the value as used where it was typed in another form, instrument, person, day, photo. */
function howCell(one: Recorded, note: Note, subject: Subject): Element | string {
  const { measured } = one;
  if (!measured) return '';
  const value = valueOf(measured, subject.build);
  const u = expanded(value);
  const used = showQuantity(value.si, value.unit);
  const how = [
    ...(measured.direction === undefined && measured.quantity.readings ? [`mean ${used} of ${measured.quantity.readings.length} readings`] : []),
    ...(u > 0 ? [`± ${showQuantity(u, value.unit)}${value.assumed.size > 0 ? ' assumed' : ''}`] : []),
    ...(measured.with ? [instrument(measured.with, subject)] : []),
    ...[measured.by ?? one.by, measured.on ?? one.on].filter((x) => x !== undefined),
    ...(measured.photo ? shownPointers(`photo ${measured.photo}`, note, subject) : []),
  ];
  return how.length > 0 ? h('span', joined(how)) : '';
}

function instrument(id: string, { build }: Subject): Element | string {
  return build.data.instruments?.some((i) => i.id === id) ? pointer(anchor.instrument(id), id, false) : id;
}

/** Items that rest on the values of a row; a value that serves none is said to be information. */
function servesCell(of: readonly Recorded[], subject: Subject): Element | string {
  const measured = of.flatMap((one) => one.measured ?? []);
  if (measured.length === 0) return '';
  const serves = servedBy(subject.evaluation);
  const items = new Set(measured.flatMap((m) => [...(serves.get(keyOf(m.at)) ?? [])]));
  return items.size === 0 ? 'information' : h('span', joined([...items].map((id) => itemCode(id, subject))));
}

/** How the fields of the note are to be measured. */
function methods(record: readonly Recorded[]): Element[] {
  const asked = new Map(record.flatMap(({ path, meta }) => (meta.how ? [[path.at(-1)!.replaceAll('-', ' '), meta.how] as const] : [])));
  if (asked.size === 0) return [];
  return [h('p.methods', [h('b', 'How it is measured. '), [...asked].map(([name, how]) => `${name}: ${how}`).join('; '), '.'])];
}
