import { Decimal } from './decimal.js';
import type { Quantity } from './quantity.js';
import { readUnit, sameDimension } from './unit.js';

/** Slips of the unit and of the point, the likeliest first. */
const slips: readonly { factor: number; says: string; units?: readonly [written: string, meant: string] }[] = [
  { factor: 25.4, says: 'inches typed as millimetres', units: ['mm', 'in'] },
  { factor: 1 / 25.4, says: 'millimetres typed as inches', units: ['in', 'mm'] },
  { factor: 10, says: 'the decimal point one place too far left, or cm typed as mm' },
  { factor: 1 / 10, says: 'the decimal point one place too far right, or mm typed as cm' },
  { factor: 1000, says: 'a unit a thousand times too small' },
  { factor: 1 / 1000, says: 'a unit a thousand times too large' },
];

export interface Improbable {
  /** What was probably done. */
  says: string;
  /** What the value would then be, in SI units. */
  si: number;
  /** The unit that was probably meant for the number as written, where there is one. */
  unit?: string;
}

/** A value within this factor of what is usual is unusual, not a slip. */
const WELL_OUTSIDE = 2;

/**
 * Whether a value lies well outside what is usual, and by a factor near 25.4, 10 or 1000 from it.
 *
 * @param typical the usual smallest and largest value in SI units, both greater than zero
 * @returns undefined for a usual value and for one that no slip explains
 */
export function improbable(quantity: Quantity, typical: readonly [minSI: number, maxSI: number]): Improbable | undefined {
  const [min, max] = typical;
  const size = Math.abs(quantity.si);
  if (size === 0 || (size > min / WELL_OUTSIDE && size < max * WELL_OUTSIDE)) return undefined;
  for (const slip of slips) {
    if (slip.units && quantity.unit !== slip.units[0]) continue;
    const si = new Decimal(quantity.exact).times(slip.factor).toNumber();
    if (Math.abs(si) < min || Math.abs(si) > max) continue;
    const meant = slip.units?.[1] ?? unitLargerBy(slip.factor, quantity);
    return { says: slip.says, si, ...(meant === undefined ? {} : { unit: meant }) };
  }
  return undefined;
}

const steps = ['µm', 'mm', 'cm', 'm', 'km', 'g', 'kg', 't', 'N', 'kN', 'N·mm', 'N·m', 'kN·m', 'Pa', 'kPa', 'MPa', 'GPa', 'W', 'kW', 'mL', 'L', 'bar', 'ms', 's'];

function unitLargerBy(factor: number, { unit: written, dimension }: Quantity): string | undefined {
  const own = readUnit(written);
  return steps.find((s) => {
    const other = readUnit(s)!;
    return own && sameDimension(other.dimension, dimension) && Math.abs(other.factor.div(own.factor).div(factor).toNumber() - 1) < 1e-9;
  });
}
