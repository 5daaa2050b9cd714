import { readUnit, type Unit } from './compose.js';
import { Decimal } from './decimal.js';

export { readUnit, type Unit } from './compose.js';
export { type Dimension, sameDimension } from './dimension.js';

/** A unit that the program itself names. @throws Error if it is none, which is a programmer's mistake */
export function unit(text: string): Unit {
  const read = readUnit(text);
  if (!read) throw new Error(`no such unit: ${text}`);
  return read;
}

/** The unit of a difference or an uncertainty: of a scale with a zero of its own, kelvin. */
export function differenceUnit(unitText: string): string {
  return unit(unitText).offset ? 'K' : unitText;
}

/** From SI to the named unit, without the noise of binary fractions. */
export function toUnit(si: number, unitText: string): number {
  const { factor, offset } = unit(unitText);
  return new Decimal(si)
    .minus(offset ?? 0)
    .div(factor)
    .toNumber();
}

/** From the named unit to SI, without the noise of binary fractions: `toSI('2.5', 'mm')` is `0.0025`. */
export function toSI(x: number | string, unitText: string): number {
  const { factor, offset } = unit(unitText);
  return new Decimal(x)
    .times(factor)
    .plus(offset ?? 0)
    .toNumber();
}
