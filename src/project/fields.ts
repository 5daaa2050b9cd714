import { z } from 'zod';
import type { Place } from '../calc/value.js';
import { type Quantity, type QuantityProblem, readQuantity } from '../units/quantity.js';
import { showQuantity } from '../units/show.js';
import { type Axis, readSlope, readSlopeAbout } from '../units/slope.js';
import { type Dimension, readUnit, sameDimension, unit as unitOf } from '../units/unit.js';
import { classBySize, classOfField, type MeasuredAs, rangeOf } from './measurement-classes.js';
import { eachPlace, type Places, worstPlace } from './places.js';

/**
 * What a frontmatter field can be. Each field carries what it says, its unit and how it is measured as zod metadata, from
 * which the messages, the note templates, the JSON Schema and the reference page are made.
 */

/** A measured quantity with what is known of how it was measured. `at` is set once the whole file has been read. */
export interface Measured {
  quantity: Quantity;
  /** The class of measurement of its field; where the field has none, dimension and size tell. */
  as?: MeasuredAs | undefined;
  /** The direction in words, for slopes. */
  direction?: string;
  /** Where a list was written of several places, each by itself; `quantity` is then what a calculation takes. */
  places?: readonly Quantity[];
  on?: string | undefined;
  by?: string | undefined;
  with?: string | undefined;
  photo?: string | undefined;
  at: Place;
  /** The place of `with`, where it names an instrument. */
  withAt?: Place;
  /** The place of `by`, where it names a person. */
  byAt?: Place;
}

export interface FieldMeta {
  says: string;
  /** Unit in which people usually write it. */
  unit?: string;
  /** How to measure it, in the builder's words. */
  how?: string;
  /** An entry for the template. */
  typical?: string;
  /**
   * Smallest and largest usual size in `unit`, by common practice, no source; `any` where a size tells nothing. Where it is
   * left out, the common one of its class, else a few times `typical`.
   */
  usual?: readonly [number, number] | 'any';
  /** How it is measured, where unit and typical size do not tell it rightly. */
  measuredAs?: MeasuredAs;
  /** Who reads a field that decides nothing, and what for; no outcome rests on it. */
  recordedFor?: string;
  /** `signed` where a value below zero has a meaning; otherwise from zero up, and as its class has it. */
  range?: 'signed' | 'above zero';
  /** A list is of several places, of which the least favourable decides; left out, of readings of one place. */
  places?: Places;
  form: 'quantity' | 'slope' | 'text' | 'day' | 'choice' | 'designation' | 'list' | 'name' | 'yes-no' | 'file';
}

const nowhere: Place = { file: '', line: 0, column: 0, path: '' };
export const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/)
  .refine(realDay);

function realDay(text: string): boolean {
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

/** Keys that say how a value was measured; beside `value` or at a block of values. */
const how = z.strictObject({
  value: z.unknown(),
  on: day.optional(),
  by: z.string().optional(),
  with: z.string().optional(),
  photo: z.string().optional(),
});

type Reader = (
  text: string,
) => { ok: true; quantity: Quantity; direction?: string } | { ok: false; problem: QuantityProblem };

function measured(read: Reader, meta: FieldMeta, axis?: Axis) {
  const as = classOfField({ ...meta, axis });
  const within = inRange(meta, as);
  const checked: Reader = (text) => {
    const result = read(text);
    const problem = result.ok ? within(result.quantity) : undefined;
    return problem ? { ok: false, problem } : result;
  };
  return z
    .any()
    .transform((input, context): Measured => {
      const wrapped = typeof input === 'object' && input !== null && !Array.isArray(input);
      const details = wrapped ? how.safeParse(input) : undefined;
      if (details && !details.success) {
        for (const issue of details.error.issues) context.issues.push({ ...issue, input } as never);
        return z.NEVER;
      }
      const value = details ? details.data.value : input;
      const text = Array.isArray(value) ? readings(value) : value;
      const path = wrapped && value !== undefined ? ['value'] : [];
      if (typeof text !== 'string') {
        const problem: QuantityProblem = {
          code: 'empty',
          found: 'no value',
          expected: `a value such as ${meta.typical ?? meta.unit ?? ''}`,
          hint: 'add `value:`',
          at: [0, 0],
        };
        context.issues.push(issueOf(problem, input, wrapped ? ['value'] : []));
        return z.NEVER;
      }
      const result = checked(text);
      if (!result.ok) {
        const item = Array.isArray(value) ? brokenItem(value, checked) : undefined;
        if (item) context.issues.push(issueOf(item.problem, input, [...path, item.index]));
        else context.issues.push(issueOf(result.problem, input, path));
        return z.NEVER;
      }
      const { value: _, ...rest } = details?.data ?? { value: undefined };
      const places = meta.places && eachPlace(result.quantity);
      const ends = places && meta.places && meta.places !== 'each' ? worstPlace(places, meta.places) : undefined;
      return {
        quantity: ends ?? result.quantity,
        ...(places ? { places } : {}),
        ...(as === undefined ? {} : { as }),
        ...(result.direction === undefined ? {} : { direction: result.direction }),
        ...rest,
        at: nowhere,
      };
    })
    .optional()
    .meta({ ...meta, ...(as === undefined ? {} : { measuredAs: as }) });
}

/** Of a YAML list, the reading that is wrong by itself; one that lacks only its unit or direction may have it from the others. */
function brokenItem(list: readonly unknown[], read: Reader): { index: number; problem: QuantityProblem } | undefined {
  for (const [index, item] of list.entries()) {
    const result = read(String(item));
    if (!result.ok && result.problem.code !== 'unit-missing' && result.problem.code !== 'direction')
      return { index, problem: result.problem };
  }
  return undefined;
}

const turn = 2 * Math.PI;
const isAngle = (dimension: Dimension): boolean => sameDimension(dimension, unitOf('deg').dimension);

/** A value, and each of its readings, lies where values of its field can lie. */
function inRange(meta: FieldMeta, as: MeasuredAs | undefined): (quantity: Quantity) => QuantityProblem | undefined {
  const { range, unit } = meta;
  return (quantity) => {
    const { si, readings: each = [si], text, unit: written, exact, dimension } = quantity;
    // Of a level, and on a scale with a zero of its own, a sign is no direction.
    const scale = dimension.level !== undefined || readUnit(written)?.offset !== undefined;
    const [low, high] = rangeOf(as ?? (scale ? classBySize(quantity) : undefined));
    const most = unit !== undefined && isAngle(dimension) ? Math.min(high, turn) : high;
    const least = range === 'signed' && !scale ? Math.min(low, -most) : low;
    const zero = range === 'above zero' && exact.minus(readUnit(written)!.offset ?? 0).lte(0);
    const out = zero ? si : each.find((x) => x < least || x > most * (1 + 1e-12));
    if (out === undefined) return undefined;
    const shown = (x: number) => showQuantity(x, unit ?? written);
    const ends = zero
      ? 'more than zero'
      : most === Number.POSITIVE_INFINITY
        ? `${shown(least)} or more`
        : `from ${shown(least)} to ${shown(most)}`;
    return {
      code: 'range',
      found: `${showQuantity(out, written)}, which cannot be`,
      expected: `${meta.says}: ${ends}`,
      hint:
        out < 0 && least === 0
          ? 'leave the minus out, or look at the reading again'
          : 'look at the value and its unit again',
      at: [0, text.length],
    };
  };
}

/** `[2.48 mm, 2.51 mm]` as a YAML list is the same as `'[2.48, 2.51] mm'`; what differs between readings stays with each. */
export function readings(list: readonly unknown[]): string | undefined {
  const parts = list.map((x) => (typeof x === 'string' ? /^(\S+)\s*(.*)$/.exec(x.trim()) : null));
  if (parts.length === 0 || parts.some((p) => p === null)) return undefined;
  const [behind = '', other] = new Set(parts.map((p) => p![2]!).filter((u) => u !== ''));
  const once = other === undefined && (readUnit(behind) !== undefined || /^[\p{L}°\s-]*$/u.test(behind));
  if (!once || parts.some((p) => !/^[+\-−]?[\d.]+$/.test(p![1]!))) return `[${parts.map((p) => p![0]).join(', ')}]`;
  return `[${parts.map((p) => p![1]).join(', ')}] ${behind}`.trim();
}

function issueOf(problem: QuantityProblem, input: unknown, path: (string | number)[]): never {
  return { code: 'custom', message: problem.found, input, path, params: { problem } } as never;
}

/** A number that is agreed or named and not measured: what is written has no uncertainty of its own. */
export function named(unit: string, says: string, meta: Partial<FieldMeta> = {}) {
  const read: Reader = (text) => {
    const result = readQuantity(text, unit);
    return result.ok ? { ok: true, quantity: { ...result.quantity, halfDigit: 0 } } : result;
  };
  return measured(read, { form: 'quantity', unit, says, measuredAs: 'named', ...meta });
}

/** A quantity in a unit that fits `unit`; a bare number is refused unless the unit is `1`. */
export function quantity(unit: string, says: string, meta: Partial<FieldMeta> = {}) {
  return measured((text) => readQuantity(text, unit), { form: 'quantity', unit, says, ...meta });
}

/** A whole number of things, which has no uncertainty and no point that slips. */
export function count(says: string, meta: Partial<FieldMeta> = {}) {
  const read: Reader = (text) => {
    const result = readQuantity(text, '1');
    if (!result.ok) return result;
    if (!result.quantity.exact.isInteger())
      return {
        ok: false,
        problem: {
          code: 'number',
          found: `\`${text}\``,
          expected: 'a whole number',
          hint: 'count them',
          at: [0, text.length],
        },
      };
    return { ok: true, quantity: { ...result.quantity, halfDigit: 0 } };
  };
  return measured(read, { form: 'quantity', unit: '1', says, measuredAs: 'named', usual: 'any', ...meta });
}

/** A quantity of whatever dimension its unit has; what it is compared with decides whether that fits. */
export function anyQuantity(says: string, meta: Partial<FieldMeta> = {}) {
  return measured((text) => readQuantity(text, unitIn(text)), {
    form: 'quantity',
    says,
    range: 'signed',
    places: 'each',
    ...meta,
  });
}

/** The longest end of the text that is a unit, of a list without one behind it that of its first reading with one; else `1`. */
export function unitIn(text: string): string {
  const list = /^\s*\[(.*)\]\s*$/su.exec(text.slice(0, 500))?.[1];
  const parts = list?.split(/[,;]/u) ?? [text];
  return parts.map(unitBehind).find((unit) => unit !== undefined) ?? '1';
}

function unitBehind(text: string): string | undefined {
  const starts = [...text.slice(0, 200).matchAll(/[^\d\s.,:+\-−±/[\]()]/gu)].map((m) => m.index);
  return starts.map((at) => text.slice(at).trim()).find((end) => readUnit(end) !== undefined);
}

/** An angle with its direction in words. */
export function slope(says: string, meta: Partial<FieldMeta> = {}) {
  return measured(readSlope, { form: 'slope', unit: 'deg', says, measuredAs: 'slope', ...meta });
}

/** An angle about one axis, such as camber, with its direction in words. */
export function slopeAbout(axis: Axis, says: string, meta: Partial<FieldMeta> = {}) {
  return measured(readSlopeAbout(axis), { form: 'slope', unit: 'deg', says, ...meta }, axis);
}

/** A designation read into dimensions by its own parser. The text stays as typed beside what was read. */
export function designation<T extends object>(
  read: (text: string) => ({ ok: true } & T) | { ok: false; problem: QuantityProblem },
  says: string,
  typical: string,
) {
  return z
    .any()
    .transform((input, context): Designated<T> => {
      const text = typeof input === 'string' ? input : '';
      const result = read(text);
      if (!result.ok) {
        context.issues.push(issueOf(result.problem, input, []));
        return z.NEVER;
      }
      const { ok: _, ...rest } = result;
      return { ...(rest as unknown as T), written: text, at: nowhere };
    })
    .optional()
    .meta({ form: 'designation', says, typical } satisfies FieldMeta);
}
export type Designated<T> = T & { written: string; at: Place };

export function text(says: string, typical?: string) {
  return z
    .string()
    .max(2000)
    .optional()
    .meta({ form: 'text', says, ...(typical ? { typical } : {}) } satisfies FieldMeta);
}

export function onDay(says: string) {
  return day.optional().meta({ form: 'day', says, typical: '2026-03-14' } satisfies FieldMeta);
}

export function choice<const C extends Readonly<Record<string, string>>>(choices: C, says: string) {
  return z
    .enum(Object.keys(choices) as [keyof C & string, ...(keyof C & string)[]])
    .optional()
    .meta({ form: 'choice', says, choices });
}

export function yesNo(says: string) {
  return z
    .enum(['yes', 'no'])
    .optional()
    .meta({ form: 'yes-no', says } satisfies FieldMeta);
}

/** Items of a list have an `id` of their own, so that what is computed from them keeps its name. */
export const idOf = z
  .string()
  .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/)
  .meta({ form: 'name', says: 'name within this note, lower case with hyphens' });

export function list<S extends z.ZodRawShape>(shape: S, says: string) {
  return z
    .array(z.strictObject({ id: idOf, ...shape }))
    .optional()
    .meta({ form: 'list', says } satisfies FieldMeta);
}
