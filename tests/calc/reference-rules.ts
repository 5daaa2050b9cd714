import { describe, expect, it } from 'vitest';
import type { Example, Sheet } from '../../src/calc/sheet.js';
import { quantity, work } from './sheet-rules.js';

/** Published values of a subject, and those that were found wrong and are not used. */
export interface Reference {
  values: readonly (Example & { sheet: string })[];
  rejected: readonly { printed: string; source: string; because: string }[];
}

/** Every published value is met to within half its last printed digit. */
export function referenceRules(sheets: readonly Sheet[], { values }: Reference): void {
  const named = values.map(
    (v) => [`${v.sheet} ${JSON.stringify(v.given)}, ${v.source.document} (${v.source.basis})`, v] as const,
  );
  describe.each(named)('%s', (_, { sheet: id, given, gives }) => {
    it.each(Object.entries(gives))('gives %s = %s', (name, printed) => {
      const sheet = sheets.find((s) => s.id === id)!;
      const done = work(sheet, given);
      expect(done.outOfRange).toBeUndefined();
      const wanted = quantity(printed, sheet.results[name]!.unit);
      expect(Math.abs(done.results![name]!.si - wanted.si)).toBeLessThanOrEqual(wanted.halfDigit * (1 + 1e-9));
    });
  });
}
