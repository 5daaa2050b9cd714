import { describe, expect, it } from 'vitest';
import { type InputValue, type InputValues, run } from '../../src/calc/run.js';
import type { Sheet } from '../../src/calc/sheet.js';
import { exactly, type Value } from '../../src/calc/value.js';
import { toSI, toUnit } from '../../src/units/unit.js';
import { work } from './sheet-rules.js';

/** Another unit that people write the same quantity in. */
const others: Readonly<Record<string, string>> = {
  mm: 'in',
  m: 'ft',
  mm2: 'in2',
  mm4: 'in4',
  cm3: 'in3',
  kg: 'lb',
  N: 'lbf',
  kN: 'lbf',
  N·m: 'ft·lbf',
  MPa: 'psi',
  GPa: 'ksi',
  deg: 'rad',
  rpm: 'rad/s',
  'rad/s²': 'deg/s²',
  'kg/m³': 'lb/in³',
  'km/h': 'mph',
  'm/s²': 'g_n',
  '%': '1',
  s: 'min',
  '1': '%',
  'mm²': 'in²',
  'mm³': 'in³',
  'mm⁴': 'in⁴',
  in: 'mm',
  '1/in': '1/mm',
  'N/mm': 'lbf/in',
  g: 'oz',
  'dB(A)': 'dB',
};

/** Every sheet gives the same results for its examples when all inputs are written in other units. */
export function unitRules(sheets: readonly Sheet[]): void {
  describe.each(sheets.map((s) => [s.id, s] as const))('%s', (_, sheet) => {
    it.each(sheet.examples.map((e, i) => [i + 1, e] as const))(
      'gives the same in other units (example %i)',
      (_, example) => {
        const plain = work(sheet, example.given);
        const rewritten = (v: Value): Value => {
          const other = others[v.unit];
          if (other === undefined) throw new Error(`no other unit for ${v.unit}`);
          return exactly(toSI(toUnit(v.si, other).toPrecision(14), other), other);
        };
        const inputs = Object.fromEntries(
          Object.entries(plain.inputs).map(([name, value]): [string, InputValue | undefined] => [
            name,
            value === undefined || typeof value === 'string'
              ? value
              : Array.isArray(value)
                ? value.map((row: Record<string, Value>) =>
                    Object.fromEntries(Object.entries(row).map(([k, v]) => [k, rewritten(v)])),
                  )
                : rewritten(value as Value),
          ]),
        ) as InputValues;
        const again = run('other units', sheet, inputs);
        expect(again.outOfRange).toBeUndefined();
        for (const [name, value] of Object.entries(plain.results!)) {
          expect(Math.abs(again.results![name]!.si - value.si), name).toBeLessThanOrEqual(
            1e-7 * Math.max(Math.abs(value.si), 1e-3),
          );
        }
      },
    );
  });
}
