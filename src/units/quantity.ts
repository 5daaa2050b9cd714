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
  /**
   * Expanded uncertainty (k = 2) in SI units: as stated behind ±, or type A of several readings, and then no less than
   * half the last place written, because equal readings do not make an instrument exact.
   */
  expanded?: number;
  /**
   * Half the last place written, in SI units; of a fraction, half of one part (3/8 in: 1/16 in). 0 for a ratio of two
   * whole numbers, which are counted.
   */
  halfDigit: number;
  /** In SI units, where several were written. */
  readings?: readonly number[];
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
 *               |  [ number, number, … ] unit          readings: their mean and type A uncertainty
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
  const done = 'code' in read ? read : assemble(text, read, wanted);
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

function assemble(text: string, parts: Parts, wanted: Unit): Quantity | QuantityProblem {
  const { numbers, number, unit: behind, uncertainty } = parts;
  if (behind.text === '' && wanted.text !== '1') return noUnit(number.text, number.at, wanted);
  const found = behind.text === '' ? wanted : readUnit(behind.text);
  if (!found) return unknownUnit(behind.text, behind.at, wanted);
  if (!sameDimension(found.dimension, wanted.dimension)) return notThatUnit(found, behind.text, behind.at, wanted);

  const toSI = (x: Decimal) => x.times(found.factor).plus(found.offset ?? 0);
  const middle =
    numbers.length === 1 ? numbers[0]!.value : Decimal.sum(...numbers.map((n) => n.value)).div(numbers.length);
  const exact = toSI(middle);
  const halfDigit = Decimal.max(...numbers.map((n) => n.step))
    .div(2)
    .times(found.factor)
    .toNumber();
  const quantity = {
    text: text.trim(),
    si: exact.toNumber(),
    exact,
    unit: found.text,
    dimension: found.dimension,
    halfDigit,
  };
  if (parts.readings) {
    const readings = numbers.map((n) => toSI(n.value).toNumber());
    const spread = typeA(readings);
    return { ...quantity, readings, ...(spread === undefined ? {} : { expanded: Math.max(spread, halfDigit) }) };
  }
  if (!uncertainty) return quantity;
  const expanded = stated(uncertainty, middle, found);
  return typeof expanded === 'number' ? { ...quantity, expanded } : expanded;
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
