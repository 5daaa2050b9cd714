import { h, type Child } from 'hastscript';
import type { Element } from 'hast';

/** A table with its caption and header cells; a first column of names becomes row headers. */
export function table(name: string, caption: string, columns: readonly string[], rows: readonly (readonly Child[])[], options: { rowHeaders?: boolean; wide?: boolean } = {}): Element {
  const cell = (content: Child, i: number) => (i === 0 && options.rowHeaders !== false ? h('th', { scope: 'row' }, content) : h('td', content));
  return h(`table.${name}`, { className: options.wide ? [name, 'wide'] : [name] }, [
    h('caption', caption),
    h('thead', h('tr', columns.map((c) => h('th', { scope: 'col' }, c)))),
    h('tbody', rows.map((row) => h('tr', row.map(cell)))),
  ]);
}
