import type { Element } from 'hast';
import { isSeries, type Run } from '../../../calc/run.js';
import { expanded, type Value } from '../../../calc/value.js';
import { type Size, symbolText } from '../words.js';

/** What a run of a sheet gives for a drawing; the name is unique in the document and goes into the drawing's ids. */
export interface Drawn {
  /** What the drawing shows, for its caption and its title. */
  caption: string;
  draw: (name: string, title: string) => Element;
}

/** Draws one kind of sheet; `runs` are all runs of the document. Nothing where there is nothing to show. */
type Drawer = (run: Run, runs: readonly Run[]) => Drawn | undefined;
export type Drawers = Readonly<Record<string, Drawer>>;

/** An input or a result with its symbol; undefined for an optional input that was left out. */
export function maybe(run: Run, name: string): Size | undefined {
  const value = valueOf(run, name);
  const declared = run.sheet.inputs[name] ?? run.sheet.results[name];
  return (
    value &&
    declared && { symbol: symbolText(declared.symbol), si: value.si, unit: value.unit, expanded: expanded(value) }
  );
}

/** The same where the sheet always has it. @throws Error otherwise, which is a programmer's mistake */
export function size(run: Run, name: string): Size {
  const found = maybe(run, name);
  if (!found) throw new Error(`sheet ${run.sheet.id} has no value ${name}`);
  return found;
}

export const si = (run: Run, name: string): number => size(run, name).si;

export const sizes = (run: Run, ...names: string[]): Size[] => names.map((name) => size(run, name));

/** Rows of a series in SI units. */
export function rows(run: Run, name: string): Readonly<Record<string, number>>[] {
  const series = run.inputs[name];
  return isSeries(series)
    ? series.map((row) => Object.fromEntries(Object.entries(row).map(([column, value]) => [column, value.si])))
    : [];
}

/** Note, subject and sheet of a run: `020-crossmember/crossmember/was/section-top-hat`. */
export function partsOf(run: Run): { note: string; subject: string } {
  const [note = '', ...rest] = run.id.split('/');
  return { note, subject: rest.slice(0, -1).join('/') };
}

function valueOf(run: Run, name: string): Value | undefined {
  const given = run.inputs[name];
  if (given !== undefined && typeof given !== 'string' && !isSeries(given)) return given;
  return run.results?.[name];
}
