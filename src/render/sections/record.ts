import type { Element } from 'hast';
import { h } from 'hastscript';
import { expanded } from '../../calc/value.js';
import { uncertaintyOf, valueOf } from '../../checks/engine/values.js';
import type { Measured } from '../../project/fields.js';
import type { Note } from '../../project/model.js';
import { showQuantity } from '../../units/show.js';
import { differenceUnit } from '../../units/unit.js';
import { anchor, joined, pointer } from '../anchors.js';
import { grouped } from '../grouped.js';
import { itemCode } from '../item.js';
import { textOf } from '../markdown.js';
import {
  type Compared,
  type ItemsAlike,
  itemsAlike,
  type Recorded,
  recordOf,
  type State,
  sideBySide,
  states,
} from '../record.js';
import { shownPointers } from '../shown.js';
import type { Subject } from '../subject.js';
import { below, type Column, type Row, table } from '../table.js';
import { keyOf, servedBy } from '../trace.js';

/** All that the note records, with the instrument, and with the items of the code that each measured value serves. */
export function recordSection(note: Note, subject: Subject): Element[] {
  const kind = subject.rules.kinds.get(note.kind)!;
  const record = recordOf(note, kind);
  const { compared, single } = sideBySide(record);
  if (record.length === 0) return [h('p.no-measurements', 'Nothing is measured in this note.')];
  const { lists, rest } = itemsAlike(single);
  return [
    ...comparedTable(compared, note, subject),
    ...recordedTable(rest, note, subject),
    ...lists.flatMap((list) => itemTables(list, note, subject)),
    ...methods(record),
  ];
}

/** What was there, what was planned and what is there now, side by side. */
function comparedTable(compared: readonly Compared[], note: Note, subject: Subject): Element[] {
  if (compared.length === 0) return [];
  const shown = (Object.keys(states) as State[]).filter((state) => compared.some((row) => row[state]));
  const columns: Column[] = [
    ['What', 18],
    ...shown.map((s): Column => [capitals[s], 58 / shown.length]),
    ['Serves', 24],
  ];
  const rows = grouped(compared, (row) => row.of.slice(0, -1).join('.')).flatMap((group): Row[] => [
    ...(group[0].of.length > 1 ? [{ group: groupName(group[0].of) }] : []),
    ...group.map((row) => [
      h('code', row.of.at(-1)!),
      ...shown.map((s) => (row[s] ? valueCell(row[s], note, subject, true) : '–')),
      servesCell(
        shown.flatMap((s) => row[s] ?? []),
        subject,
      ),
    ]),
  ]);
  return [table('compared', 'Before and after', columns, rows, { id: `${note.name}/states` })];
}

function recordedTable(single: readonly Recorded[], note: Note, subject: Subject): Element[] {
  if (single.length === 0) return [];
  const rows = grouped(single, (one) => one.path.slice(0, -1).join('.')).flatMap((group): Row[] => [
    ...(group[0].path.length > 1 ? [{ group: groupName(group[0].path) }] : []),
    ...group.map((one) => [
      h('span', [one.meta.says ?? one.path.at(-1)!, ' ', h('code', one.path.at(-1)!)]),
      valueCell(one, note, subject, false),
      howCell(one, note, subject),
      servesCell([one], subject),
    ]),
  ]);
  return [
    table(
      'recorded',
      'Recorded and measured',
      [
        ['What', 39],
        ['Value', 21],
        ['Uncertainty, how', 20],
        ['Serves', 20],
      ],
      rows,
      { id: `${note.name}/record` },
    ),
  ];
}

/** So many items find room beside each other. */
const abreast = 5;

/** The items of a list beside each other, so many to a table; what holds for all of a row stands once, in front. */
function itemTables({ list, ids, fields }: ItemsAlike, note: Note, subject: Subject): Element[] {
  const pages = Math.ceil(ids.length / abreast);
  const each = Math.ceil(ids.length / pages);
  return Array.from({ length: pages }, (_, page) => {
    const shown = ids.slice(page * each, (page + 1) * each);
    const rows = fields
      .filter(({ of }) => shown.some((id) => of.has(id)))
      .map(({ field, meta, of }): Row => {
        const records = shown.flatMap((id) => of.get(id) ?? []);
        const hows = new Set(records.map((one) => howText(one, note, subject)));
        const common = records.length > 1 && hows.size === 1;
        return [
          h('span', [
            meta.says ?? field,
            ' ',
            h('code', field),
            ...(common && records[0]!.measured ? [below(howCell(records[0]!, note, subject))] : []),
          ]),
          ...shown.map((id) => (of.has(id) ? valueCell(of.get(id)!, note, subject, !common) : '–')),
          servesCell(records, subject),
        ];
      });
    const columns: Column[] = [['What', 26], ...shown.map((id): Column => [id, 56 / shown.length]), ['Serves', 18]];
    const part = pages > 1 ? ` (${page + 1} of ${pages})` : '';
    return table('recorded', `Recorded and measured: ${list.replaceAll('.', ', ')}${part}`, columns, rows, {
      id: `${note.name}/${list}${page > 0 ? `-${page + 1}` : ''}`,
    });
  });
}

const howText = (one: Recorded, note: Note, subject: Subject): string => {
  const how = howCell(one, note, subject);
  return typeof how === 'string' ? how : textOf(how);
};

/** `crossmember, rail-left` over the fields of that weld. */
const groupName = (path: readonly string[]): Element =>
  h('span', [
    h(
      'b',
      path
        .slice(1, -1)
        .filter((_, i) => i % 2 === 0)
        .join(', ') || path[0]!,
    ),
    ' ',
    h('code', path.slice(0, -1).join('.')),
  ]);

const capitals: Readonly<Record<State, string>> = { was: 'As received', planned: 'As planned', now: 'As built' };

/** As written; with uncertainty and how below it where there is no column for them. */
function valueCell(one: Recorded, note: Note, subject: Subject, withHow: boolean): Element | string {
  const { measured } = one;
  if (!measured) return one.text ?? '';
  const how = withHow ? howCell(one, note, subject) : '';
  return h('span', { id: anchor.value(note.name, measured.at.path) }, [
    measured.quantity.text,
    ...(how ? [below(how)] : []),
  ]);
}

/** Expanded uncertainty, the value as used where it was typed in another form, instrument, person, day, photo. */
function howCell(one: Recorded, note: Note, subject: Subject): Element | string {
  const { measured } = one;
  if (!measured) return '';
  const value = valueOf(measured, subject.build);
  const u = expanded(value);
  const { assumed, outOfDate } = uncertaintyOf(measured, subject.build);
  const used = showQuantity(value.si, value.unit);
  const how = [
    ...ofSeveral(measured, used),
    ...(u > 0 ? [`± ${showQuantity(u, differenceUnit(value.unit))}${assumed ? ` assumed, ${assumed}` : ''}`] : []),
    ...(measured.with ? [instrument(measured.with, subject)] : []),
    ...(outOfDate ? ['instrument out of date, its U doubled'] : []),
    ...[measured.by ?? one.by, measured.on ?? one.on].filter((x) => x !== undefined),
    ...(measured.photo ? shownPointers(`photo ${measured.photo}`, note, subject) : []),
  ];
  return how.length > 0 ? h('span', joined(how)) : '';
}

/** What stands for a list: of places the one that calculations take, of readings their mean. */
function ofSeveral({ direction, quantity, places }: Measured, used: string): string[] {
  if (places)
    return quantity.readings ? [`${places.length} places, each judged`] : [`${used} of ${places.length} places`];
  return direction === undefined && quantity.readings ? [`mean ${used} of ${quantity.readings.length} readings`] : [];
}

function instrument(id: string, { build }: Subject): Element | string {
  return build.data.instruments?.some((i) => i.id === id) ? pointer(anchor.instrument(id), id, false) : id;
}

/** Items that rest on the values of a row; where none can, or none does, that is said. */
function servesCell(of: readonly Recorded[], subject: Subject): Element | string {
  if (of.some((one) => one.meta.recordedFor !== undefined)) return 'recorded only';
  const measured = of.flatMap((one) => one.measured ?? []);
  if (measured.length === 0) return '';
  const serves = servedBy(subject.evaluation);
  const items = new Set(measured.flatMap((m) => [...(serves.get(keyOf(m.at)) ?? [])]));
  return items.size === 0 ? 'information' : h('span', joined([...items].map((id) => itemCode(id, subject))));
}

/** How the fields of the note are to be measured. */
function methods(record: readonly Recorded[]): Element[] {
  const asked = new Map(
    record.flatMap(({ path, meta }) => (meta.how ? [[path.at(-1)!.replaceAll('-', ' '), meta.how] as const] : [])),
  );
  if (asked.size === 0) return [];
  return [
    h('p.methods', [
      h('b', 'How it is measured. '),
      [...asked].map(([name, how]) => `${name}: ${how}`).join('; '),
      '.',
    ]),
  ];
}
