import { type InputValue, isChoice, isSeries, valuesOf } from '../../calc/inputs.js';
import type { MonteCarlo } from '../../calc/monte-carlo.js';
import { typedName } from '../../calc/names.js';
import { plainTex } from '../../calc/plain-tex.js';
import type { Run } from '../../calc/run.js';
import type { Input, Sheet, Source } from '../../calc/sheet.js';
import { expanded, spread, type Value } from '../../calc/value.js';
import { basisSays } from '../../checks/codes/limit.js';
import { showNumber, showQuantity } from '../../units/show.js';
import { unit } from '../../units/unit.js';
import { wrap } from '../terminal/wrap.js';

/** A sheet worked through, as plain text in the order of the document: inputs, formulas, numbers, results, sources. */
export function runText(run: Run, width: number): string {
  const { sheet } = run;
  const lines = [
    `${sheet.title} (${sheet.id})`,
    ...wrap(sheet.purpose, width, ''),
    '',
    'Inputs',
    ...Object.entries(sheet.inputs).flatMap(([name, input]) => inputLines(name, input, run.inputs[name])),
    '',
    ...(run.results
      ? Object.keys(sheet.results).flatMap((name) => resultLines(run, name, width))
      : [`No number: ${run.outOfRange}.`, '']),
    ...uncertaintyLines(run, width),
    ...restsText(sheet, width),
    '',
  ];
  return lines.join('\n');
}

function inputLines(name: string, input: Input, value: InputValue | undefined): string[] {
  const head = `  ${typedName(name).padEnd(18)}`;
  if (value === undefined) return [];
  if (typeof value === 'string') return [`${head} ${value}${isChoice(input) ? `: ${input.choices[value]}` : ''}`];
  if (isSeries(value))
    return value.map(
      (row, i) => `${i === 0 ? head : ' '.repeat(head.length)} ${Object.values(row).map(shown).join(', ')}`,
    );
  const one = value as Value;
  return [
    `${head} ${plainTex(input.symbol)} = ${shown(one)}${one.origin.kind === 'usual' ? '   usual value, assumed' : ''}`,
  ];
}

function resultLines(run: Run, name: string, width: number): string[] {
  const result = run.sheet.results[name]!;
  const symbol = plainTex(result.symbol);
  const margin = ' '.repeat(symbol.length + 2);
  const formulas = result.tex === undefined ? [] : [filled(run, result.tex, symbolOf), ...numbersIn(run, result.tex)];
  const value = showQuantity(run.results![name]!.si, result.unit, spread(run.results![name]!));
  const equals = [...formulas, value].flatMap((text, i) =>
    wrap(text, width - margin.length - 3, '').map(
      (line, k) => `${i === 0 && k === 0 ? `  ${symbol}` : margin}${k === 0 ? ' = ' : '   '}${line}`,
    ),
  );
  return [...wrap(`${typedName(name)}: ${result.says}`, width, ''), ...equals, ''];
}

function numbersIn(run: Run, tex: string): string[] {
  const names = [...tex.matchAll(PLACE)].map((m) => m[1]!);
  return names.length === 0 || names.some((name) => valueIn(run, name) === undefined)
    ? []
    : [filled(run, tex, numberOf)];
}

const PLACE = /@([A-Za-z]\w*)/g;

function filled(run: Run, tex: string, by: (run: Run, name: string) => string): string {
  return plainTex(tex.replaceAll(PLACE, (_, name: string) => `{${by(run, name)}}`));
}

function symbolOf({ sheet }: Run, name: string): string {
  return sheet.inputs[name]?.symbol ?? sheet.results[name]?.symbol ?? name;
}

function numberOf(run: Run, name: string): string {
  const value = valueIn(run, name)!;
  return showQuantity(value.si, value.unit).replace(/^−.*/, '($&)').replaceAll('%', '\\%');
}

function valueIn(run: Run, name: string): Value | undefined {
  const given = run.inputs[name];
  return given !== undefined && typeof given !== 'string' && !isSeries(given) ? (given as Value) : run.results?.[name];
}

/** The unit behind a name, in brackets; nothing for a bare number. */
export const inUnit = (text: string) => (text === '1' ? '' : ` (${unit(text).text})`);

const shown = (value: Value) => showQuantity(value.si, value.unit, spread(value));

function uncertaintyLines(run: Run, width: number): string[] {
  if (!run.results) return [];
  const lines = Object.entries(run.sheet.results).flatMap(([name, result]) => {
    const [first] = run.shares[name] ?? [];
    if (result.step || !first || expanded(run.results![name]!) === 0) return [];
    const how =
      run.methods[name] === 'monte-carlo'
        ? '; by Monte Carlo, because the sheet is not straight within the uncertainty of its inputs'
        : '';
    return wrap(
      `${typedName(name)}: ${first.source} brings ${showNumber(first.share * 100, { digits: 2 })} % of the squared uncertainty${how}.`,
      width,
      '  ',
    );
  });
  if (lines.length === 0) return ['No uncertainty was given: the inputs are taken as exact.', ''];
  return ['Uncertainty (expanded, k = 2)', ...lines, ...exactLines(run, width), ''];
}

function exactLines({ inputs }: Run, width: number): string[] {
  const isExact = (value: InputValue | undefined) =>
    value !== undefined && typeof value !== 'string' && valuesOf({ value }).every((v) => v.parts.size === 0);
  const names = Object.keys(inputs).filter((name) => isExact(inputs[name]));
  return names.length > 0
    ? wrap(`Taken as exact, since no uncertainty was given: ${names.map(typedName).join(', ')}.`, width, '  ')
    : [];
}

/** What the sheet rests on: method, assumptions, validity, remark, sources. */
export function restsText(sheet: Sheet, width: number): string[] {
  const part = (title: string, text: string | undefined) => (text ? wrap(`${title} ${text}`, width, '') : []);
  return [
    ...part('Method.', sheet.method),
    ...part('Assumed.', sheet.assumptions?.join(' ')),
    ...part('Range of validity:', `${sheet.validity.map((v) => v.says).join('; ')}.`),
    ...part('Remark.', sheet.remark),
    ...sheet.sources.flatMap((source) => part('Source.', sourceText(source))),
  ];
}

function sourceText(source: Source): string {
  const basis = source.basis === 'derived' ? 'follows from mechanics or geometry' : basisSays[source.basis];
  return `${[source.document, source.edition, source.clause].filter(Boolean).join(', ')} (${basis}).`;
}

/** The second opinion of Monte Carlo beside what the sheet prints. */
export function monteCarloText(run: Run, { trials, lost, results }: MonteCarlo): string {
  const lines = Object.entries(run.sheet.results).flatMap(([name, result]) => {
    const spread = results[name]!;
    if (result.step) return [];
    const [low, high] = spread.shortest.map((x) => showQuantity(x, result.unit));
    return [
      `  ${typedName(name)} = ${showQuantity(spread.value, result.unit, spread.expanded)}, mean ${showQuantity(spread.mean, result.unit)}, shortest interval from ${low} to ${high}`,
    ];
  });
  return [
    `Monte Carlo, ${trials} trials${lost > 0 ? `, ${lost} of them without a number` : ''}; intervals hold 95.45 %`,
    ...lines,
    '',
    '',
  ].join('\n');
}
