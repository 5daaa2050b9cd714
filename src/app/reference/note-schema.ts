import { z } from 'zod';
import { limitsSchema } from '../../checks/codes/own-copy.js';
import type { Kind } from '../../checks/engine/kind.js';
import { commonShape } from '../../project/common.js';
import type { FieldMeta } from '../../project/fields.js';
import { querySchema } from '../../project/queries.js';
import { buildSchema } from '../../project/vehicle.js';

/** JSON Schema (draft 7, which editors read) of the frontmatter, from the schemas that read it. */

type Json = Record<string, unknown>;

const measuredValue = (example: string | undefined, places: FieldMeta['places']): Json => ({
  anyOf: [
    { type: 'string', ...(example ? { examples: [example] } : {}) },
    {
      type: 'array',
      items: { type: 'string' },
      description: places
        ? 'places, each with its unit; the least favourable decides'
        : 'readings of one place, each with its unit',
    },
    {
      type: 'object',
      additionalProperties: false,
      required: ['value'],
      properties: {
        value: { anyOf: [{ type: 'string' }, { type: 'array', items: { type: 'string' } }] },
        on: { type: 'string', description: 'day on which it was measured', examples: ['2026-03-14'] },
        by: { type: 'string', description: 'who measured it' },
        with: { type: 'string', description: 'instrument of build.md' },
        photo: { type: 'string', description: 'photo of this note that shows it' },
      },
    },
    { type: 'null' },
  ],
});

const tableOfText: Json = {
  type: 'object',
  additionalProperties: false,
  required: ['table'],
  properties: {
    table: {
      type: 'string',
      description:
        'heading or line right above the table in the text of the note; its columns are the fields, with units in brackets',
    },
  },
};

/** Keys that are there without a value are left out, so editors must not object to them. */
function override({ zodSchema, jsonSchema }: { zodSchema: z.core.$ZodTypes; jsonSchema: Json }): void {
  const meta = (zodSchema as unknown as z.ZodType).meta?.() as Partial<FieldMeta> | undefined;
  for (const own of ['form', 'says', 'unit', 'how', 'typical', 'usual', 'measuredAs', 'range', 'choices'])
    delete jsonSchema[own];
  if (!meta?.form) return;
  const description = [meta.says, meta.unit && meta.unit !== '1' && `in a unit such as ${meta.unit}`, meta.how]
    .filter(Boolean)
    .join('; ');
  jsonSchema['description'] = description;
  if (meta.form === 'quantity' || meta.form === 'slope')
    Object.assign(jsonSchema, measuredValue(meta.typical, meta.places));
  if (meta.form === 'list' && jsonSchema['type'] === 'array') {
    const { description: says, ...rows } = { ...jsonSchema };
    for (const key of Object.keys(jsonSchema)) delete jsonSchema[key];
    Object.assign(jsonSchema, { description: says, anyOf: [rows, tableOfText] });
  }
  if (meta.form === 'designation')
    Object.assign(jsonSchema, { type: ['string', 'null'], ...(meta.typical ? { examples: [meta.typical] } : {}) });
}

function schemaOf(schema: z.ZodType, title: string): Json {
  const json = z.toJSONSchema(schema, {
    target: 'draft-7',
    io: 'input',
    unrepresentable: 'any',
    override: override as never,
  }) as Json;
  return { ...json, title };
}

export function noteSchema(kind: Kind): Json {
  const shape = { ...commonShape, ...kind.shape, kind: z.literal(kind.id) };
  return { ...schemaOf(z.strictObject(shape), `Note of kind ${kind.id}`), description: kind.covers };
}

export const buildFileSchema = (): Json => schemaOf(buildSchema, 'build.md');
export const queryFileSchema = (): Json => schemaOf(querySchema, 'Query of the certifier');
export const limitsFileSchema = (): Json => schemaOf(limitsSchema, 'limits.yaml');

/** One schema for any note, for editors that map one schema to a folder. */
export function anyNoteSchema(kinds: Iterable<Kind>): Json {
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'A note',
    type: 'object',
    required: ['kind'],
    oneOf: [...kinds].map((k) => ({ $ref: `${k.id}.json` })),
  };
}
