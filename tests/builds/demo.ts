import { readdirSync, readFileSync } from 'node:fs';
import { all, create } from 'mathjs';
import { parse } from 'yaml';

/** The demo's folder. */
export const sedge = 'builds/sedge';

/** What a note or `build.md` says in its frontmatter, read without the program: every value is the text that was typed. */
export type Typed = { [key: string]: Typed } & Typed[] & string;

export function frontOf(path: string): Typed {
  return parse(readFileSync(`${sedge}/${path}`, 'utf8').split(/^---$/m)[1]!, { schema: 'failsafe' }) as Typed;
}

export const notes = readdirSync(`${sedge}/notes`).sort();
const fronts = new Map(notes.map((file) => [file.slice(0, 3), frontOf(`notes/${file}`)]));
export const note = (number: string): Typed => fronts.get(number)!;
/** The item of a list that has the id. */
export const item = (list: Typed, id: string): Typed =>
  (list as unknown as Typed[]).find((one) => (one['id'] as unknown as string) === id)!;

const math = create(all!, {});

/** The number in a typed value, in the unit named: plain, `{ value: … }`, readings in brackets (their mean), with words after it. */
export function n(typed: unknown, unit = ''): number {
  const text = typeof typed === 'string' ? typed : (typed as { value: string }).value;
  const [, readings, of] = /^\[(.*)\]\s*(.*)$/.exec(text) ?? [];
  if (readings) return n(`${math.mean(readings.split(',').map(Number))} ${of}`, unit);
  const [, number, written = ''] = /^(-?[\d.]+)(?: ± [\d.]+)?\s*(\S*)/.exec(text)!;
  if (!unit) return Number(number);
  return math.unit(Number(number), written.replace('·', ' ').replace(/([a-z])([23])$/, '$1^$2')).toNumber(unit);
}

/** An expression of mathjs, written out in the test, over numbers and units. */
export const reckon = (expression: string, scope: Record<string, unknown> = {}): number =>
  math.evaluate(expression, { ...scope }) as number;
