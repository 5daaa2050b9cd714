import { z } from 'zod';
import { type Field, type Leaf, leaves } from '../../project/field-tree.js';
import type { NamedPath } from '../../project/find-field.js';
import type { Plain } from '../../project/frontmatter.js';
import type { Note } from '../../project/model.js';
import { typicalData, typicalEntry } from '../../project/typical.js';
import type { Kind } from '../engine/kind.js';

/** Notes as a kind may meet them, made from its fields, to find out what it does with each. */

/** Notes that take every way a kind may take: all filled in, each choice in turn, nothing. */
export function* variants(tree: readonly Field[], parse: Parse): Generator<Note['data']> {
  const raw = typicalData(tree);
  const words = ({ meta }: Field) => (meta.form === 'yes-no' ? ['yes', 'no'] : Object.keys(meta.choices ?? {}));
  const choices = leaves(tree).flatMap((leaf) =>
    words(leaf.field).map((word) => set(structuredClone(raw), leaf, word)),
  );
  for (const one of [raw, ...choices, {}]) {
    const data = parse(one);
    if (data) yield data;
  }
}

/** Each field alone, with the ids and required keys that it needs around it. */
export function* single(tree: readonly Field[], parse: Parse): Generator<Alone> {
  for (const leaf of leaves(tree)) {
    const data = parse(set({}, leaf, typicalEntry(leaf.field.key, leaf.field.meta), tree));
    if (data) yield { path: leaf.path, data };
  }
}

export interface Alone {
  path: NamedPath;
  data: Note['data'];
}
export type Parse = (raw: { [key: string]: Plain | undefined }) => Note['data'] | undefined;

export function parser(kind: Kind): Parse {
  const schema = z.object(kind.shape);
  return (raw) => {
    const result = schema.safeParse(raw);
    return result.success ? ({ kind: kind.id, title: kind.title, ...result.data } as Note['data']) : undefined;
  };
}

/** Puts a value in at a leaf; items and blocks that are not there yet are made with what they must have. */
export function set(
  raw: { [key: string]: Plain | undefined },
  { path }: Leaf,
  value: string | undefined,
  tree: readonly Field[] = [],
): { [key: string]: Plain | undefined } {
  let here = raw;
  let fields = tree;
  path.forEach((key, i) => {
    const field = fields.find((f) => f.key === key);
    if (i === path.length - 1) here[key] = value;
    else if (path[i + 1] === '[]')
      here = ((here[key] ??= [needed(field)]) as { [key: string]: Plain | undefined }[])[0]!;
    else if (key !== '[]') here = (here[key] ??= needed(field)) as { [key: string]: Plain | undefined };
    if (key !== '[]') fields = field?.fields ?? [];
  });
  return raw;
}

const needed = (field: Field | undefined): { [key: string]: Plain } =>
  Object.fromEntries(
    (field?.fields ?? []).filter((f) => f.required || f.key === 'id').map((f) => [f.key, typicalEntry(f.key, f.meta)]),
  );
