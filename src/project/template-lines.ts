import { stringify } from 'yaml';
import type { Field, Meta } from './field-tree.js';
import { exampleId } from './typical.js';

/** Lines of frontmatter to be filled in, from the schema of the fields. */

export const width = 100;

/** Items of the codes that each field serves, by its path. */
export type Served = ReadonlyMap<string, ReadonlySet<string>>;

/** As YAML wants it typed: quoted only where it must be. */
export const scalar = (text: string): string =>
  stringify(text, { lineWidth: 0, singleQuote: true, schema: 'failsafe' }).trim();

/** One field, with blocks below it; lists, and blocks that need a key but may be left out, are commented out. */
export function fieldLines(field: Field, above: readonly string[], served: Served, depth = 0): string[] {
  const path = [...above, field.key];
  const indent = '  '.repeat(depth);
  const items = field.key === 'id' ? [] : [...(served.get(path.join('.')) ?? [])];
  const comment = comments(field, items, width - 3 * depth).map((line) => `${indent}${line}`);
  if (field.is === 'value')
    return [...comment, `${indent}${field.key}:${field.key === 'id' ? ` ${field.meta.typical ?? exampleId}` : ''}`];
  const inner = (more: number, step: readonly string[]) =>
    field.fields.flatMap((f) => fieldLines(f, [...path, ...step], served, depth + more));
  if (field.is === 'list') {
    const example = inner(2, ['[]']);
    const first = example.findIndex((line) => !/^\s*#/.test(line));
    example[first] = example[first]!.replace(/^(\s*) {2}/, '$1- ');
    return [...comment, `${indent}${field.key}:`, ...example.map((line) => disabled(line, indent))];
  }
  const block = [`${indent}${field.key}:`, ...inner(1, [])];
  return [
    ...comment,
    ...(!field.required && field.fields.some((f) => f.required) ? block.map((line) => disabled(line, indent)) : block),
  ];
}

/** `    role:` becomes `#    role:`; the # stands at the indent of the key that the line belongs to. */
const disabled = (line: string, indent: string): string =>
  line === '' ? '' : `${indent}#${line.slice(indent.length)}`;

function comments(
  { key, meta, is }: Pick<Field, 'key' | 'meta' | 'is'>,
  items: readonly string[],
  room: number,
): string[] {
  const say = (text: string) => prose(text, room);
  if (key === 'id')
    return say(
      meta.form === 'name' || !meta.says ? 'name of the item within this note, lower case with hyphens' : meta.says,
    );
  const unit = meta.unit && meta.unit !== '1' ? `, in a unit such as ${meta.unit}` : '';
  return [
    ...say(`${meta.says ?? key}${unit}`),
    ...(meta.choices
      ? say(
          `One of: ${Object.entries(meta.choices)
            .map(([word, says]) => `${word} (${says})`)
            .join('; ')}`,
        )
      : []),
    ...(meta.form === 'yes-no' ? say('One of: yes; no') : []),
    ...(meta.how ? say(`How: ${meta.how}`) : []),
    ...(is === 'value' && exampleOf(meta) ? say(`For example: ${scalar(exampleOf(meta)!)}`) : []),
    ...(items.length > 0 ? say(`Serves: ${items.join(', ')}`) : []),
  ];
}

const exampleOf = (meta: Meta): string | undefined =>
  meta.typical ?? (meta.form === 'quantity' && meta.unit ? `10${meta.unit === '1' ? '' : ` ${meta.unit}`}` : undefined);

/** A text as comment lines of at most the width. */
export function prose(text: string, room = width): string[] {
  const lines: string[] = [];
  for (const word of text.replace(/\s+/g, ' ').trim().split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= room) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(`# ${word}`);
  }
  return lines;
}
