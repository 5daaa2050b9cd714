import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import type { Evaluation } from '../../../../src/checks/engine/examine.js';
import type { Kind } from '../../../../src/checks/engine/kind.js';
import { fieldTree, type Leaf, leaves } from '../../../../src/project/field-tree.js';
import type { Plain } from '../../../../src/project/frontmatter.js';
import { type Around, examineNote } from '../bench.js';

/**
 * That a field decides is shown by a witness: a note, and one value of it that is moved across what it is compared with (or to
 * another choice), so that an outcome changes. The witnesses of a kind stand as data in `<kind>.yaml`.
 */

interface Base extends Around {
  note: string;
}
export interface Witness {
  /** The note of the file in which the field is moved. */
  in: string;
  /** Where it stands, items of lists by number; left out, the field itself with the first of each list. */
  at?: string;
  /** What is written there instead; left out where what is written is a text or a day, and counts by being there. */
  to?: string;
  /** The item whose outcome changes. */
  tells: string;
}
export interface Witnesses {
  notes: Record<string, Base>;
  fields: Record<string, Witness>;
  /** Fields of which it is not shown yet; the list may only become shorter. */
  unproven?: string[];
}

export type Raw = { [key: string]: Plain | undefined };

const folder = 'tests/checks/kinds/deciding';
const fileOf = (kind: string): string => join(folder, `${kind}.yaml`);

export function witnessesOf(kind: string): Witnesses {
  if (!existsSync(fileOf(kind))) return { notes: {}, fields: {} };
  return parse(readFileSync(fileOf(kind), 'utf8'), { schema: 'failsafe' }) as Witnesses;
}

/** What every block of a note may carry beside its values: who, when, and the name of an item of a list. */
const ofAnyBlock = new Set(['id', 'on', 'by']);

/** A field that stands for several states, axles or sides is one field. */
const oneOf = (path: readonly string[]): string =>
  path
    .map((key, i) =>
      i < path.length - 1 && /^(was|planned|now)$/.test(key)
        ? '*'
        : key
            .replace(/^(front|rear)(?=$|-)/, '*')
            .replace(/^(upper|lower)(?=$|-)/, '*')
            .replace(/(^|-)(left|right)$/, '$1*'),
    )
    .join('.');

/** The fields of a kind, each once, with all paths at which it stands. */
export function fieldsOf(kind: Kind): { leaf: Leaf; names: string[] }[] {
  const found = new Map<string, { leaf: Leaf; names: string[] }>();
  for (const leaf of leaves(fieldTree(kind.shape))) {
    if (ofAnyBlock.has(leaf.field.key)) continue;
    const one = found.get(oneOf(leaf.path));
    if (one) one.names.push(nameOf(leaf));
    else found.set(oneOf(leaf.path), { leaf, names: [nameOf(leaf)] });
  }
  return [...found.values()];
}

const nameOf = ({ path }: Leaf): string => path.join('.');

/** How often each item came out in which way. */
export type Outcomes = ReadonlyMap<string, number>;

function outcomesOf({ findings }: Pick<Evaluation, 'findings'>): Outcomes {
  const counts = new Map<string, number>();
  for (const f of findings) {
    // That two statements disagree is a finding of the comparison of notes, not of what the field is for.
    if (f.item === 'agreement') continue;
    const key = `${f.item} ${f.of} ${f.outcome} ${f.waits ?? ''}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

/** The items whose outcomes differ. */
export function differing(a: Outcomes, b: Outcomes): string[] {
  const keys = [...new Set([...a.keys(), ...b.keys()])].filter((key) => a.get(key) !== b.get(key));
  return [...new Set(keys.map((key) => key.split(' ')[0]!))];
}

export const rawOf = (note: string): Raw => (parse(note, { schema: 'failsafe' }) ?? {}) as Raw;

/** The note with one place written anew, or left out. */
export function moved(raw: Raw, at: string, to: string | undefined): Raw {
  const copy = structuredClone(raw);
  const keys = at.split('.');
  const last = keys.pop()!;
  const inner = keys.reduce<Raw | undefined>((here, key) => here?.[key] as Raw | undefined, copy);
  if (inner === undefined) throw new Error(`${at} does not stand in the note`);
  if (to === undefined) delete inner[last];
  else inner[last] = to;
  return copy;
}

export const examined = async (kind: string, raw: Raw, around: Around): Promise<Outcomes> =>
  outcomesOf(await examineNote(kind, stringify(raw, { defaultStringType: 'QUOTE_SINGLE', lineWidth: 0 }), around));

export const firstOf = (field: string): string => field.replaceAll('[]', '0');
