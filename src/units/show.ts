import { Decimal } from './decimal.js';
import { unit } from './unit.js';

export interface NumberOptions {
  /** Significant digits, four where nothing is said. Digits before the point are never rounded away. */
  digits?: number;
  /** Decimal places instead. */
  places?: number;
}

/** A number for people: no exponent from 1e−6 up to 1e15, no `-0`, a true minus. What is no number shows as a dash. */
export function showNumber(x: number | Decimal, options: NumberOptions = {}): string {
  const number = new Decimal(x);
  if (!number.isFinite()) return '–';
  if (number.isZero()) return '0';
  const { digits = 4, places } = options;
  if (places !== undefined) return signed(number.toFixed(Math.max(0, places)));
  if (number.abs().lt('1e-6') || number.abs().gte('1e15')) return scientific(number, digits);
  const rounded = number.toDecimalPlaces(Math.max(0, digits - 1 - number.e));
  return signed(rounded.toFixed());
}

/**
 * A quantity for people, such as `2.48 ± 0.02 mm`. The uncertainty is rounded up to at most two significant digits and
 * the value to the same place; without one the value has four significant digits. Per cent stand behind brackets,
 * `(95 ± 2) %`, so that the uncertainty cannot be taken for a share of the value.
 *
 * @param si in SI units
 * @param unitText the unit to show it in
 * @param expanded the expanded uncertainty in SI units, or the ends of an interval: `180 (−40 to 435) rad/s²`, with the
 *   ends rounded outwards
 */
export function showQuantity(si: number, unitText: string, expanded?: number | { low: number; high: number }): string {
  const { factor, offset, text } = unit(unitText);
  if (!Number.isFinite(si)) return '–';
  const value = new Decimal(si).minus(offset ?? 0).div(factor);
  const behind = text === '1' ? '' : ` ${text}`;
  if (typeof expanded === 'object') {
    const inUnit = (x: number) => clean(new Decimal(x).minus(offset ?? 0).div(factor));
    return withInterval(clean(value), inUnit(expanded.low), inUnit(expanded.high)) + behind;
  }
  if (expanded === undefined || !Number.isFinite(expanded) || expanded === 0) return showNumber(clean(value)) + behind;
  const both = withUncertainty(clean(value), clean(new Decimal(Math.abs(expanded)).div(factor)));
  return (text === '%' ? `(${both})` : both) + behind;
}

/** The same without the uncertainty, to as many digits as it leaves: what a reader needs to reckon again. */
export function showToUncertainty(si: number, unitText: string, expanded: number): string {
  const { factor, offset, text } = unit(unitText);
  if (expanded === 0 || !Number.isFinite(si) || !Number.isFinite(expanded)) return showQuantity(si, unitText);
  const [value] = withUncertainty(
    clean(new Decimal(si).minus(offset ?? 0).div(factor)),
    clean(new Decimal(Math.abs(expanded)).div(factor)),
  ).split(' ± ');
  return `${value}${text === '1' ? '' : ` ${text}`}`;
}

function withUncertainty(value: Decimal, uncertainty: Decimal): string {
  const up = uncertainty.toSignificantDigits(2, Decimal.ROUND_UP);
  const last = up.e - 1;
  const rounded = atPlace(value, last);
  const spare = [up, rounded].every((x) => x.eq(atPlace(x, last + 1)));
  const places = Math.max(0, -(spare ? last + 1 : last));
  if (places > 20 || rounded.e > 15 || up.e > 15)
    return `${rounded.isZero() ? '0' : scientific(rounded, 15)} ± ${scientific(up, 2)}`;
  return `${signed(rounded.toFixed(places))} ± ${up.toFixed(places)}`;
}

/** All three to a hundredth of half the width or a little more, the ends rounded outwards. */
function withInterval(value: Decimal, low: Decimal, high: Decimal): string {
  const half = high.minus(low).div(2);
  const last = half.isZero() ? value.e - 3 : half.lt(Decimal.pow(10, half.e).times(3)) ? half.e - 2 : half.e - 1;
  if (last < -20 || [value, low, high].some((x) => x.e > 15))
    return `${showNumber(value)} (${showNumber(low)} to ${showNumber(high)})`;
  const places = Math.max(0, -last);
  const shown = (x: Decimal, rounding: typeof Decimal.rounding) => signed(atPlace(x, last, rounding).toFixed(places));
  return `${shown(value, Decimal.ROUND_HALF_UP)} (${shown(low, Decimal.ROUND_FLOOR)} to ${shown(high, Decimal.ROUND_CEIL)})`;
}

/** Rounded to the place of 10ⁿ. */
function atPlace(x: Decimal, n: number, rounding = Decimal.rounding): Decimal {
  return x.div(Decimal.pow(10, n)).toDecimalPlaces(0, rounding).times(Decimal.pow(10, n));
}

/** Without the noise that binary fractions leave in the sixteenth digit. */
function clean(x: Decimal): Decimal {
  return x.toSignificantDigits(14);
}

function scientific(x: Decimal, digits: number): string {
  const [mantissa, exponent] = x.toSignificantDigits(digits).toExponential().split('e') as [string, string];
  const raised = [...exponent.replace('+', '')].map((c) => (c === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(c)]!)).join('');
  return `${signed(mantissa)}×10${raised}`;
}

function signed(text: string): string {
  return /[1-9]/.test(text) ? text.replace('-', '−') : text.replace('-', '');
}
