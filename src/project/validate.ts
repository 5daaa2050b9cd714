import { z } from 'zod';
import type { Place } from '../calc/value.js';
import { didYouMean, near } from '../platform/near.js';
import type { QuantityProblem } from '../units/quantity.js';
import type { Measured } from './fields.js';
import type { Frontmatter, Path } from './frontmatter.js';
import type { Problem } from './problem.js';

/** Checks frontmatter against a schema, turns each issue into a problem with its place, and tells values where they stand. */
export function validate<S extends z.ZodType>(
  schema: S,
  front: Frontmatter,
  file: string,
): { value?: z.output<S>; problems: Problem[] } {
  const result = schema.safeParse(front.data);
  if (!result.success) {
    return { problems: result.error.issues.flatMap((issue) => problemsOf(issue, schema, front, file)) };
  }
  const problems = stamp(result.data, [], [], front, file, undefined);
  return problems.length > 0 ? { problems } : { value: result.data, problems };
}

/** The place of a value, with list items under their ids. */
export function placeOf(
  front: Frontmatter,
  file: string,
  path: Path,
  named: readonly string[] = path.map(String),
): Place {
  const { line, column, endColumn } = front.locate(path);
  return { file, line, column, endColumn, path: named.join('.') };
}

function problemsOf(issue: z.core.$ZodIssue, schema: z.ZodType, front: Frontmatter, file: string): Problem[] {
  const path = issue.path as Path;
  const at = (p: Path, part: 'key' | 'value' = 'value') => {
    const range = front.locate(p, part);
    return { file, ...range, source: front.sourceLine(range.line) };
  };
  const quantity = (issue as { params?: { problem?: QuantityProblem } }).params?.problem;
  if (quantity) {
    const place = at(path);
    const [start, end] = quantity.at;
    const raw = place.source.slice(place.column - 1, place.endColumn - 1);
    const shift = /^['"]/.test(raw) ? 1 : 0;
    const inside = end > start && place.column + shift + end <= place.endColumn;
    const exact = inside ? { column: place.column + shift + start, endColumn: place.column + shift + end } : {};
    return [
      { code: 'quantity', ...place, ...exact, found: quantity.found, expected: quantity.expected, hint: quantity.hint },
    ];
  }
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => {
        const known = keysAt(schema, path);
        const spelled = key.toLowerCase().replace(/[_\s]+/g, '-');
        const respelled = known.includes(spelled) && spelled !== key;
        return {
          code: respelled ? ('key-spelling' as const) : ('key-unknown' as const),
          ...at([...path, key], 'key'),
          found: `the key \`${key}\``,
          expected: respelled ? `\`${spelled}\`: keys are lower case with hyphens` : `one of the keys known here`,
          hint: /^\d/.test(key)
            ? 'a decimal comma splits a value in two: write 2.5 and not 2,5'
            : didYouMean(key, known),
        };
      });
    case 'invalid_value':
      return [
        {
          code: path.at(-1) === 'kind' ? 'kind-unknown' : 'value',
          ...at(path),
          found: found(front, path),
          expected: `one of ${issue.values.map((v) => `\`${String(v)}\``).join(', ')}`,
          hint: nearHint(front, path, issue.values.map(String)),
        },
      ];
    case 'invalid_type':
      if (valueAt(front.data, path) === undefined) return [missing(path, at(path, 'key'))];
      return [{ code: 'value', ...at(path), found: found(front, path), expected: typeName(issue.expected) }];
    case 'invalid_key':
      return [
        {
          code: 'key-unknown',
          ...at(path, 'key'),
          found: `the key \`${String(path.at(-1))}\``,
          expected: 'one of the keys known here',
          hint: didYouMean(String(path.at(-1)), keysAt(schema, path.slice(0, -1))),
        },
      ];
    case 'invalid_format':
      return [{ code: 'value', ...at(path), found: found(front, path), expected: formatName(issue) }];
    case 'invalid_union':
      if (valueAt(front.data, path) === undefined) return [missing(path, at(path, 'key'))];
      return [
        {
          code: 'value',
          ...at(path),
          found: found(front, path),
          expected: 'a value of one of the forms that the reference page lists',
        },
      ];
    case 'too_small':
      return [
        {
          code: 'value',
          ...at(path),
          found: found(front, path),
          expected: `at least ${String(issue.minimum)} characters`,
        },
      ];
    default:
      return [{ code: 'value', ...at(path), found: found(front, path), expected: issue.message }];
  }
}

function missing(path: Path, at: Pick<Problem, 'file' | 'line' | 'column' | 'source'>): Problem {
  const name = String(path.at(-1));
  return {
    code: 'value',
    ...at,
    found: `no \`${name}\``,
    expected: `\`${name}:\` with a value`,
    hint: `add \`${name}:\``,
  };
}

function formatName(issue: z.core.$ZodIssueInvalidStringFormat): string {
  const pattern = (issue as { pattern?: string }).pattern ?? '';
  if (pattern.includes('\\d{4}-\\d{2}')) return 'a date such as 2026-03-14';
  if (pattern.includes('[a-z0-9]+')) return 'a name in lower case with hyphens, such as rail-left';
  return 'a value of the form that the reference page shows';
}

function typeName(expected: string): string {
  return (
    {
      string: 'a text',
      array: 'a list (`- …` lines)',
      object: 'a block of keys',
      record: 'a block of keys',
      tuple: 'a pair such as [0.4, 0.3]',
    }[expected] ?? expected
  );
}

function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === 'object' ? (value as Record<string | number, unknown>)[key] : undefined,
    data,
  );
}

function found(front: Frontmatter, path: Path): string {
  const value = valueAt(front.data, path);
  if (value === undefined) return 'nothing';
  return typeof value === 'string' ? `\`${value.slice(0, 80)}\`` : Array.isArray(value) ? 'a list' : 'a block of keys';
}

function nearHint(front: Frontmatter, path: Path, known: readonly string[]): string | undefined {
  const value = valueAt(front.data, path);
  const [best] = typeof value === 'string' ? near(value, known) : [];
  return best ? `did you mean \`${best}\`?` : undefined;
}

/** The keys that a schema knows at a path. */
function keysAt(schema: z.ZodType, path: Path): string[] {
  let here: unknown = schema;
  for (const key of path) here = step(unwrap(here), key);
  const inner = unwrap(here);
  if (inner instanceof z.ZodObject) return Object.keys(inner.shape);
  if (inner instanceof z.ZodRecord) return inner.keyType instanceof z.ZodEnum ? inner.keyType.options.map(String) : [];
  return ['value', 'on', 'by', 'with', 'photo'];
}

function step(schema: unknown, key: string | number): unknown {
  if (schema instanceof z.ZodObject) return (schema.shape as Record<string, unknown>)[key];
  if (schema instanceof z.ZodArray) return schema.element;
  if (schema instanceof z.ZodRecord) return schema.valueType;
  return undefined;
}

function unwrap(schema: unknown): unknown {
  if (schema instanceof z.ZodOptional) return unwrap(schema.unwrap());
  if (schema instanceof z.ZodPipe) return unwrap(schema.in);
  if (schema instanceof z.ZodUnion) return unwrap(schema.options.map(unwrap).find((o) => o instanceof z.ZodObject));
  return schema;
}

/**
 * Writes its place into every value that carries one, and the day of the block around it where it has none of its own; finds
 * ids used twice in a list.
 */
function stamp(
  value: unknown,
  path: Path,
  named: readonly string[],
  front: Frontmatter,
  file: string,
  on: string | undefined,
): Problem[] {
  if (Array.isArray(value)) {
    const seen = new Set<string>();
    return value.flatMap((item, i) => {
      const id = typeof item === 'object' && item !== null && typeof item.id === 'string' ? item.id : undefined;
      const twice: Problem[] = [];
      if (id !== undefined && seen.has(id)) {
        const range = front.locate([...path, i, 'id']);
        twice.push({
          code: 'id-duplicate',
          file,
          ...range,
          source: front.sourceLine(range.line),
          found: `a second \`${id}\` in one list`,
          expected: 'an id of its own for each item',
          hint: `rename it, for instance \`${id}-2\``,
        });
      }
      if (id !== undefined) seen.add(id);
      return [...twice, ...stamp(item, [...path, i], [...named, id ?? String(i + 1)], front, file, on)];
    });
  }
  if (typeof value !== 'object' || value === null || value instanceof Map) return [];
  if ('at' in value && ('quantity' in value || 'written' in value)) {
    const stamped = value as { at: Place } & Partial<Measured>;
    stamped.at = placeOf(front, file, path, named);
    if (stamped.with !== undefined) stamped.withAt = placeOf(front, file, [...path, 'with'], [...named, 'with']);
    if (stamped.by !== undefined) stamped.byAt = placeOf(front, file, [...path, 'by'], [...named, 'by']);
    if (stamped.quantity && on !== undefined) stamped.on ??= on;
    return [];
  }
  const own = (value as { on?: unknown }).on;
  const day = typeof own === 'string' ? own : on;
  return Object.entries(value).flatMap(([key, inner]) =>
    stamp(inner, [...path, key], [...named, key], front, file, day),
  );
}
