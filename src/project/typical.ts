import type { Field, Meta } from './field-tree.js';
import type { Plain } from './frontmatter.js';

/** Ids of the one item that stands for the items of a list. */
export const exampleId = 'example';

/** What a field may hold, as it would be typed. */
export function typicalEntry(key: string, meta: Meta): string {
  if (key === 'id') return exampleId;
  if (meta.typical !== undefined) return meta.typical;
  if (meta.choices) return Object.keys(meta.choices)[0]!;
  if (meta.form === 'yes-no') return 'yes';
  if (meta.form === 'day') return '2026-03-14';
  if (meta.form === 'slope') return '1.0 deg down to the rear';
  if (meta.form === 'quantity') return meta.unit === undefined ? '10 mm' : meta.unit === '1' ? '1' : `10 ${meta.unit}`;
  return 'as described';
}

/** A whole typical entry for some fields: blocks filled in, lists with one item. */
export function typicalData(fields: readonly Field[]): { [key: string]: Plain } {
  return Object.fromEntries(
    fields.map((field) => [
      field.key,
      field.is === 'value'
        ? typicalEntry(field.key, field.meta)
        : field.is === 'list'
          ? [typicalData(field.fields)]
          : typicalData(field.fields),
    ]),
  );
}
