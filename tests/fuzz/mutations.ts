import type { z } from 'zod';
import type { Codes } from '../../src/checks/codes/codes.js';
import { kinds } from '../../src/checks/kinds/index.js';
import { type Field, fieldTree, type Meta } from '../../src/project/field-tree.js';
import { metaAt } from '../../src/project/find-field.js';
import { type Block, closed, type Files, isBlock, opened, papers, photos, shapeOf, type Tree } from './bases.js';
import type { Random } from './random.js';
import { aNote, anyFile, bytes, lines, noteNames, query, rename, words } from './text-mutations.js';
import { type Around, entry, instead, said } from './values.js';

/** One change of a build, as a person, an editor or a damaged disk could make it. */
export type Mutation = (r: Random, files: Files, known: Known) => void;

export interface Known {
  codes: Codes;
  /** Findings of the build before it was changed, to be judged or conceded. */
  findings: readonly { item: string; subject: string; note: string; id: string }[];
}

interface Spot {
  holder: Tree[] | Block;
  key: string | number;
  path: string[];
}

/** Every place of a tree, leaves and blocks. */
function spots(tree: Tree, path: string[] = []): Spot[] {
  if (typeof tree === 'string') return [];
  const entries: [string | number, Tree][] = Array.isArray(tree) ? [...tree.entries()] : Object.entries(tree);
  return entries.flatMap(([key, value]) => [
    { holder: tree, key, path: [...path, String(key)] },
    ...spots(value, [...path, String(key)]),
  ]);
}

const at = ({ holder, key }: Spot): Tree => (holder as Record<string | number, Tree>)[key]!;
const setAt = ({ holder, key }: Spot, value: Tree) => {
  (holder as Record<string | number, Tree>)[key] = value;
};

/** Changes the data of one file in place. */
const inFile =
  (
    pick: (r: Random, files: Files) => string | undefined,
    change: (r: Random, data: Block, path: string, files: Files, known: Known) => void,
  ): Mutation =>
  (r, files, known) => {
    const path = pick(r, files);
    const file = path === undefined ? undefined : opened(files.get(path) ?? '', path);
    if (path === undefined || !file) return;
    change(r, file.data, path, files, known);
    files.set(path, closed(file, path));
  };

function metaOf(path: string, data: Block, spot: Spot): Meta {
  return metaAt(shapeOf(path, data), spot.path) as Meta;
}

const pool = new Map<string, string[]>();

/** What a file names that others may name. */
function aroundOf(files: Files): Around {
  const build = opened(files.get('build.md') ?? '', 'build.md')?.data ?? {};
  const ids = (key: string) =>
    (Array.isArray(build[key]) ? build[key] : []).flatMap((one) => (isBlock(one) ? [String(one['id'])] : []));
  return { instruments: ids('instruments'), people: ids('people'), pool };
}

/** Remembers what stands in each field of a build, so that it can stand elsewhere. */
export function learn(files: Files): void {
  for (const [path, text] of files) {
    const data = opened(text, path)?.data;
    if (!data) continue;
    for (const spot of spots(data)) {
      const value = at(spot);
      if (typeof value !== 'string') continue;
      const name = metaOf(path, data, spot).says ?? String(spot.key);
      const list = pool.get(name) ?? [];
      if (list.length < 20 && !list.includes(value)) pool.set(name, [...list, value]);
    }
  }
}

const leaf = inFile(anyFile, (r, data, path, files) => {
  const found = spots(data).filter((s) => typeof at(s) === 'string' && !['kind', 'format'].includes(s.path.join('.')));
  if (found.length === 0) return;
  const spot = r.one(found);
  const inValue = spot.key === 'value' || typeof spot.key === 'number';
  const meta = metaOf(path, data, inValue ? { ...spot, path: spot.path.slice(0, -1) } : spot);
  const next = instead(r, at(spot), String(spot.key), meta, aroundOf(files));
  setAt(spot, inValue && isBlock(next) ? next['value']! : next);
});

const remove = inFile(anyFile, (r, data) => {
  const found = spots(data).filter((s) => !['kind', 'title', 'id'].includes(String(s.key)));
  if (found.length === 0) return;
  const { holder, key } = r.one(found);
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
});

const listItem = inFile(anyFile, (r, data) => {
  const found = spots(data).filter((s) => Array.isArray(s.holder));
  if (found.length === 0) return;
  const spot = r.one(found);
  const list = spot.holder as Tree[];
  const copy = structuredClone(at(spot));
  if (isBlock(copy) && typeof copy['id'] === 'string' && !r.chance(0.1)) copy['id'] += `-${r.one(['b', 'c', '2'])}`;
  if (r.chance(0.7)) list.splice(r.below(list.length + 1), 0, copy);
  else list.push(...list.splice(Number(spot.key), 1));
});

const swapLeaves = inFile(aNote, (r, data, path) => {
  const found = spots(data).filter((s) => typeof at(s) === 'string' && s.key !== 'kind');
  const one = r.one(found);
  const form = metaOf(path, data, one).form;
  const like = found.filter((s) => s.key === one.key || (form !== undefined && metaOf(path, data, s).form === form));
  const other = r.one(like);
  const kept = at(one);
  setAt(one, at(other));
  setAt(other, kept);
});

const addField = inFile(aNote, (r, data, path, files) => {
  const shape = shapeOf(path, data) as z.ZodRawShape;
  const blocks: { block: Block; fields: readonly Field[] }[] = [];
  const walk = (block: Block, fields: readonly Field[]) => {
    blocks.push({ block, fields });
    for (const field of fields) {
      const inner = block[field.key];
      if (field.is === 'block' && isBlock(inner)) walk(inner, field.fields);
      if (field.is === 'list' && Array.isArray(inner))
        for (const one of inner) if (isBlock(one)) walk(one, field.fields);
    }
  };
  walk(data, fieldTree(shape));
  const { block, fields } = r.one(blocks);
  const missing = fields.filter(
    (f) => f.is === 'value' && !(f.key in block) && f.meta.form !== undefined && f.meta.form !== 'list',
  );
  if (missing.length === 0) return;
  const field = r.one(missing);
  if (field.key === 'stages') return;
  block[field.key] = entry(r, field.key, field.meta, aroundOf(files));
});

const listIn = (data: Block, key: string): Tree[] => {
  if (!Array.isArray(data[key])) data[key] = [];
  return data[key] as Tree[];
};
const blockIn = (data: Block, key: string): Block => {
  if (!isBlock(data[key])) data[key] = {};
  return data[key] as Block;
};

const raisedItems = (data: Block, known: Known, kind: string) =>
  [...known.codes.items.values()].filter(
    (i) => i.kind === kind && (i['raised-by'] as readonly string[]).includes(String(data['kind'])),
  );

const answer = inFile(aNote, (r, data, _, __, known) => {
  const items = raisedItems(data, known, 'answer');
  if (items.length === 0) return;
  const shown = r.one(['note 050', 'photo tacked', 'paper weld-procedure', 'sheet x', '']);
  const says = r.one(said);
  blockIn(data, 'answers')[r.one(items).id] = r.chance(0.6)
    ? says
    : { answer: says, ...(shown === '' ? { because: 'it was so' } : { shown }) };
});

const proof = inFile(aNote, (r, data, _, __, known) => {
  const kind = kinds.get(String(data['kind']));
  const points = [
    ...(kind?.holdPoints.map((p) => p.id) ?? []),
    ...raisedItems(data, known, 'evidence').map((i) => i.id),
  ];
  const [key, file] = r.chance(0.6) ? (['photos', r.one(photos)] as const) : (['papers', r.one(papers)] as const);
  const list = listIn(data, key);
  const item = r.chance(0.5) && list.length > 0 ? r.one(list) : { file, shows: 'what it shows' };
  if (!isBlock(item)) return;
  if (points.length > 0) {
    const part = r.one(['', '', '', ' all', ' left', ' droop bump']);
    const proves = listIn(item, 'proves');
    proves.push(`${r.one(points)}${part}`);
  }
  if (!list.includes(item)) list.push(item);
});

const concession = inFile(aNote, (r, data, path, _, known) => {
  const own = known.findings.filter((f) => path === `notes/${f.note}.md`);
  if (own.length === 0) return;
  const { item, subject } = r.one(own);
  listIn(data, 'concessions').push({
    item,
    ...(subject !== '' && r.chance(0.8) ? { subject } : {}),
    because: 'it was agreed in a letter',
    word: r.one(['accepted', 'refused', 'on-condition', 'asked']),
    ...(r.chance(0.5) ? { condition: 'as long as it stays so' } : {}),
    ...(r.chance(0.8) ? { by: r.one(['R. Ansell', 'JO', 'somebody']) } : {}),
    ...(r.chance(0.8) ? { on: r.one(['2025-03-13', '2020-01-01', '2099-01-01']) } : {}),
  });
});

const judgement = inFile(aNote, (r, data, path, _, known) => {
  const own = known.findings.filter((f) => path === `notes/${f.note}.md`);
  if (own.length === 0) return;
  listIn(data, 'judgements').push({
    id: `j-${r.below(1000)}`,
    about: r.one(own).id,
    of: r.one(['2.48 mm', 'yes', 'as described']),
    words: 'good enough for this load',
    basis: r.one(['seen', 'calculated', 'document']),
    by: r.one(['R. Ansell', 'JO', 'MB']),
    on: r.one(['2025-03-13', '2025-06-01']),
  });
});

const limitsFile = (_: Random, files: Files) => {
  if (!files.has('limits.yaml')) files.set('limits.yaml', 'figures: []\n');
  return 'limits.yaml';
};
const copy = { document: 'own copy', edition: 'third', clause: '2.1', 'read-by': 'JO', on: '2025-02-07' };

const figure = inFile(limitsFile, (r, data, _, __, known) => {
  const items = [...known.codes.items.values()].filter((i) => i.kind === 'limit');
  const item = r.one(items);
  const figures = listIn(data, 'figures');
  const unit = 'unit' in item ? item.unit : '1';
  const size = r.one(['0', '1', '2.5', '10', '100', '1000']);
  const value = r.chance(0.1)
    ? r.one(['10 kg', '3', 'original_mass', '3/4 in'])
    : unit === '1'
      ? size
      : `${size} ${unit}`;
  const bound = r.one(['min', 'max', 'above', 'below']);
  const before = figures.find((f) => isBlock(f) && f['item'] === item.id);
  if (before && isBlock(before) && !r.chance(0.1)) before[bound] = value;
  else figures.push({ item: item.id, [bound]: value, ...copy });
});

const ownItem = inFile(limitsFile, (r, data, _, files) => {
  const path = r.one(noteNames(files));
  const kind = String(opened(files.get(path)!, path)?.data['kind'] ?? 'general');
  const common = {
    id: `own.item-${r.below(50)}`,
    title: 'An item of our own',
    asks: 'what our own copy asks for',
    section: 'LX',
    rests: {
      document: 'own copy',
      edition: 'third',
      clause: '1',
      basis: 'own-copy',
      'read-by': 'JO',
      on: '2025-02-07',
    },
    'raised-by': [kind],
  };
  const one: Block = r.chance(0.6)
    ? {
        ...common,
        kind: 'limit',
        unit: r.one(['mm', 'kg', '1', '%', 'furlong', 'N·m', '']),
        ...(r.chance(0.5) ? { measured: r.one(['original_mass', 'length', '2 * mass', 'a +', '1 mm']) } : {}),
        cases: [{ [r.one(['min', 'max', 'above', 'below'])]: r.one(['1 mm', '10', '2 kg', '5 %', 'original_mass']) }],
      }
    : {
        ...common,
        kind: r.one(['answer', 'evidence']),
        ...(r.chance(0.7) ? { wants: r.one(['yes', 'no', 'stated']) } : {}),
      };
  listIn(data, 'items').push(one);
});

const measured = inFile(aNote, (r, data, _, __, known) => {
  const items = raisedItems(data, known, 'limit');
  if (items.length === 0) return;
  const item = r.one(items);
  const unit = 'unit' in item ? item.unit : '1';
  blockIn(data, 'measured')[item.id] = unit === '1' ? '3' : `${r.one(['1', '10', '250'])} ${unit}`;
});

const loadCase = inFile(
  () => 'build.md',
  (r, data) =>
    void listIn(data, 'load-cases').push({
      id: r.one(['extra', 'link-pull', 'drop']),
      says: 'a load',
      [r.one(['force', 'moment'])]: r.one(['1.4 kN', '250 N·m', '0 N', '10 N']),
      factor: r.one(['1', '3', '0']),
      ...(r.chance(0.5) ? { 'agreed-with': 'R. Ansell', 'agreed-on': '2025-02-12' } : {}),
    }),
);

/** Each with how often it is taken. */
export const mutations: readonly (readonly [name: string, mutation: Mutation, weight: number])[] = [
  ['leaf', leaf, 30],
  ['remove', remove, 10],
  ['list item', listItem, 8],
  ['swap leaves', swapLeaves, 3],
  ['add field', addField, 10],
  ['answer', answer, 6],
  ['proof', proof, 5],
  ['concession', concession, 4],
  ['judgement', judgement, 2],
  ['figure', figure, 4],
  ['own item', ownItem, 3],
  ['measured', measured, 3],
  ['load case', loadCase, 2],
  ['rename', rename, 3],
  ['query', query, 3],
  ['words', words, 4],
  ['bytes', bytes, 4],
  ['lines', lines, 3],
];

const weighted = mutations.flatMap(([name, mutation, weight]) =>
  Array.from({ length: weight }, () => ({ name, mutation })),
);
export const anyMutation = (r: Random) => r.one(weighted);
