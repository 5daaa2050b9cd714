import { z } from 'zod';
import type { FieldMeta } from './fields.js';

/** The fields of a schema as data, for whatever is made from them: templates, plans, typical notes. */

export type Meta = Partial<FieldMeta> & { choices?: Readonly<Record<string, string>> };

export interface Field {
  key: string;
  meta: Meta;
  /** A note that has the block must have this key too. */
  required: boolean;
  is: 'value' | 'block' | 'list';
  /** Of a block, or of each item of a list. */
  fields: readonly Field[];
}

export function fieldTree(shape: z.ZodRawShape): Field[] {
  return Object.entries(shape).map(([key, schema]) => {
    const bare = unwrap(schema as z.ZodType);
    const element = bare instanceof z.ZodArray ? unwrap(bare.element as z.ZodType) : undefined;
    const inner = bare instanceof z.ZodObject ? bare : element instanceof z.ZodObject ? element : undefined;
    return {
      key,
      meta: ((schema as z.ZodType).meta() ?? bare.meta() ?? {}) as Meta,
      required: !(schema as z.ZodType).safeParse(undefined).success,
      is: inner === undefined ? 'value' : bare instanceof z.ZodArray ? 'list' : 'block',
      fields: inner ? fieldTree(inner.shape) : [],
    };
  });
}

function unwrap(schema: z.ZodType): z.ZodType {
  return schema instanceof z.ZodOptional ? unwrap(schema.unwrap() as z.ZodType) : schema;
}

/** Keys down to a field; items of lists stand as `[]`. */
export interface Leaf {
  path: readonly string[];
  field: Field;
}

/** Every field that takes a value, in the order of the schema. */
export function leaves(fields: readonly Field[], above: readonly string[] = []): Leaf[] {
  return fields.flatMap((field) => {
    const path = [...above, field.key];
    if (field.is === 'value') return [{ path, field }];
    return leaves(field.fields, field.is === 'list' ? [...path, '[]'] : path);
  });
}
