import fc from 'fast-check';
import { expect } from 'vitest';
import type { Read } from '../../../src/project/designations/reading.js';

/** What holds for every reader: no text makes it throw, problems point inside the text, and what it prints it reads again. */
export function laws(read: (text: string) => Read<{ text: string }>, pieces: readonly string[]): void {
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 120 }),
    fc
      .array(fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...pieces) }, fc.string({ maxLength: 2 })), {
        maxLength: 12,
      })
      .map((p) => p.join('')),
  );
  fc.assert(
    fc.property(text, (t) => {
      const result = read(t);
      if (result.ok) {
        const again = read(result.text);
        expect(again).toMatchObject({ ok: true, text: result.text });
        return;
      }
      const { at, found, expected, hint } = result.problem;
      expect(0 <= at[0] && at[0] <= at[1] && at[1] <= t.length).toBe(true);
      for (const part of [found, expected, hint]) expect(part.length).toBeGreaterThan(0);
    }),
    { numRuns: 2000 },
  );
}

/** The value, or an error with the problem. */
export function value<T>(result: Read<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result;
}

/** The problem, or an error with the value. */
export function problem<T>(result: Read<T>) {
  if (result.ok) throw new Error(JSON.stringify(result));
  return result.problem;
}
