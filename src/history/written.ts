import { unitIn } from '../build/fields.js';
import { readQuantity, type Quantity } from '../units/quantity.js';
import { showQuantity } from '../units/show.js';
import { readSlope, type Axis } from '../units/slope.js';
import { differenceUnit, sameDimension } from '../units/unit.js';

export type WrittenQuantity = Quantity & { axis?: Axis };

/** A value as it was written, read as a quantity of whatever dimension, or as a slope; undefined for anything else. */
export function writtenQuantity(text: string): WrittenQuantity | undefined {
  const plain = readQuantity(text, unitIn(text));
  if (plain.ok) return plain.quantity;
  const slope = readSlope(text);
  return slope.ok ? { ...slope.quantity, axis: slope.axis } : undefined;
}

/** Whether two texts say the same: `2.5 mm` and `0.25 cm` do; with another uncertainty they do not. */
export function sameValue(from: string, to: string): boolean {
  const [a, b] = [writtenQuantity(from), writtenQuantity(to)];
  if (!a || !b || !comparable(a, b)) return false;
  return a.exact.eq(b.exact) && (a.expanded ?? 0) === (b.expanded ?? 0);
}

/**
 * By how much a value changed, in the unit that it was written in before: `+0.04 mm`. Undefined where there are no two
 * quantities of one dimension.
 */
export function differenceOf(from: string | undefined, to: string | undefined): string | undefined {
  if (from === undefined || to === undefined) return undefined;
  const [a, b] = [writtenQuantity(from), writtenQuantity(to)];
  if (!a || !b || !comparable(a, b)) return undefined;
  const by = b.exact.minus(a.exact);
  const shown = showQuantity(by.toNumber(), differenceUnit(a.unit));
  return by.gt(0) ? `+${shown}` : shown;
}

function comparable(a: WrittenQuantity, b: WrittenQuantity): boolean {
  return sameDimension(a.dimension, b.dimension) && a.axis === b.axis;
}
