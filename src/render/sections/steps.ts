import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Run } from '../../calc/run.js';
import { expanded, spread } from '../../calc/value.js';
import { showNumber, showQuantity } from '../../units/show.js';
import { joined } from '../anchors.js';
import { numbersLine, symbolic, withNumbers, withSymbols } from '../formula.js';
import { grouped } from '../grouped.js';
import { fieldOf } from '../origin.js';

/** Each step: what it is, symbols, numbers put in, result ± U; on one line where it fits. */
export function steps(run: Run): Element[] {
  const lines = Object.entries(run.sheet.results).flatMap(([name, result]) => {
    const value = run.results?.[name];
    if (!value) return [];
    const numbers = withNumbers(run, name);
    return [
      h('div', { className: result.step ? ['step'] : ['step', 'result'] }, [
        h('span.step-says', result.says),
        ' ',
        h('span.step-formula', [symbolic(withSymbols(run, name)), ...(numbers ? [' ', numbersLine(numbers)] : [])]),
        ' ',
        h('span.step-value', `= ${showQuantity(value.si, result.unit, spread(value))}`),
      ]),
    ];
  });
  return [h('div.steps', lines), ...uncertainty(run)];
}

/** Which source brings most of the uncertainty of each result, and which results were carried through by simulation. */
function uncertainty(run: Run): Element[] {
  const results = Object.entries(run.sheet.results).flatMap(([name, result]) => {
    const value = run.results?.[name];
    const largest = run.shares[name]?.[0];
    return result.step || !value || !largest || expanded(value) === 0
      ? []
      : [{ name, symbol: result.symbol, ...largest }];
  });
  if (results.length === 0) return [];
  const simulated = results.filter((r) => run.methods[r.name] === 'monte-carlo');
  return [
    h('p.shares', [
      h('b', 'U comes mostly from '),
      ...joined(
        grouped(results, (r) => r.source).map((group) =>
          h('span', [
            h('code', fieldOf(group[0].source)),
            ': ',
            ...joined(
              grouped(group, percent).map((alike) =>
                h('span', [`${percent(alike[0])} of `, ...joined(alike.map((r) => symbolic(r.symbol)))]),
              ),
            ),
          ]),
        ),
        '; ',
      ),
      '.',
      ...(simulated.length > 0
        ? [' Carried through by simulation: ', ...joined(simulated.map((r) => symbolic(r.symbol))), '.']
        : []),
    ]),
  ];
}

const percent = ({ share }: { share: number }): string => `${showNumber(share * 100, { digits: 2 })} %`;
