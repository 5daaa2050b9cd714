import { isDeepStrictEqual } from 'node:util';
import { isMap, isScalar, isSeq, type Node, type Pair, parseDocument, type YAMLMap } from 'yaml';
import { format } from './format.js';
import type { Path } from './frontmatter.js';
import { obsolete } from './obsolete.js';
import { readCurrent } from './read-current.js';
import type { FileSort, ObsoleteUse } from './translate.js';

/** Rewriting what is obsolete in the text of a file: only the characters that change are touched. */

/** A stretch of the text and what comes in its place. */
interface Edit {
  from: number;
  to: number;
  text: string;
}

export interface Update {
  text: string;
  /** What was rewritten, with the places that it had. */
  done: ObsoleteUse[];
  /** What is to be rewritten by hand. */
  left: ObsoleteUse[];
}

/** Rewrites what is obsolete in a file that can be read. The text that comes of it reads as the old one does. */
export function updated(text: string, file: string, sort: FileSort, table = obsolete): Update {
  const read = (of: string) => readCurrent(of, file, sort, table);
  const before = read(text);
  const result: Update = { text, done: [], left: [] };
  for (const since of new Set(before.obsolete.map((use) => use.row.since))) {
    const uses = read(result.text).obsolete.filter((use) => use.row.since === since);
    const { text: next, left } = rewritten(result.text, uses);
    result.text = next;
    result.left.push(...left);
    result.done.push(...uses.filter((use) => !left.includes(use)));
  }
  return isDeepStrictEqual(read(result.text).value?.data, before.value?.data)
    ? result
    : { text, done: [], left: [...before.obsolete] };
}

function rewritten(text: string, uses: readonly ObsoleteUse[]): { text: string; left: ObsoleteUse[] } {
  const yaml = yamlOf(text);
  const edits = uses.map((use) => editsFor(yaml, use));
  return {
    text: edited(
      text,
      yaml,
      edits.flatMap((made) => made ?? []),
    ),
    left: uses.filter((_, i) => edits[i] === undefined),
  };
}

/** The text of `build.md` with the number of this format. */
export const withFormat = (text: string): string => withKey(text, 'format', String(format));

/** The text of `build.md` with the name under which its issues are found; one that is there stays. */
export const withId = (text: string, id: string): string =>
  /^[\p{L}\d][\p{L}\d ._-]*$/u.test(id) ? withKey(text, 'id', quotedAs('', id), true) : text;

/** The text with a key, which stands below the title where there was none. */
function withKey(text: string, key: string, value: string, keep = false): string {
  const yaml = yamlOf(text);
  const { source, root } = yaml;
  if (!root) return text;
  const stated = pairOf(root, key);
  if (stated && isScalar(stated.value) && stated.value.range) {
    const [from, to] = stated.value.range;
    const present = source.slice(from, to).trim();
    if (present === value || (keep && present !== '')) return text;
    // Before a line end nothing is between the colon and it.
    const gap = source[from - 1] === ':' ? ' ' : '';
    return edited(text, yaml, [{ from, to, text: `${gap}${value}` }]);
  }
  const start = root.range![0];
  if (root.flow) return edited(text, yaml, [{ from: start + 1, to: start + 1, text: `${key}: ${value}, ` }]);
  const title = (pairOf(root, 'title')?.value as Node | null | undefined)?.range;
  const end = title ? source.indexOf('\n', Math.max(title[0], title[1] - 1)) + 1 : start;
  return edited(text, yaml, [{ from: end, to: end, text: `${key}: ${value}\n` }]);
}

interface Yaml {
  /** With line ends of one character, as it is read. */
  source: string;
  /** Where `source` begins in the whole text with such line ends. */
  start: number;
  root: YAMLMap | undefined;
}

function yamlOf(text: string): Yaml {
  const normal = normalised(text);
  const front = /^---[^\n]*\n([^]*?)(?<=\n)---[^\S\n]*(?:\n|$)/.exec(normal);
  const source = front ? front[1]! : normal;
  const root = parseDocument(source, { schema: 'failsafe', strict: false }).contents;
  return { source, start: front ? normal.indexOf('\n') + 1 : 0, root: isMap(root) ? root : undefined };
}

const normalised = (text: string): string => text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');

/** The text with edits of its YAML made; line ends and byte order mark stay, and new lines end as the first one does. */
function edited(text: string, { start }: Yaml, edits: readonly Edit[]): string {
  const places = placesOf(text);
  const lineEnd = /\r\n?|\n/.exec(text)?.[0] ?? '\n';
  let result = text;
  for (const { from, to, text: put } of [...edits].sort((a, b) => b.from - a.from))
    result = `${result.slice(0, places[start + from])}${put.replaceAll('\n', lineEnd)}${result.slice(places[start + to])}`;
  return result;
}

/** For each character of the text as it is read, where it stands in the text. */
function placesOf(text: string): number[] {
  const places: number[] = [];
  for (let i = text.startsWith('\uFEFF') ? 1 : 0; i < text.length; i++)
    if (!(text[i] === '\n' && text[i - 1] === '\r')) places.push(i);
  places.push(text.length);
  return places;
}

function editsFor({ source, root }: Yaml, { path, row: { now } }: ObsoleteUse): Edit[] | undefined {
  const found = root && pairAt(root, path);
  if (!found) return undefined;
  if ('words' in now) return wordEdit(source, found.value, now.words);
  if (!found.pair || typeof path.at(-1) !== 'string') return undefined;
  if ('key' in now) {
    const [from, to] = (found.pair.key as Node).range!;
    return [{ from, to, text: quotedAs(source.slice(from, to), now.key) }];
  }
  return 'gone' in now ? commented(source, found.pair, found.parent!) : undefined;
}

interface AtPath {
  value: Node | null;
  /** Where the path ends in a key. */
  pair?: Pair;
  parent?: YAMLMap;
}

function pairAt(root: YAMLMap, path: Path): AtPath | undefined {
  let at: AtPath = { value: root };
  for (const step of path) {
    if (isMap(at.value)) {
      const parent: YAMLMap = at.value;
      const pair = pairOf(parent, String(step));
      if (!pair) return undefined;
      at = { value: pair.value as Node | null, pair, parent };
    } else if (isSeq(at.value)) {
      const item = at.value.items[Number(step)] as Node | undefined;
      if (item === undefined) return undefined;
      at = { value: item };
    } else return undefined;
  }
  return at;
}

const pairOf = (map: YAMLMap, key: string): Pair | undefined =>
  map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === key);

function wordEdit(source: string, value: Node | null, words: Readonly<Record<string, string>>): Edit[] | undefined {
  if (!isScalar(value) || !value.range) return undefined;
  const [from, to] = value.range;
  const raw = source.slice(from, to);
  const word = words[String(value.value).trim()];
  return word === undefined || raw.includes('\n') ? undefined : [{ from, to, text: quotedAs(raw, word) }];
}

/** In the quotes that stand there, or in quotes where the word needs them. */
function quotedAs(raw: string, word: string): string {
  if (raw.startsWith('"')) return JSON.stringify(word);
  const plain = /^[\p{L}\d](?:[\p{L}\d ./+-]*[\p{L}\d])?$/u.test(word);
  return raw.startsWith("'") || !plain ? `'${word.replaceAll("'", "''")}'` : word;
}

/** The lines of a field, put behind `#`; nothing where it does not stand on lines of its own or is all that its block has. */
function commented(source: string, pair: Pair, parent: YAMLMap): Edit[] | undefined {
  const [from] = (pair.key as Node).range!;
  const value = (pair.value as Node | null)?.range;
  const lineStart = source.lastIndexOf('\n', from - 1) + 1;
  if (parent.flow || parent.items.length === 1 || source.slice(lineStart, from).trim() !== '') return undefined;
  const end = Math.max(from, (value?.[1] ?? from) - 1);
  const lines = [lineStart];
  for (let at = source.indexOf('\n', from); at !== -1 && at < end; at = source.indexOf('\n', at + 1))
    lines.push(at + 1);
  return lines
    .filter((line) => source[line] !== '\n')
    .map((line) => {
      const indent = /^ */.exec(source.slice(line, from > line ? from : line + from - lineStart))![0].length;
      return { from: line + indent, to: line + indent, text: '# ' };
    });
}
