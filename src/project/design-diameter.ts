import { readQuantity } from '../units/quantity.js';
import { toUnit } from '../units/unit.js';
import type { Tyre } from './designations/tyre.js';
import type { Designated, Measured } from './fields.js';

/** The overall diameter that a tyre size stands for. It is the design size of the standards, a whole number of millimetres and exact as such. */
export function designDiameter(tyre: Designated<Tyre>): Measured {
  const read = readQuantity(`${toUnit(tyre.overallDiameter, 'mm')} mm`, 'mm');
  if (!read.ok) throw new Error(`no diameter: ${tyre.written}`);
  return { quantity: { ...read.quantity, text: tyre.written, halfDigit: 0 }, as: 'named', at: tyre.at };
}
