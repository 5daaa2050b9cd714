import type { Sheet } from '../../calc/sheet.js';
import { type Field, fieldTree, leaves } from '../../project/field-tree.js';
import type { NamedPath } from '../../project/find-field.js';
import type { Build, Note } from '../../project/model.js';
import { typicalData } from '../../project/typical.js';
import type { Kind } from '../engine/kind.js';
import { isMissing, type Missing, type Work } from '../engine/work.js';
import { type Alone, type Parse, parser, set, single, variants } from './note-variants.js';

/** What a kind does with its fields, found out by asking it: it is evaluated on notes in which nothing has been measured yet. */
export interface Serves {
  /** Items of the codes that each field serves, by its path (`stations.[].gearbox`). */
  fields: ReadonlyMap<string, ReadonlySet<string>>;
  /** Items that the evaluation itself compares or settles. */
  compared: ReadonlySet<string>;
  /** Items whose answer follows from fields. */
  answered: ReadonlySet<string>;
  /** Calculation sheets that it works through. */
  sheets: ReadonlyMap<string, Sheet>;
}

export function servesOf(kind: Kind): Serves {
  const tree = fieldTree(kind.shape);
  const found = {
    fields: new Map<string, Set<string>>(),
    compared: new Set<string>(),
    answered: new Set<string>(),
    sheets: new Map<string, Sheet>(),
  };
  const note = (path: NamedPath, item: string) => {
    const name = pattern(path, tree);
    if (name !== undefined) found.fields.set(name, (found.fields.get(name) ?? new Set()).add(item));
  };
  const parse = parser(kind);
  const alone = [...single(tree, parse)];
  for (const data of [...variants(tree, parse), ...alone.map((one) => one.data)]) {
    const tried = { data } as unknown as Note;
    kind.evaluate(tried as never, listener(tried, found, note));
    for (const item of answersIn(kind, data)) found.answered.add(item);
  }
  for (const { path, item } of answering(kind, tree, alone, parse)) note(path, item);
  return found;
}

/** Items that fields answer: each field without which the answer of a whole note is gone, or else the lists that suffice for it. */
function* answering(
  kind: Kind,
  tree: readonly Field[],
  alone: readonly Alone[],
  parse: Parse,
): Generator<{ path: NamedPath; item: string }> {
  const whole = parse(typicalData(tree));
  const all = whole ? answersIn(kind, whole) : [];
  const needing = new Set<string>();
  for (const leaf of leaves(tree).filter((l) => !l.field.required)) {
    const data = parse(set(typicalData(tree), leaf, undefined));
    const left = new Set(data ? answersIn(kind, data) : all);
    for (const item of all.filter((i) => !left.has(i))) {
      needing.add(item);
      yield { path: leaf.path, item };
    }
  }
  for (const { path, data } of alone) {
    const list = path.indexOf('[]');
    for (const item of answersIn(kind, data).filter((i) => !needing.has(i)))
      yield { path: list === -1 ? path : path.slice(0, list), item };
  }
}

function answersIn(kind: Kind, data: Note['data']): string[] {
  return Object.entries(kind.answers?.(data as never) ?? {}).flatMap(([item, answer]) => (answer ? [item] : []));
}

/** The path of a field with `[]` for the items of lists, whatever their ids. */
function pattern(path: NamedPath, tree: readonly Field[]): string | undefined {
  const names: string[] = [];
  let fields = tree;
  let field: Field | undefined;
  for (const key of path) {
    if (field?.is === 'list' && names.at(-1) !== '[]') {
      names.push('[]');
      continue;
    }
    field = fields.find((f) => f.key === key);
    if (!field) return undefined;
    names.push(key);
    fields = field.fields;
  }
  return names.join('.');
}

type Found = { compared: Set<string>; sheets: Map<string, Sheet> };

/** Answers every question with what is missing, and hears which items want it. */
function listener(tried: Note, found: Found, note: (path: NamedPath, item: string) => void): Work {
  const missing = (path: NamedPath): Missing => ({ missing: [{ says: '', where: path.join('.'), path }] });
  const joined = (value: unknown): Missing['missing'] =>
    Array.isArray(value)
      ? value.flatMap(joined)
      : typeof value !== 'object' || value === null
        ? []
        : isMissing(value as Missing)
          ? (value as Missing).missing
          : 'si' in value
            ? []
            : Object.values(value).flatMap(joined);
  const hear = (item: string, ...values: unknown[]) => {
    found.compared.add(item);
    for (const { path } of values.flatMap(joined)) if (path.length > 0) note(path, item);
  };
  return {
    build: {
      name: '',
      directory: '',
      file: '',
      data: { title: '', vehicle: { make: '', model: '', built: '2000-01' } },
      notes: [],
      queries: [],
      files: new Map(),
      limits: [],
      unread: [],
      inputs: [],
    } as unknown as Build,
    note: tried,
    take: (_, ...path) => missing(path),
    lacks: (...path) => missing(path),
    fact: () => missing([]),
    loadCase: () => undefined,
    hasNote: () => false,
    isAnswered: () => false,
    cameOut: () => undefined,
    publish: () => undefined,
    derive: (item, { from }) => hear(item, 'inBuild' in from ? undefined : missing(from)),
    agree: () => undefined,
    sheet: (sheet, _, inputs) => {
      found.sheets.set(sheet.id, sheet as unknown as Sheet);
      const lacking: Missing = { missing: [...new Map(joined(inputs).map((m) => [m.where, m])).values()] };
      return { get: () => lacking };
    },
    compare: (item, _, value) => hear(item, value),
    demandAgainst: (item, _, { demand, capacity }) => hear(item, demand, capacity),
    state: (item, _, __, ___, options) => hear(item, options?.path ? missing(options.path) : undefined),
  };
}
