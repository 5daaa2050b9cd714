import type { Plain } from '../../project/frontmatter.js';
import type { Note } from '../../project/model.js';

/** Keys under which a note does not say what was fitted. */
const beside = new Set(['photos', 'papers', 'answers', 'concessions', 'judgements', 'stages']);

/**
 * Why a document that names sizes, designations or part numbers is not of this: none of them stands in the note, or in the
 * item of its lists that has the part's id. Undefined where one does, or where the document names none.
 */
export function ofAnother(of: readonly string[] | undefined, note: Note, part = ''): string | undefined {
  if (!of || of.length === 0) return undefined;
  const whole = Object.fromEntries(Object.entries(note.front.data).filter(([key]) => !beside.has(key)));
  const item = part === '' ? undefined : itemOf(whole, part);
  const written = textsIn(item ?? whole);
  if (of.some((one) => written.some((text) => isIn(plain(one), plain(text))))) return undefined;
  const alike = [...new Set(written.filter((text) => of.some((one) => isAlike(plain(one), plain(text)))))];
  const has = alike.length > 0 ? `has ${alike.slice(0, 3).join(', ')}` : 'does not';
  return `names ${of.join(', ')}; ${item ? `\`${part}\`` : 'the note'} ${has}`;
}

function textsIn(value: Plain | undefined): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' ? Object.values(value).flatMap(textsIn) : [];
}

/** The item with this id in any list of the note. */
function itemOf(value: Plain | undefined, id: string): Plain | undefined {
  if (typeof value !== 'object') return undefined;
  if (!Array.isArray(value) && value['id'] === id) return value;
  for (const inner of Object.values(value)) {
    const found = itemOf(inner, id);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Spaces, capitals, the sign of multiplication and zeros at the end of a decimal make no other size. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\s*[x×]\s*(?=\d)/gu, 'x')
    .replace(/(\.\d*?)0+(?!\d)/gu, '$1')
    .replace(/\.(?!\d)/gu, '')
    .replace(/\s+/gu, ' ')
    .trim();

/** As a word of its own: `RHS 50x30x2` is not in `RHS 50x30x2.5`. */
function isIn(one: string, text: string): boolean {
  for (let at = text.indexOf(one); at !== -1; at = text.indexOf(one, at + 1)) {
    const before = text.slice(0, at);
    const behind = text.slice(at + one.length);
    if (!/[\p{L}\p{N}]\.?$/u.test(before) && !/^\.?[\p{L}\p{N}]/u.test(behind)) return true;
  }
  return false;
}

/** Of one form: the same letters and signs, with other numbers. */
function isAlike(one: string, text: string): boolean {
  const form = (of: string) => of.replace(/\d+(?:\.\d+)?/gu, '#');
  return form(one).includes('#') && form(text).startsWith(form(one));
}
