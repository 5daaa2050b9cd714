import type { Element } from 'hast';
import { type Child, h } from 'hastscript';
import { anchor, capitalised, label } from './anchors.js';

/** Head of a column, with the share of the width that it gets, in per cent. */
export type Column = string | readonly [head: string, width: number];

export interface TableOptions {
  /** The first column names the row. */
  rowHeaders?: boolean;
  /** Makes it a numbered table that can be pointed at, such as `030/findings`. */
  id?: string;
  /** Stays a table on a narrow screen, where others are stacked. */
  narrow?: boolean;
}

/** A line over the rows that follow it, which says what they have in common. */
interface Group {
  group: Child;
}
export type Row = readonly Child[] | Group;

/**
 * A table with its caption and header cells. Widths are fixed where every column has one; without, the browser finds
 * them. Each cell carries the head of its column, for narrow screens, where rows are stacked.
 */
export function table(
  name: string,
  caption: string,
  columns: readonly Column[],
  rows: readonly Row[],
  options: TableOptions = {},
): Element {
  const heads = columns.map((c) => (typeof c === 'string' ? c : c[0]));
  const widths = columns.flatMap((c) => (typeof c === 'string' ? [] : [c[1]]));
  const fixed = widths.length === columns.length;
  const cell = (content: Child, i: number) =>
    i === 0 && options.rowHeaders !== false
      ? h('th', { scope: 'row' }, content)
      : h('td', heads[i] ? { dataLabel: heads[i] } : {}, content);
  const hasHead = heads.some((head) => head !== '');
  return h(
    'table',
    {
      className: [name, ...(fixed ? ['fixed'] : []), ...(options.narrow ? ['narrow'] : [])],
      ...(options.id ? { id: anchor.table(options.id) } : {}),
    },
    [
      h('caption', [...(options.id ? [h('b', `${capitalised(label.table(options.id))}. `)] : []), caption]),
      ...(fixed
        ? [
            h(
              'colgroup',
              widths.map((w) => h('col', { style: `width:${w}%` })),
            ),
          ]
        : []),
      ...(hasHead
        ? [
            h(
              'thead',
              h(
                'tr',
                heads.map((head) => h('th', { scope: 'col' }, head)),
              ),
            ),
          ]
        : []),
      ...bodies(rows).map((body) =>
        h(
          'tbody',
          body.map((row) =>
            'group' in row
              ? h('tr.group', h('th', { scope: 'rowgroup', colSpan: columns.length }, row.group))
              : h('tr', row.map(cell)),
          ),
        ),
      ),
    ],
  );
}

/** Each group begins a body of its own. */
function bodies(rows: readonly Row[]): Row[][] {
  const parts: Row[][] = [];
  for (const row of rows) {
    const last = parts.at(-1);
    if (last && !('group' in row)) last.push(row);
    else parts.push([row]);
  }
  return parts;
}

/** Small print on a line of its own within a cell. */
export const below = (...content: (Element | string)[]): Element => h('span.below', content);
