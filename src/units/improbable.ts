import { Decimal } from './decimal.js';
import type { Quantity } from './quantity.js';
import { readUnit, sameDimension, unit } from './unit.js';

interface Slip {
  factor: Decimal;
  says: string;
  units?: readonly [written: string, meant: string];
  /** So large, or so plain from the unit written, that one usual value is enough to tell. */
  plain?: boolean;
}

const between = (written: string, meant: string, says: string, plain = false): Slip => ({
  factor: unit(meant).factor.div(unit(written).factor),
  says,
  units: [written, meant],
  plain,
});
const by = (factor: number | string, says: string, plain = false): Slip => ({
  factor: new Decimal(factor),
  says,
  plain,
});

/** Slips of the unit and of the point, the likeliest first. */
const slips: readonly Slip[] = [
  between('mm', 'in', 'inches typed as millimetres'),
  between('in', 'mm', 'millimetres typed as inches', true),
  between('N', 'kgf', 'kilograms typed as newtons'),
  between('kPa', 'bar', 'bar typed as kilopascals', true),
  between('bar', 'kPa', 'kilopascals typed as bar', true),
  between('kPa', 'psi', 'pounds per square inch typed as kilopascals'),
  by(10, 'the decimal point one place too far left'),
  by('0.1', 'the decimal point one place too far right'),
  by(1000, 'a unit a thousand times too small', true),
  by('0.001', 'a unit a thousand times too large', true),
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
 * Whether a value lies well outside what is usual, by a factor that some slip of the unit or of the point explains.
 *
 * @param usual the smallest and largest usual value in SI units, both greater than zero
 * @param plainOnly leaves out slips that are too small to be told from a part that is merely unlike the usual one
 * @returns undefined for a usual value and for one that no slip explains
 */
export function improbable(
  quantity: Quantity,
  usual: readonly [minSI: number, maxSI: number],
  plainOnly = false,
): Improbable | undefined {
  const [min, max] = usual;
  const size = Math.abs(quantity.si);
  if (size === 0 || (size > min / WELL_OUTSIDE && size < max * WELL_OUTSIDE)) return undefined;
  for (const slip of slips) {
    if ((plainOnly && !slip.plain) || (slip.units && quantity.unit !== slip.units[0])) continue;
    const si = new Decimal(quantity.exact).times(slip.factor).toNumber();
    if (Math.abs(si) < min || Math.abs(si) > max) continue;
    const meant = slip.units?.[1] ?? unitLargerBy(slip.factor, quantity);
    return { says: slip.says, si, ...(meant === undefined ? {} : { unit: meant }) };
  }
  return undefined;
}

const steps = [
  'µm',
  'mm',
  'cm',
  'm',
  'km',
  'g',
  'kg',
  't',
  'N',
  'kN',
  'N·mm',
  'N·m',
  'kN·m',
  'Pa',
  'kPa',
  'MPa',
  'GPa',
  'W',
  'kW',
  'mL',
  'L',
  'bar',
  'ms',
  's',
];

function unitLargerBy(factor: Decimal, { unit: written, dimension }: Quantity): string | undefined {
  const own = readUnit(written);
  return steps.find((s) => {
    const other = readUnit(s)!;
    return (
      own &&
      sameDimension(other.dimension, dimension) &&
      Math.abs(other.factor.div(own.factor).div(factor).toNumber() - 1) < 1e-9
    );
  });
}
