import { z } from 'zod';
import type { Place } from '../calc/value.js';
import type { FieldMeta } from './fields.js';
import type { Note } from './model.js';
import { placeIn } from './model.js';

/** Paths here name list items by their ids: `['pieces', 'crossmember', 'now', 'wall']`. */
export type NamedPath = readonly string[];

/** What the schema says of the field at a path. */
export function metaAt(shape: z.ZodRawShape, path: NamedPath): Partial<FieldMeta> {
  const [first, ...rest] = path;
  let here: unknown = first === undefined ? undefined : shape[first];
  for (const key of rest) {
    here = bare(here);
    if (here instanceof z.ZodArray) here = here.element;
    else if (here instanceof z.ZodObject) here = (here.shape as Record<string, unknown>)[key];
    else if (here instanceof z.ZodRecord) here = here.valueType;
    else return {};
  }
  return here instanceof z.ZodType ? ((here.meta() ?? {}) as Partial<FieldMeta>) : {};
}

function bare(schema: unknown): unknown {
  return schema instanceof z.ZodOptional ? bare(schema.unwrap()) : schema;
}

/** The place of the field or, where it was left out, of the nearest key above it. */
export function placeOfField(note: Pick<Note, 'front' | 'file'>, path: NamedPath): Place {
  let here: unknown = note.front.data;
  const indexed = path.map((key) => {
    if (Array.isArray(here)) {
      const list = here;
      const named = list.findIndex((item) => typeof item === 'object' && !Array.isArray(item) && item['id'] === key);
      const i = named === -1 && /^\d+$/.test(key) ? Number(key) : named;
      here = here[i];
      return Math.max(i, 0);
    }
    here = typeof here === 'object' && here !== null ? (here as Record<string, unknown>)[key] : undefined;
    return key;
  });
  return { ...placeIn(note, indexed), path: path.join('.') };
}
