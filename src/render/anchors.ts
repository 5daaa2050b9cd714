import { posix } from 'node:path';
import type { Element } from 'hast';
import { h } from 'hastscript';

/**
 * Ids of what can be pointed at, their labels, and the pointers to them. Both come from the names of notes, fields and
 * files, never from their order, so they stay when something is added.
 */

/** No two names give the same id: whatever is not plain is written as its code. */
const plain = (name: string): string =>
  encodeURIComponent(name).replaceAll('~', '%7E').replaceAll('%2F', '/').replaceAll('%', '~');

export const anchor = {
  section: (name: string) => `section-${plain(name)}`,
  note: (name: string) => `note-${plain(name)}`,
  sheet: (run: string) => `sheet-${plain(run)}`,
  sheets: (note: string) => `sheets-${plain(note)}`,
  finding: (id: string) => `finding-${plain(id)}`,
  photo: (path: string) => `photo-${plain(path)}`,
  paper: (path: string) => `paper-${plain(path)}`,
  firstPage: (paper: string) => `first-page-${plain(paper)}`,
  item: (id: string) => `item-${plain(id)}`,
  figure: (name: string) => `figure-${plain(name)}`,
  table: (name: string) => `table-${plain(name)}`,
  /** A measured value, by the note and the path of its field. */
  value: (note: string, path: string) => `value-${plain(`${note}/${path}`)}`,
  instrument: (id: string) => `instrument-${plain(id)}`,
  query: (name: string) => `query-${plain(name)}`,
  /** What begins every id within the words of a file. */
  words: (path: string) => `words-${plain(path)}/`,
};

/** `030` of `030-driveline`; the whole name where it has no number. */
export const noteNumber = (name: string): string => /^\d+/.exec(name)?.[0] ?? name;

/** What begins with the name of a note, with its number instead: `020/crossmember/was/section-top-hat`. */
const numbered = (name: string): string => name.replace(/^[^/]*/, noteNumber);

/** How each thing is called wherever the document speaks of it. */
export const label = {
  note: (name: string) => `note ${noteNumber(name)}`,
  sheet: (run: string) => `sheet ${numbered(run)}`,
  photo: (note: string, path: string) => `photo ${noteNumber(note)} ${posix.basename(path).replace(/\.[^.]*$/, '')}`,
  paper: (path: string) => `paper ${posix.basename(path).replace(/\.[^.]*$/, '')}`,
  table: (name: string) => `table ${numbered(name)}`,
  figure: (name: string) => `figure ${numbered(name)}`,
};

export const capitalised = (text: string): string => text.replace(/^\p{Ll}/u, (c) => c.toUpperCase());

/** A pointer that carries the page of its target in print. */
export function pointer(id: string, text: string, withPage = true): Element {
  const page = withPage ? [h('span.ref-page', [', p.\u00a0', h('span.page-of', { dataTarget: id })])] : [];
  return h('a.ref', { href: `#${id}` }, [text, ...page]);
}

/** With something between each two. */
export const joined = (of: readonly (Element | string)[], between: Element | string = ', '): (Element | string)[] =>
  of.flatMap((one, i) => (i === 0 ? [one] : [between, one]));
