import { unitIn } from '../project/fields.js';
import { type Quantity, readQuantity } from '../units/quantity.js';
import { showQuantity } from '../units/show.js';
import { type Axis, endsInDirection, readSlope } from '../units/slope.js';
import { differenceUnit, sameDimension } from '../units/unit.js';

export type WrittenQuantity = Quantity & { axis?: Axis };

/** The same texts come again in every commit, so that most are read once; not more are kept than memory is worth. */
const kept = new Map<string, WrittenQuantity | undefined>();
const MOST_KEPT = 20_000;

/** A value as it was written, read as a quantity of whatever dimension, or as a slope; undefined for anything else. */
export function writtenQuantity(text: string): WrittenQuantity | undefined {
  if (kept.has(text)) return kept.get(text);
  const quantity = readWritten(text);
  if (kept.size < MOST_KEPT) kept.set(text, quantity);
  return quantity;
}

function readWritten(text: string): WrittenQuantity | undefined {
  if (endsInDirection(text)) {
    const slope = readSlope(text);
    return slope.ok ? { ...slope.quantity, axis: slope.axis } : undefined;
  }
  const plain = readQuantity(text, unitIn(text));
  return plain.ok ? plain.quantity : undefined;
}

/** Whether two texts say the same: `2.5 mm` and `0.25 cm` do; with another uncertainty they do not. */
export function sameValue(from: string, to: string): boolean {
  const [a, b] = [writtenQuantity(from), writtenQuantity(to)];
  if (!a || !b || !comparable(a, b)) return false;
  return a.exact.eq(b.exact) && sameUncertainty(a, b);
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

const sameUncertainty = (a: Quantity, b: Quantity): boolean =>
  (a.expanded ?? 0) === (b.expanded ?? 0) &&
  (a.spread ?? 0) === (b.spread ?? 0) &&
  String(a.eachStated ?? '') === String(b.eachStated ?? '');

function comparable(a: WrittenQuantity, b: WrittenQuantity): boolean {
  return sameDimension(a.dimension, b.dimension) && a.axis === b.axis;
}
