import { readQuantity } from '../units/quantity.js';
import { sameDimension, toSI, unit } from '../units/unit.js';
import { isQuantity } from './inputs.js';
import type { Sheet } from './sheet.js';

const DECADES = 4;
const A_DECADE = 40;

/**
 * Values of an input, in SI units and rising order, at which a search may look: four decades to each side of the size
 * that the sheet's example has, on both sides of zero, and whole numbers for what is counted. Angles stay within half a turn.
 */
export function plausible(sheet: Sheet, input: string): number[] {
  const declared = sheet.inputs[input];
  if (!declared || !isQuantity(declared)) return [];
  const size = typical(sheet, input) || toSI(1, declared.unit);
  const steps = Array.from({ length: 2 * DECADES * A_DECADE + 1 }, (_, i) => size * 10 ** (i / A_DECADE - DECADES));
  const { dimension } = unit(declared.unit);
  const counts =
    sameDimension(dimension, {}) && declared.unit === '1' ? Array.from({ length: 200 }, (_, i) => i + 1) : [];
  const most = sameDimension(dimension, { angle: 1 }) ? Math.PI : Infinity;
  const positive = [...steps, ...counts].filter((x) => x <= most);
  return [...new Set([...positive.map((x) => -x), 0, ...positive])].sort((a, b) => a - b);
}

/** Size of the input in the first example that states it; 0 where none does. */
function typical(sheet: Sheet, input: string): number {
  const declared = sheet.inputs[input]!;
  for (const text of [...sheet.examples.map((e) => e.given[input]), 'usual' in declared ? declared.usual : undefined]) {
    if (typeof text !== 'string' || !isQuantity(declared)) continue;
    const read = readQuantity(text, declared.unit);
    if (read.ok && read.quantity.si !== 0) return Math.abs(read.quantity.si);
  }
  return 0;
}
