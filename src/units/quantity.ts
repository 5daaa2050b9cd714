import { Decimal } from './decimal.js';
import { type Parts, split, type Uncertainty } from './parts.js';
import type { QuantityProblem } from './problem.js';
import { expectedOf, notThatUnit, noUnit, uncertaintyProblem, unknownUnit } from './slips.js';
import { typeA } from './student.js';
import { type Dimension, readUnit, sameDimension, type Unit, unit } from './unit.js';

export type { QuantityProblem } from './problem.js';

/** A quantity as written and in SI units (angles in radians). */
export interface Quantity {
  text: string;
  si: number;
  exact: Decimal;
  /** As written, in its one printed spelling. */
  unit: string;
  dimension: Dimension;
  /** Expanded uncertainty (k = 2) in SI units, as stated behind ± of the one value. */
  expanded?: number;
  /**
   * Half the last place written, in SI units; of a fraction, half of one part (3/8 in: 1/16 in). 0 for a ratio of two
   * whole numbers, which are counted.
   */
  halfDigit: number;
  /** In SI units, where several were written; then `si` is their mean. */
  readings?: readonly number[];
  /**
   * Expanded uncertainty of that mean from the spread of the readings (type A, k as of Student’s t), in SI units. What the
   * instrument and the method bring is not in it: equal readings do not make an instrument exact.
   */
  spread?: number;
  /** Expanded uncertainty in SI units that was stated behind ± of each reading, where one was. */
  eachStated?: readonly (number | undefined)[];
}

export type QuantityResult = { ok: true; quantity: Quantity } | { ok: false; problem: QuantityProblem };

/** Longest text that is looked at. */
const LONGEST = 500;

/**
 * Reads a quantity. What can be written:
 *
 *     quantity  =  number unit
 *               |  number ± number unit  |  number unit ± number unit  |  number unit ± number %
 *               |  ( number ± number ) unit
 *               |  [ quantity, quantity, … ]           readings: their mean and its type A uncertainty
 *               |  [ number, number, … ] unit          the same, with the unit written once
 *               |  number : number                     a ratio, where `1` fits
 *     number    =  2.5  |  4.5e3  |  4.5×10³  |  3/4  |  1-1/8  |  1 1/8  |  1½      with a sign before it
 *     ±         =  ±  |  +/-  |  +-
 *
 * Units are those of `readUnit`. The unit may be left out only where `1` fits.
 *
 * @param text what was typed; nothing that can be typed makes this throw
 * @param fits a unit of the wanted dimension, such as `mm`; `1` for a ratio or a count
 */
export function readQuantity(text: string, fits: string): QuantityResult {
  const wanted = unit(fits);
  const read = readable(text, wanted) ?? split(text, wanted);
  const done =
    'code' in read ? read : 'readings' in read ? several(text, read.readings, wanted) : one(text, read, wanted);
  return 'code' in done ? { ok: false, problem: done } : { ok: true, quantity: done };
}

function readable(text: string, wanted: Unit): QuantityProblem | undefined {
  const common = { expected: expectedOf(wanted), at: [0, text.length] as const };
  if (text.trim() === '') {
    const example = wanted.text === '1' ? '10' : `10 ${wanted.text}`;
    return { code: 'empty', found: 'nothing', hint: `write a value, such as ${example}`, ...common };
  }
  if (text.length > LONGEST) {
    return {
      code: 'number',
      found: `${text.length} characters`,
      hint: `keep it within ${LONGEST} characters`,
      ...common,
    };
  }
  return undefined;
}

function one(text: string, parts: Parts, wanted: Unit): Quantity | QuantityProblem {
  const { value, number, unit: behind, uncertainty } = parts;
  if (behind.text === '' && wanted.text !== '1') return noUnit(number.text, number.at, wanted);
  const found = behind.text === '' ? wanted : readUnit(behind.text);
  if (!found) return unknownUnit(behind.text, behind.at, wanted);
  if (!sameDimension(found.dimension, wanted.dimension)) return notThatUnit(found, behind.text, behind.at, wanted);
  const exact = value.value.times(found.factor).plus(found.offset ?? 0);
  const quantity = {
    text: text.trim(),
    si: exact.toNumber(),
    exact,
    unit: found.text,
    dimension: found.dimension,
    halfDigit: value.step.div(2).times(found.factor).toNumber(),
  };
  if (!uncertainty) return quantity;
  const expanded = stated(uncertainty, value.value, found);
  return typeof expanded === 'number' ? { ...quantity, expanded } : expanded;
}

function several(text: string, readings: readonly Parts[], wanted: Unit): Quantity | QuantityProblem {
  const each: Quantity[] = [];
  for (const reading of readings) {
    const read = one(text, reading, wanted);
    if ('code' in read) return read;
    each.push(read);
  }
  return meanOf(each, text);
}

/** The mean of readings of one dimension; it is shown in the unit of the first. */
export function meanOf(each: readonly Quantity[], text: string): Quantity {
  const exact = Decimal.sum(...each.map((q) => q.exact)).div(each.length);
  const readings = each.map((q) => q.si);
  const spread = typeA(readings);
  return {
    text: text.trim(),
    si: exact.toNumber(),
    exact,
    unit: each[0]!.unit,
    dimension: each[0]!.dimension,
    halfDigit: Math.max(...each.map((q) => q.halfDigit)),
    readings,
    ...(spread === undefined ? {} : { spread }),
    ...(each.some((q) => q.expanded !== undefined) ? { eachStated: each.map((q) => q.expanded) } : {}),
  };
}

/** The stated uncertainty in SI units. */
function stated({ value, unit: own, at }: Uncertainty, middle: Decimal, of: Unit): number | QuantityProblem {
  if (own?.text === '') return noUnit(value.toString(), at, of);
  const found = own ? readUnit(own.text) : of;
  if (!found) return unknownUnit(own!.text, own!.at, of);
  const share = found.text === '%' && own !== undefined;
  if (!share && !sameDimension(found.dimension, of.dimension)) return notThatUnit(found, own!.text, own!.at, of);
  const whole = share ? middle.times(of.factor).abs() : new Decimal(1);
  if (share && (of.offset || of.dimension.level || of.text === '%')) {
    return uncertaintyProblem(`give it in ${of.text}: ${of.text === '%' ? '(95 ± 2) %' : `± … ${of.text}`}`, at);
  }
  const expanded = value.times(whole).times(found.factor).toNumber();
  return expanded > 0
    ? expanded
    : uncertaintyProblem('an uncertainty is greater than zero; leave ± out if it is not known', at);
}
