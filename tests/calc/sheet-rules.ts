import { describe, expect, it } from 'vitest';
import { isQuantity } from '../../src/calc/inputs.js';
import { type InputValue, type InputValues, type Run, run } from '../../src/calc/run.js';
import type { Example, Input, Sheet } from '../../src/calc/sheet.js';
import { exactly } from '../../src/calc/value.js';
import { type Quantity, readQuantity } from '../../src/units/quantity.js';
import { toUnit } from '../../src/units/unit.js';

/** A quantity that a test itself writes. @throws Error if it cannot be read */
export function quantity(text: string, fits: string): Quantity {
  const read = readQuantity(text, fits);
  if (!read.ok) throw new Error(`${text}: expected ${read.problem.expected}`);
  return read.quantity;
}

/** Works a sheet through with inputs as they are typed; what is left out takes its usual value. */
export function work(sheet: Sheet, given: Example['given']): Run {
  return run('test', sheet, typed(sheet, given));
}

/** One result in the unit of the sheet. @throws Error with the reason where there is none */
export function result(sheet: Sheet, given: Example['given'], name: string): number {
  const done = work(sheet, given);
  const value = done.results?.[name];
  if (!value) throw new Error(done.outOfRange ?? `no result ${name}`);
  return toUnit(value.si, sheet.results[name]!.unit);
}

function typed(sheet: Sheet, given: Example['given']): InputValues {
  const one = (text: string, unit: string) => exactly(quantity(text, unit).si, unit, text);
  const value = (input: Input, name: string): InputValue | undefined => {
    const text = given[name] ?? ('usual' in input ? input.usual : undefined);
    if (text === undefined) return undefined;
    if ('columns' in input) {
      const rows = text as readonly Readonly<Record<string, string>>[];
      return rows.map((row) =>
        Object.fromEntries(Object.entries(input.columns).map(([c, { unit }]) => [c, one(row[c]!, unit)])),
      );
    }
    return isQuantity(input) ? one(text as string, input.unit) : (text as string);
  };
  return Object.fromEntries(Object.entries(sheet.inputs).map(([name, input]) => [name, value(input, name)]));
}

/** What holds for every sheet of a subject, whatever it calculates. */
export function sheetRules(sheets: readonly Sheet[]): void {
  it('has ids that are unique and stable in form', () => {
    const ids = sheets.map((s) => s.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  describe.each(sheets.map((s) => [s.id, s] as const))('%s', (_, sheet) => {
    it('declares every @name of its formulas before it is used', () => {
      const known = new Set(Object.keys(sheet.inputs).filter((n) => !('choices' in sheet.inputs[n]!)));
      for (const [name, result] of Object.entries(sheet.results)) {
        for (const [, used] of (result.tex ?? '').matchAll(/@(\w+)/g))
          expect(known, `${name} uses @${used}`).toContain(used);
        known.add(name);
      }
    });

    it('names units that can be read', () => {
      const units = [
        ...Object.values(sheet.inputs).flatMap((i) =>
          'unit' in i ? [i.unit] : 'columns' in i ? Object.values(i.columns).map((c) => c.unit) : [],
        ),
        ...Object.values(sheet.results).map((r) => r.unit),
      ];
      for (const u of units) expect(readQuantity(u === '1' ? '1' : `1 ${u}`, u).ok, u).toBe(true);
    });

    it('says how each result is found, where its formula does not', () => {
      const silent = Object.values(sheet.results).filter((r) => r.tex === undefined && r.step === undefined);
      if (silent.length > 0) expect(sheet.method ?? '').not.toBe('');
    });

    it('rests on sources with a basis', () => {
      expect(sheet.sources.length).toBeGreaterThan(0);
      for (const s of [...sheet.sources, ...sheet.examples.map((e) => e.source)]) {
        expect(['published', 'quoted', 'practice', 'memory', 'derived']).toContain(s.basis);
        expect(s.document).not.toBe('');
      }
    });

    it.each(sheet.examples.map((e) => [`${e.source.document} (${e.source.basis})`, e] as const))(
      'agrees with %s',
      (_, example) => {
        const done = work(sheet, example.given);
        expect(done.outOfRange).toBeUndefined();
        for (const [name, printed] of Object.entries(example.gives)) {
          const declared = sheet.results[name];
          expect(declared, name).toBeDefined();
          const wanted = quantity(printed, declared!.unit);
          const found = done.results![name]!.si;
          const error = Math.abs(found - wanted.si);
          expect(error, `${name}: found ${found}, printed ${printed} (${wanted.si})`).toBeLessThanOrEqual(
            wanted.halfDigit * (1 + 1e-9),
          );
        }
      },
    );

    it('gives a reason, in words, for inputs that it cannot answer', () => {
      for (const v of sheet.validity) expect(v.says).toMatch(/\w+ \w+/);
      const onlyChoices = Object.values(sheet.inputs).every((i) => 'choices' in i);
      const zeroed = Object.fromEntries(
        Object.entries(sheet.inputs).map(([name, input]) => [
          name,
          'unit' in input
            ? exactly(0, input.unit)
            : 'choices' in input
              ? onlyChoices
                ? 'none of them'
                : Object.keys(input.choices)[0]
              : [],
        ]),
      ) as InputValues;
      const done = run('zero', sheet, zeroed);
      expect(done.outOfRange ?? '').toMatch(/\w+ \w+/);
    });
  });
}
