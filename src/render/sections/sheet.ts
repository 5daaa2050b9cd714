import { h } from 'hastscript';
import type { Element, ElementContent } from 'hast';
import type { Run, SeriesValue } from '../../calc/run.js';
import { isSeries } from '../../calc/run.js';
import type { Source } from '../../calc/sheet.js';
import { expanded, type Value } from '../../calc/value.js';
import { basisSays } from '../../checks/limit.js';
import { showNumber, showQuantity } from '../../units/show.js';
import { anchor } from '../anchors.js';
import { math, symbol, withNumbers, withSymbols } from '../formula.js';
import { originOf } from '../origin.js';
import type { Subject } from '../subject.js';
import { table } from '../table.js';

/** A calculation sheet: purpose, inputs with where they come from, assumptions, steps, result, what it rests on. */
export function sheetSection(run: Run, subject: Subject): Element {
  const { sheet } = run;
  return h('section.sheet', { id: anchor.sheet(run.id) }, [
    h('h4', [`Sheet ${run.id}`, h('span.sheet-title', `: ${sheet.title}`)]),
    h('p', sheet.purpose),
    inputsTable(run, subject),
    ...(sheet.assumptions?.length ? [h('p.assumptions', [h('b', 'Assumed. '), sheet.assumptions.join(' ')])] : []),
    ...(run.outOfRange ? [h('p.out-of-range', [h('b', 'No number: '), `${run.outOfRange}.`])] : [steps(run)]),
    ...(sheet.method ? [h('p', [h('b', 'Method. '), sheet.method])] : []),
    h('p.validity', [h('b', 'Holds where '), `${sheet.validity.map((v) => v.says).join('; ')}.`]),
    ...(sheet.remark ? [h('p.remark', [h('b', 'Remark. '), sheet.remark])] : []),
    h('p.sources', [h('b', 'Sources. '), sheet.sources.map(sourceSays).join(' · ')]),
  ]);
}

export function sourceSays(source: Source): string {
  const basis = source.basis === 'derived' ? 'follows from mechanics or geometry' : basisSays[source.basis];
  return [source.document, source.edition, source.clause].filter(Boolean).join(', ') + ` (${basis})`;
}

function inputsTable(run: Run, subject: Subject): Element {
  const rows = Object.entries(run.sheet.inputs).flatMap(([name, input]): (string | Element)[][] => {
    const value = run.inputs[name];
    const mark = symbol(input.symbol, input.says);
    if (value === undefined) return 'usual' in input ? [[mark, input.says, input.usual ?? '', 'usual value, assumed']] : [];
    if (typeof value === 'string') return [[mark, input.says, value, 'choices' in input ? (input.choices[value] ?? '') : '']];
    if (isSeries(value)) return [[mark, input.says, h('span', seriesText(value)), `${value.length} rows`]];
    const one = value as Value;
    return [[mark, input.says, showQuantity(one.si, one.unit, expanded(one)), originOf(one, subject)]];
  });
  return table('inputs', `Inputs of ${run.id}`, ['Symbol', 'What', 'Value', 'From'], rows as ElementContent[][]);
}

function seriesText(rows: SeriesValue): string {
  return rows.map((row) => Object.values(row).map((v) => showQuantity(v.si, v.unit)).join(', ')).join('; ');
}

function steps(run: Run): Element {
  return h(
    'div.steps',
    Object.entries(run.sheet.results).map(([name, result]) => {
      const value = run.results?.[name];
      if (!value) return '';
      const numbers = withNumbers(run, name);
      const u = expanded(value);
      const shown = showQuantity(value.si, result.unit, u);
      const share = run.shares[name]?.[0];
      return h('div', { className: result.step ? ['step'] : ['step', 'result'] }, [
        h('p.step-says', `${result.says}`),
        h('p.step-formula', [math(withSymbols(run, name), `${result.says}: formula`, true), ...(numbers ? [math(numbers, `${result.says}: numbers put in`, true)] : []), h('span.step-value', [`= ${shown}`])]),
        ...(!result.step && share && u > 0 ? [h('p.share', `Largest share of the uncertainty: ${sourceName(share.source)}, ${showNumber(share.share * 100, { digits: 2 })} %.`)] : []),
      ]);
    }),
  );
}

/** `builds/x/notes/030-driveline.md#shaft.length` is `shaft.length (030-driveline)` for people. */
function sourceName(source: string): string {
  const [file, path] = source.split('#');
  return path === undefined ? source : `${path} (${file!.split('/').at(-1)!.replace(/\.md$/, '')})`;
}
