import { z } from 'zod';
import { type FieldMeta, type Measured, named } from '../../../project/fields.js';
import { exactBound, type Limit } from '../../codes/limit.js';

const from = z.string().min(3).optional().meta({
  form: 'text',
  says: 'maker and sheet that says so, kept as a paper; figures that stand nowhere limit nothing',
  typical: 'alignment sheet of the maker, 2025',
});

/** What a maker allows for one measurement, with the sheet that it stands in. `end` is a field for either end of the window. */
export function makerWindow<F extends z.ZodType>(says: string, end: (says: string) => F) {
  return z
    .strictObject({
      least: end(`least ${says} that the maker allows`),
      greatest: end(`greatest ${says} that the maker allows`),
      from,
    })
    .optional()
    .meta({ form: 'block', says: `what the maker allows for the ${says}` });
}

/** `usual`: smallest and largest size that makers name, in `unit`. `range`: as of the field that they are the window of. */
export const makerFigures = (
  unit: string,
  says: string,
  usual: readonly [number, number],
  range?: NonNullable<FieldMeta['range']>,
) => makerWindow(says, (words) => named(unit, words, { usual, ...(range ? { range } : {}) }));

interface Window {
  least?: Measured | undefined;
  greatest?: Measured | undefined;
  from?: string | undefined;
}

/** A window within which a tool of the kind that its maker prescribes may be read: a lone figure leaves that tool no room. */
export function asPrescribed(limit: Limit | undefined): Limit | undefined {
  return limit?.min && limit.max && limit.min.si < limit.max.si ? { ...limit, rule: 'as-read' } : limit;
}

/** The window as a limit; none where it does not say where it stands. Of angles with words for their direction the smaller stands for the least, whichever was written first. */
export function makerLimit(window: Window | undefined, unit: string): Limit | undefined {
  const [least, greatest] = [window?.least?.quantity.si, window?.greatest?.quantity.si];
  if (!window?.from || (least === undefined && greatest === undefined)) return undefined;
  const both = least !== undefined && greatest !== undefined;
  const [min, max] = both ? [Math.min(least, greatest), Math.max(least, greatest)] : [least, greatest];
  const bound = (si: number | undefined) => (si === undefined ? undefined : exactBound(si));
  return { min: bound(min), max: bound(max), unit, document: window.from, basis: 'maker' };
}
