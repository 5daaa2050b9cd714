import { readQuantity } from '../units/quantity.js';
import type { InputValue, InputValues } from './run.js';
import type { Sheet } from './sheet.js';

/** Fills in the usual value of every input that was left out and has one; it is marked as assumed by its origin, and brings the uncertainty written at it. */
export function withUsual(sheet: Sheet, given: InputValues): InputValues {
  const usual = Object.entries(sheet.inputs).flatMap(([name, input]): [string, InputValue][] => {
    if (given[name] !== undefined || !('usual' in input) || input.usual === undefined) return [];
    if ('choices' in input) return [[name, input.usual]];
    const read = readQuantity(input.usual, input.unit);
    if (!read.ok)
      throw new Error(`sheet ${sheet.id}: the usual value of ${name} cannot be read: ${read.problem.found}`);
    const { si, expanded } = read.quantity;
    return [
      [
        name,
        {
          si,
          unit: input.unit,
          parts:
            expanded === undefined ? new Map() : new Map([[input.sharedSource ?? `${sheet.id} ${name}`, expanded]]),
          assumed: new Set(),
          origin: { kind: 'usual', text: input.usual },
        },
      ],
    ];
  });
  return { ...given, ...Object.fromEntries(usual) };
}
