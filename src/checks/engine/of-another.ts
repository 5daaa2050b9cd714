import { readSteel } from '../../project/designations/steel.js';
import type { Plain } from '../../project/frontmatter.js';
import type { Note } from '../../project/model.js';

/** Keys under which a note does not say what was fitted. */
const beside = new Set(['photos', 'papers', 'answers', 'concessions', 'judgements', 'stages', 'original']);
const isBefore = (key: string): boolean => /^was$|^was-|-was$|^original-/.test(key);

/**
 * Why a document that names sizes, designations or part numbers is not of this: of each sort that it names, one must stand
 * in the note, or in the item of its lists that has the part's id. Undefined where nothing speaks against it.
 *
 * @param asReceived what the note says of the car as it came counts too
 */
export function ofAnother(
  of: readonly string[] | undefined,
  note: Note,
  part = '',
  asReceived = false,
): string | undefined {
  const whole = Object.fromEntries(Object.entries(note.front.data).filter(([key]) => !beside.has(key)));
  const item = part === '' ? undefined : itemOf(whole, part);
  const written = textsIn(item ?? whole, asReceived);
  const sorts = [...new Set((of ?? []).map((one) => sortOf(plain(one))))];
  for (const sort of sorts) {
    const names = of!.filter((one) => sortOf(plain(one)) === sort);
    if (names.some((one) => stands(plain(one), sort, written))) continue;
    const alike = sort === 'part' ? [] : [...new Set(written.filter((text) => sortOf(plain(text)) === sort))];
    const has = alike.length > 0 ? `has ${alike.slice(0, 3).join(', ')}` : 'does not';
    return `names ${names.join(', ')}; ${item ? `\`${part}\`` : 'the note'} ${has}`;
  }
  return undefined;
}

/** Where no size stands as one text, a size is there when each of its numbers was typed as a value. */
function stands(one: string, sort: Sort, written: readonly string[]): boolean {
  if (written.some((text) => isIn(one, plain(text)))) return true;
  if (sort !== 'size' || written.some((text) => sortOf(plain(text)) === 'size')) return false;
  const numbers = (text: string): string[] => plain(text).match(/\d+(?:\.\d+)?/g) ?? [];
  const known = new Set(written.flatMap(numbers));
  return numbers(one).every((number) => known.has(number));
}

type Sort = 'size' | 'tyre' | 'thread' | 'steel' | 'part';

function sortOf(text: string): Sort {
  if (/^\d{3}\/\d{2} ?z?r ?\d/.test(text)) return 'tyre';
  if (/^m\d+(?:\.\d+)?(?:x|$)|\b(?:un[cfs]|npt)\b/.test(text)) return 'thread';
  if (/^(?:[a-z]{1,6} )?\d+(?:\.\d+)?x\d/.test(text)) return 'size';
  return readSteel(text).ok ? 'steel' : 'part';
}

/** A plan counts only until there is something as built beside it. */
function textsIn(value: Plain | undefined, asReceived: boolean): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    (!asReceived && isBefore(key)) || (key === 'planned' && 'now' in value) ? [] : textsIn(inner, asReceived),
  );
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
