import { h } from 'hastscript';
import type { Element } from 'hast';
import temml from 'temml';
import type { Run } from '../calc/run.js';
import { isSeries } from '../calc/run.js';
import type { Value } from '../calc/value.js';
import { showQuantity } from '../units/show.js';

/** Formulas as MathML. Symbols are ours; no text of a note reaches TeX. */

const placeholder = /@([A-Za-z]\w*)/g;

export function math(tex: string, says: string, display = false): Element {
  const value = temml.renderToString(tex, { displayMode: display, throwOnError: true, annotate: false });
  return h(display ? 'span.math.display' : 'span.math', { role: 'img', ariaLabel: says }, [{ type: 'raw', value } as never]);
}

export const symbol = (tex: string, says: string): Element => math(tex, says);

/** The formula of a step with the symbols of the sheet. */
export function withSymbols(run: Run, result: string): string {
  const { sheet } = run;
  const own = sheet.results[result]!;
  const symbols = (_: string, name: string) => `{${sheet.inputs[name]?.symbol ?? sheet.results[name]?.symbol ?? name}}`;
  return own.tex === undefined ? own.symbol : `${own.symbol} = ${own.tex.replace(placeholder, symbols)}`;
}

/** The same formula with the numbers of the run put in. */
export function withNumbers(run: Run, result: string): string | undefined {
  const { sheet } = run;
  const own = sheet.results[result]!;
  if (own.tex === undefined) return undefined;
  const names = [...own.tex.matchAll(placeholder)].map((m) => m[1]!);
  if (names.some((n) => typeof run.inputs[n] === 'string' || isSeries(run.inputs[n]))) return undefined;
  return `= ${own.tex.replace(placeholder, (_, name: string) => number(valueOf(run, name)))}`;
}

/** An input, an assumed usual value, or an earlier step. */
export function valueOf(run: Run, name: string): Value | undefined {
  const given = run.inputs[name];
  if (given !== undefined && typeof given !== 'string' && !isSeries(given)) return given;
  return run.results?.[name];
}

function number(value: Value | undefined): string {
  if (!value) return '\\text{–}';
  const [figure, ...unit] = showQuantity(value.si, value.unit).split(' ');
  const tex = `${figure!.replace('−', '-').replace(/[×·]10(\S*)/, '\\cdot 10$1')}${unit.length > 0 ? `\\,\\text{${unit.join(' ').replace(/[%#&_$]/g, '\\$&')}}` : ''}`;
  return unit.length > 0 || /^[-−]/.test(figure!) ? `\\left(${tex}\\right)` : `{${tex}}`;
}
