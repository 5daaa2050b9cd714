import type { z } from 'zod';
import { withBodyTables } from '../project/body-table.js';
import { commonShape } from '../project/common.js';
import { readings } from '../project/fields.js';
import { metaAt, type NamedPath } from '../project/find-field.js';
import { type Frontmatter, type Plain, readFrontmatter } from '../project/frontmatter.js';
import type { KindShapes } from '../project/read.js';
import { translate } from '../project/translate.js';
import { buildSchema } from '../project/vehicle.js';
import type { ParseNote } from './values.js';
import { writtenQuantity } from './written.js';

const written: ReadonlySet<unknown> = new Set(['quantity', 'slope', 'designation']);

/**
 * Reads the measured values and designations of a note or of `build.md` as they were written, by the path of their
 * field, obsolete ones by what they are called now. The schema of the kind says which fields these are. Old commits hold notes that no schema of today fits:
 * under keys that it does not know, everything that reads as a quantity with a unit is taken.
 */
export function measuredText(kinds: KindShapes): ParseNote {
  return (text, path) => {
    const read = readFrontmatter(text, path);
    const { value: front, problems } = read.value ? withBodyTables(read.value, path) : read;
    if (!front) {
      // A list of things to do or a letter beside the notes is no note that could not be read.
      if (problems[0]?.code === 'frontmatter-missing' && !/(?:^|\/)(?:notes\/[^/]+|build)\.md$/.test(path))
        return new Map();
      throw new Error(problems.map((p) => `line ${p.line}: found ${p.found}`).join('; '));
    }
    const sort = typeof front.data['kind'] === 'string' ? 'note' : 'build';
    const { data } = translate(front, path, sort).value ?? front;
    const shape = shapeOf(data, kinds);
    return shape === undefined ? new Map() : new Map(fieldsIn(data, [], shape));
  };
}

function shapeOf(data: Frontmatter['data'], kinds: KindShapes): z.ZodRawShape | undefined {
  const { kind } = data;
  if (typeof kind === 'string') return { ...commonShape, ...kinds.get(kind) };
  return 'vehicle' in data ? buildSchema.shape : undefined;
}

function fieldsIn(value: Plain | undefined, path: NamedPath, shape: z.ZodRawShape): [string, string][] {
  if (value === undefined) return [];
  const { form } = path.length === 0 ? {} : metaAt(shape, path);
  const text = written.has(form) ? textOf(value) : form === undefined ? quantityText(value) : undefined;
  if (text !== undefined) return [[path.join('.'), text]];
  if (Array.isArray(value))
    return value.flatMap((item, i) => fieldsIn(item, [...path, idOf(item) ?? String(i + 1)], shape));
  if (typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => fieldsIn(inner, [...path, key], shape));
}

function idOf(item: Plain): string | undefined {
  const id = typeof item === 'object' && !Array.isArray(item) ? item['id'] : undefined;
  return typeof id === 'string' ? id : undefined;
}

/** The value alone, without what says how it was measured. */
function textOf(value: Plain | undefined): string | undefined {
  if (typeof value === 'string') return value.trim();
  if (Array.isArray(value)) return readings(value);
  return typeof value === 'object' ? textOf(value['value']) : undefined;
}

function quantityText(value: Plain): string | undefined {
  const text = textOf(value);
  return text !== undefined && isQuantity(text) ? text : undefined;
}

function isQuantity(text: string): boolean {
  const quantity = writtenQuantity(text);
  return quantity !== undefined && quantity.unit !== '1';
}
