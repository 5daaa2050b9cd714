import type { Kind } from '../checks/engine/kind.js';
import { commonShape } from '../project/common.js';
import type { FieldMeta, Measured } from '../project/fields.js';
import { metaAt } from '../project/find-field.js';
import type { Note } from '../project/model.js';
import { grouped } from './grouped.js';

/** One field of a note as it was filled in. */
export interface Recorded {
  /** Items of lists by their id: `pieces.crossmember.now.wall`. */
  path: readonly string[];
  /** A measured value, or else the words. */
  measured?: Measured;
  text?: string;
  /** The lists that it stands in, the outermost first: the list, the item, and the field within it. */
  items: readonly { list: string; id: string; field: string }[];
  /** Day and person stated for the block that it stands in. */
  on?: string | undefined;
  by?: string | undefined;
  meta: Partial<FieldMeta>;
}

/** The states that a block of values may describe. */
export const states = { was: 'as received', planned: 'as planned', now: 'as built' } as const;
export type State = keyof typeof states;

/** All that the note records beside its common keys, in the order in which it was written. */
export function recordOf(note: Pick<Note, 'data'>, kind: Pick<Kind, 'shape'>): Recorded[] {
  const own = Object.entries(note.data).filter(([key]) => key in kind.shape && !(key in commonShape));
  return [
    ...own.flatMap(([key, value]) => walk(value, [key], kind, { within: [] })),
    ...Object.entries(note.data.measured ?? {}).flatMap(([item, measured]): Recorded[] =>
      measured ? [{ path: ['measured', item], items: [], measured, meta: { says: item } }] : [],
    ),
  ];
}

type Stated = Pick<Recorded, 'on' | 'by'> & { within: readonly { list: string; id: string; from: number }[] };

function walk(value: unknown, path: readonly string[], kind: Pick<Kind, 'shape'>, stated: Stated): Recorded[] {
  if (value === undefined || value === null) return [];
  const field = (rest: Pick<Recorded, 'measured' | 'text'>): Recorded[] => {
    const meta = metaAt(kind.shape, path) as Partial<FieldMeta> & { choices?: Readonly<Record<string, string>> };
    const says = rest.text === undefined ? undefined : meta.choices?.[rest.text];
    const spelled = says !== undefined && says.toLowerCase() !== rest.text?.toLowerCase();
    const { within, ...day } = stated;
    const items = within.map(({ list, id, from }) => ({ list, id, field: path.slice(from).join(' ') }));
    return [{ path, items, ...day, ...rest, ...(spelled ? { text: `${rest.text}: ${says}` } : {}), meta }];
  };
  if (typeof value !== 'object') return field({ text: String(value) });
  if (isMeasured(value)) return field({ measured: value });
  if ('written' in value) return field({ text: String(value.written) });
  if (Array.isArray(value)) {
    if (value.every((one) => typeof one !== 'object')) return field({ text: value.join(', ') });
    return value.flatMap((one: Record<string, unknown>, i) => {
      const { id, ...rest } = one;
      const name = typeof id === 'string' ? id : String(i + 1);
      const item = { list: path.join('.'), id: name, from: path.length + 1 };
      return walk(rest, [...path, name], kind, { ...stated, within: [...stated.within, item] });
    });
  }
  const { on, by, ...rest } = value as Record<string, unknown>;
  const here: Stated = {
    ...stated,
    on: typeof on === 'string' ? on : stated.on,
    by: typeof by === 'string' ? by : stated.by,
  };
  const told = Object.entries(rest).flatMap(([key, inner]) => walk(inner, [...path, key], kind, here));
  // Day and person stand beside the measured values of their block; where none has them, they are fields as any other.
  const alone = (['on', 'by'] as const).filter(
    (key) => !told.some(({ measured, ...one }) => measured && measured[key] === undefined && one[key] === here[key]),
  );
  return [
    ...told,
    ...alone.flatMap((key) => walk((value as Record<string, unknown>)[key], [...path, key], kind, stated)),
  ];
}

const isMeasured = (value: object): value is Measured => 'quantity' in value && 'at' in value;

/** A row of one field in its states. */
export interface Compared {
  /** Path without the state: what is described, and the field. */
  of: readonly string[];
  was?: Recorded;
  planned?: Recorded;
  now?: Recorded;
}

/** Fields that a block `was`, `planned` or `now` holds, side by side; the others as they are. */
export function sideBySide(record: readonly Recorded[]): { compared: Compared[]; single: Recorded[] } {
  const rows = new Map<string, Compared>();
  const single: Recorded[] = [];
  for (const one of record) {
    const at = one.path.findIndex((key) => key in states);
    if (at < 0) {
      single.push(one);
      continue;
    }
    const of = one.path.filter((_, i) => i !== at);
    const row = rows.get(of.join('.')) ?? { of };
    rows.set(of.join('.'), { ...row, [one.path[at] as State]: one });
  }
  return { compared: [...rows.values()], single };
}

/** A field of like items, with what stands in it for each. */
interface Alike {
  field: string;
  meta: Partial<FieldMeta>;
  of: ReadonlyMap<string, Recorded>;
}

/** Items of one list beside each other. */
export interface ItemsAlike {
  list: string;
  ids: readonly string[];
  fields: readonly Alike[];
}

/** Lists of two items or more, to be told beside each other, the outermost of each value; and the rest. */
export function itemsAlike(single: readonly Recorded[]): { lists: ItemsAlike[]; rest: Recorded[] } {
  const idsOf = new Map<string, Set<string>>();
  for (const { list, id } of single.flatMap((one) => one.items))
    idsOf.set(list, (idsOf.get(list) ?? new Set()).add(id));
  const placed = single.map((one) => ({ one, in: one.items.find(({ list }) => idsOf.get(list)!.size > 1) }));
  const told = placed.flatMap((p) => (p.in ? [{ one: p.one, ...p.in }] : []));
  const lists = grouped(told, ({ list }) => list).map(
    (records): ItemsAlike => ({
      list: records[0].list,
      ids: [...idsOf.get(records[0].list)!],
      fields: grouped(records, ({ field }) => field).map((own) => ({
        field: own[0].field,
        meta: own[0].one.meta,
        of: new Map(own.map(({ id, one }) => [id, one])),
      })),
    }),
  );
  return { lists, rest: placed.filter((p) => !p.in).map(({ one }) => one) };
}
