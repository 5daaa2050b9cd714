import fc from 'fast-check';
import { expect } from 'vitest';
import type { Example, Sheet } from '../../src/calc/sheet.js';
import { result } from './sheet-rules.js';

/** A result rises, or falls, with one input over a range, everything else as given. */
export function monotonic(
  sheet: Sheet,
  given: Example['given'],
  input: string,
  of: { from: number; to: number; unit: string; result: string; rises: boolean },
): void {
  const at = (x: number) => result(sheet, { ...given, [input]: `${x} ${of.unit === '1' ? '' : of.unit}` }, of.result);
  const number = fc.double({ min: of.from, max: of.to, noNaN: true }).map((x) => Number(x.toFixed(6)));
  fc.assert(
    fc.property(number, number, (a, b) => {
      const [low, high] = a < b ? [a, b] : [b, a];
      fc.pre(high - low > 1e-3 * (of.to - of.from));
      const [one, two] = [at(low), at(high)];
      expect(
        of.rises ? two > one : two < one,
        `${input} from ${low} to ${high}: ${of.result} from ${one} to ${two}`,
      ).toBe(true);
    }),
    { numRuns: 40 },
  );
}
