import type { Element } from 'hast';
import { h } from 'hastscript';
import temml from 'temml';
import { plainTex } from '../calc/plain-tex.js';
import type { Run } from '../calc/run.js';
import { isSeries } from '../calc/run.js';
import { expanded, type Value } from '../calc/value.js';
import { showToUncertainty } from '../units/show.js';

/** Formulas as MathML. Symbols are ours; no text of a note reaches TeX. */

const placeholder = /@([A-Za-z]\w*)/g;

/** A formula with the symbols of a sheet: there are only so many of them, and each is written once. */
export function symbolic(tex: string): Element {
  const written = known.get(tex) ?? math(tex);
  known.set(tex, written);
  return structuredClone(written);
}
const known = new Map<string, Element>();

/** A formula that breaks between its terms where the line ends; `says` is what is read aloud. */
export function math(tex: string, says: string = plainTex(tex)): Element {
  const value = temml.renderToString(tex, { throwOnError: true, annotate: false, wrap: 'tex' });
  return h('span.math', { role: 'img', ariaLabel: says }, [{ type: 'raw', value } as never]);
}

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
  if (names.length === 0 || names.some((n) => typeof run.inputs[n] === 'string' || isSeries(run.inputs[n])))
    return undefined;
  return `= ${own.tex.replace(placeholder, (placed: string, name: string, at: number, whole: string) => number(valueOf(run, name), whole.slice(0, at), whole.slice(at + placed.length)))}`;
}

/** Numbers put in: as a formula where it is short, else on a line of text, which can break anywhere. */
export function numbersLine(tex: string): Element {
  const text = plainTex(tex);
  return text.length <= longest ? math(tex, text) : h('span.numbers', text);
}
const longest = 48;

/** An input, an assumed usual value, or an earlier step. */
export function valueOf(run: Run, name: string): Value | undefined {
  const given = run.inputs[name];
  if (given !== undefined && typeof given !== 'string' && !isSeries(given)) return given;
  return run.results?.[name];
}

/** After these a number with its unit needs no brackets. */
const opens = /(?:^|[{([|,+=<>/&-]|\\(?:cdot|times|pm|lt|gt|leq?|geq?|left[([|.]|lvert|[,;! ]))\s*$/;

function number(value: Value | undefined, before: string, after: string): string {
  if (!value) return '\\text{–}';
  const [figure, ...unit] = showToUncertainty(value.si, value.unit, expanded(value)).split(' ');
  const tex = `${figure!.replace('−', '-').replace(/[×·]10(\S*)/, '\\cdot 10$1')}${unit.length > 0 ? `\\,\\text{${unit.join(' ').replace(/[%#&_$]/g, '\\$&')}}` : ''}`;
  const negative = /^[-−]/.test(figure!);
  const apart = negative || !opens.test(before) || (unit.length > 0 && /^\s*\}?\s*\^/.test(after));
  return apart ? `\\left(${tex}\\right)` : `{${tex}}`;
}
