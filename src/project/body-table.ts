import type { Heading, Paragraph, Table, TableCell } from 'mdast';
import { toString } from 'mdast-util-to-string';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { near } from '../platform/near.js';
import type { Frontmatter, Path, Plain, Range } from './frontmatter.js';
import type { Problem } from './problem.js';

/**
 * A list that is long may stand as a table in the text of the note: `stops: { table: Brake stops }` takes the rows of the
 * table that stands right below the heading or the line "Brake stops". A column is a field, with the unit of its bare
 * numbers in its head, such as `pedal force (N)`; a row without an `id` column is named by its number.
 */
export function withBodyTables(front: Frontmatter, file: string): { value?: Frontmatter; problems: Problem[] } {
  const problems: Problem[] = [];
  const ranges = new Map<string, { key: Range; value: Range }>();
  let tables: ReadonlyMap<string, Table> | undefined;
  const filled = (value: Plain | undefined, path: Path): Plain | undefined => {
    if (value === undefined || typeof value === 'string') return value;
    if (Array.isArray(value)) return value.map((item, i) => filled(item, [...path, i])!);
    const name = nameOf(value);
    if (name === undefined)
      return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, filled(inner, [...path, key])]));
    tables ??= tablesIn(front.body);
    const table = tables.get(plainName(name));
    if (table) return rowsOf(table, front, path, ranges);
    const range = front.locate([...path, 'table']);
    const close = near(plainName(name), [...tables.keys()], 1)[0];
    const hint =
      close === undefined
        ? 'write the name as a heading or a line right above the table'
        : `did you mean \`${close}\`?`;
    problems.push({
      code: 'reference-missing',
      file,
      ...range,
      source: front.sourceLine(range.line),
      found: `the table \`${name.slice(0, 60)}\`, which is not in the text below`,
      expected: 'the heading or the line right above a table of this file',
      hint,
    });
    return undefined;
  };
  const data = filled(front.data, []) as Frontmatter['data'];
  if (problems.length > 0) return { problems };
  if (ranges.size === 0) return { value: front, problems };
  const locate: Frontmatter['locate'] = (path, part = 'value') =>
    ranges.get(path.join('\0'))?.[part] ?? front.locate(path, part);
  return { value: { ...front, data, locate }, problems };
}

const nameOf = (value: { [key: string]: Plain | undefined }): string | undefined => {
  const { table } = value;
  return typeof table === 'string' && Object.keys(value).length === 1 ? table : undefined;
};

const plainName = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/[.:]\s*$/, '')
    .trim()
    .toLowerCase();

const parser = unified().use(remarkParse).use(remarkGfm);

function tablesIn(body: string): Map<string, Table> {
  const { children } = parser.parse(body);
  const named = children.flatMap((node, i): [string, Table][] => {
    const above = children[i - 1];
    return node.type === 'table' && isText(above) ? [[plainName(toString(above)), node]] : [];
  });
  return new Map(named.reverse());
}

const isText = (node: { type: string } | undefined): node is Heading | Paragraph =>
  node?.type === 'heading' || node?.type === 'paragraph';

/** Rows by field, with the places of their cells for what is wrong with them. */
function rowsOf(
  table: Table,
  front: Frontmatter,
  path: Path,
  ranges: Map<string, { key: Range; value: Range }>,
): Plain[] {
  const [head, ...rows] = table.children;
  const columns = head!.children.map((cell) => ({ ...columnOf(toString(cell)), key: placeOf(cell, front) }));
  return rows.map((row, i) => {
    const fields: [string, string][] = row.children.slice(0, columns.length).flatMap((cell, c) => {
      const text = toString(cell).trim();
      const { name, unit, key } = columns[c]!;
      if (text === '') return [];
      ranges.set([...path, i, name].join('\0'), { key, value: placeOf(cell, front) });
      return [[name, unit !== undefined && /^[-−+]?[\d.][\d.,\s/±eE+−-]*$/.test(text) ? `${text} ${unit}` : text]];
    });
    return { id: String(i + 1), ...Object.fromEntries(fields) };
  });
}

/** `Pedal force (N)` is the field `pedal-force` in N. */
function columnOf(text: string): { name: string; unit?: string } {
  const [, words, unit] = /^(.*?)\s*(?:\(([^()]+)\))?$/s.exec(text.trim())!;
  const name = words!.toLowerCase().replace(/\s+/g, '-');
  return unit === undefined ? { name } : { name, unit };
}

function placeOf(cell: TableCell, front: Frontmatter): Range {
  const { start, end } =
    (cell.children[0]?.position && {
      start: cell.children[0].position.start,
      end: cell.children.at(-1)!.position!.end,
    }) ||
    cell.position!;
  return { line: start.line + front.bodyLine - 1, column: start.column, endColumn: end.column };
}
