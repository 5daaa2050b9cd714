import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Sheet } from '../../src/calc/sheet.js';
import { math, withNumbers, withSymbols } from '../../src/render/formula.js';
import { work } from './sheet-rules.js';

/** Rewrites a formula line as an expression that mathjs reads; undefined where it holds a sum, cases or words. */
function asExpression(tex: string): string | undefined {
  let text = tex
    .replaceAll(/\\(sin|cos|tan)\^(\d) ?@(\w+)/g, '(\\$1 @$3)^$2')
    .replaceAll(/\\[ ,]/g, ' ')
    .replaceAll(/\\left\[/g, '(')
    .replaceAll(/\\right\]/g, ')');
  const group = String.raw`\{((?:[^{}])*)\}`;
  for (let before = ''; before !== text; ) {
    before = text;
    text = text
      .replace(new RegExp(String.raw`\\frac${group}${group}`), '(($1)/($2))')
      .replace(new RegExp(String.raw`\\sqrt${group}`), 'sqrt($1)')
      .replace(new RegExp(String.raw`\^${group}`), '^($1)');
  }
  text = text
    .replaceAll(/\\left\||\\lvert/g, 'abs(')
    .replaceAll(/\\right\||\\rvert/g, ')')
    .replaceAll(/\\left|\\right/g, '')
    .replaceAll('\\cdot', '*')
    .replaceAll('\\arctan', 'atan')
    .replaceAll('\\ln', 'log')
    .replaceAll('\\arccos', 'acos')
    .replaceAll(/\\(pi|sin|cos|tan|min|max|arg)\b/g, '$1')
    .replaceAll(/@(\w+)/g, '(v_$1)');
  return /[\\{}]/.test(text) ? undefined : text;
}

/** Every formula line can be printed, with symbols and with numbers; worked out by an independent reader from the printed TeX, gives what the sheet calculates. */
export function formulaRules(sheets: readonly Sheet[]): void {
  describe.each(sheets.map((s) => [s.id, s] as const))('%s', (_, sheet) => {
    it('names inputs so that they can be typed', () => {
      for (const name of Object.keys(sheet.inputs)) expect(name).toMatch(/^[a-z][a-zA-Z0-9]*$/);
    });

    it.each(sheet.examples.map((e, i) => [i + 1, e] as const))('can be printed (example %i)', (_, example) => {
      const done = work(sheet, example.given);
      for (const name of Object.keys(sheet.results)) {
        for (const tex of [withSymbols(done, name), withNumbers(done, name) ?? '']) {
          expect(tex).not.toContain('@');
          expect(() => math(tex, name)).not.toThrow();
        }
      }
      for (const { symbol } of Object.values(sheet.inputs)) expect(() => math(symbol, symbol)).not.toThrow();
    });

    it.each(sheet.examples.map((e, i) => [i + 1, e] as const))(
      'prints formulas that give its results (example %i)',
      (_, example) => {
        const done = work(sheet, example.given);
        const scope: Record<string, number> = {};
        for (const [name, value] of Object.entries({ ...done.inputs, ...done.results })) {
          if (typeof value === 'object' && 'si' in value) scope[`v_${name}`] = value.si;
        }
        const formulas = Object.entries(sheet.results).flatMap(([name, { tex }]) =>
          tex === undefined ? [] : [[name, tex] as const],
        );
        for (const [name, tex] of formulas) {
          const expression = asExpression(tex);
          if (expression === undefined) {
            expect(
              sheet.method ?? '',
              `${name} has a formula that cannot be evaluated, so the sheet must say its method`,
            ).not.toBe('');
            continue;
          }
          const wanted = evaluate(expression, scope) as number;
          const found = scope[`v_${name}`]!;
          const scale = Math.max(Math.abs(wanted), 1e-15);
          expect(
            Math.abs(found - wanted) / scale,
            `${name}: sheet ${found}, formula ${tex} gives ${wanted}`,
          ).toBeLessThan(1e-5);
        }
      },
    );
  });
}
