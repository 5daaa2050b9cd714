import { h } from 'hastscript';
import type { Element } from 'hast';

/** Ids of what can be pointed at, and the pointers to them. Ids come from names, so they stay when something is added. */

const slug = (text: string) =>
  text
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase();

export const anchor = {
  section: (name: string) => `section-${slug(name)}`,
  note: (name: string) => `note-${slug(name)}`,
  sheet: (run: string) => `sheet-${slug(run)}`,
  finding: (id: string) => `finding-${slug(id)}`,
  photo: (path: string) => `photo-${slug(path)}`,
  paper: (path: string) => `paper-${slug(path)}`,
  item: (id: string) => `item-${slug(id)}`,
  figure: (name: string) => `figure-${slug(name)}`,
  query: (name: string) => `query-${slug(name)}`,
};

/** `030` of `030-driveline`; the whole name where it has no number. */
export const noteNumber = (name: string): string => /^\d+/.exec(name)?.[0] ?? name;

/** A pointer that carries the page of its target in print. */
export function pointer(id: string, label: string, withPage = true): Element {
  const page = withPage ? [h('span.ref-page', [', p. ', h('span.page-of', { dataTarget: id })])] : [];
  return h('a.ref', { href: `#${id}` }, [label, ...page]);
}

/** Only the page, for tables of contents. */
export function pageOnly(id: string): Element {
  return h('a.ref-number', { href: `#${id}` }, [h('span.page-of', { dataTarget: id })]);
}
