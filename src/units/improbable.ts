import { Decimal } from './decimal.js';
import type { Quantity } from './quantity.js';
import { readUnit, sameDimension, unit } from './unit.js';

interface Slip {
  factor: Decimal;
  says: string;
  units?: readonly [written: string, meant: string];
}

const between = (written: string, meant: string, says: string): Slip => ({
  factor: unit(meant).factor.div(unit(written).factor),
  says,
  units: [written, meant],
});
const by = (factor: number | string, says: string): Slip => ({ factor: new Decimal(factor), says });

/** Slips of the unit and of the point, the likeliest first. */
const slips: readonly Slip[] = [
  between('mm', 'in', 'inches typed as millimetres'),
  between('in', 'mm', 'millimetres typed as inches'),
  between('N', 'kgf', 'kilograms typed as newtons'),
  between('kPa', 'bar', 'bar typed as kilopascals'),
  between('bar', 'kPa', 'kilopascals typed as bar'),
  between('kPa', 'psi', 'pounds per square inch typed as kilopascals'),
  by(10, 'the decimal point one place too far left'),
  by('0.1', 'the decimal point one place too far right'),
  by(1000, 'a unit a thousand times too small'),
  by('0.001', 'a unit a thousand times too large'),
];

export interface Improbable {
  /** What was probably done. */
  says: string;
  /** What the value would then be, in SI units. */
  si: number;
  /** The unit that was probably meant for the number as written, where there is one. */
  unit?: string;
}

/**
 * Whether a value, or one of its readings, lies outside what is usual and some slip of the unit or of the point explains it.
 *
 * @param usual the smallest and largest usual size in SI units; a smallest of zero lets every small value be
 * @returns undefined for a usual value and for one that no slip explains
 */
export function improbable(quantity: Quantity, usual: readonly [minSI: number, maxSI: number]): Improbable | undefined {
  const each = quantity.readings?.map((si) => new Decimal(si)) ?? [quantity.exact];
  for (const exact of each) {
    const slip = slipOf(exact, quantity, usual);
    if (slip) return slip;
  }
  return undefined;
}

function slipOf(exact: Decimal, quantity: Quantity, [min, max]: readonly [number, number]): Improbable | undefined {
  const usual = (si: number) => Math.abs(si) >= min * (1 - ROUNDED) && Math.abs(si) <= max * (1 + ROUNDED);
  // The point of a temperature slips on its own scale, whose zero is not that of the unit.
  const zero = readUnit(quantity.unit)?.offset ?? new Decimal(0);
  if (exact.eq(zero) || usual(exact.toNumber())) return undefined;
  const explained = slips
    .filter(({ units }) => !units || quantity.unit === units[0])
    .map((slip) => ({ slip, si: exact.minus(zero).times(slip.factor).plus(zero).toNumber() }))
    .filter(({ si }) => usual(si))
    .map((one) => ({ ...one, away: min > 0 ? Math.abs(Math.log(Math.abs(one.si) / Math.sqrt(min * max))) : 0 }));
  const nearest = Math.min(...explained.map(({ away }) => away));
  const likeliest = explained.find(({ away }) => away <= nearest + ALIKE);
  if (!likeliest) return undefined;
  const { slip, si } = likeliest;
  const meant = slip.units?.[1] ?? unitLargerBy(slip.factor, quantity);
  return { says: slip.says, si, ...(meant === undefined ? {} : { unit: meant }) };
}

/** Of two slips whose results lie about as near to the middle of the usual range, the likelier is named: within a fifth. */
const ALIKE = Math.log(1.2);

/** Ends of a range are usual, whatever the last digit of a conversion. */
const ROUNDED = 1e-9;

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
