import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { hasColumns } from '../../calc/inputs.js';
import type { Run, SeriesValue } from '../../calc/run.js';
import { isSeries } from '../../calc/run.js';
import type { Input, Sheet, Source } from '../../calc/sheet.js';
import { expanded, spread, type Value } from '../../calc/value.js';
import { showQuantity, showToUncertainty } from '../../units/show.js';
import { anchor, capitalised, joined, label } from '../anchors.js';
import { drawingsForRun } from '../drawings/for-run.js';
import { symbolic } from '../formula.js';
import { basisShort } from '../limit-text.js';
import { fieldPointers, originOf } from '../origin.js';
import { outcomeMark } from '../outcome.js';
import type { Subject } from '../subject.js';
import { table } from '../table.js';
import { findingPointer } from './open-items.js';
import { steps } from './steps.js';

/** The runs of one sheet within a note: what the sheet is and rests on stands once, then each run with its numbers. */
export function sheetGroup(runs: readonly [Run, ...Run[]], subject: Subject): Element[] {
  const [first, ...more] = runs;
  const { sheet } = first;
  if (more.length === 0)
    return [
      h('section.sheet', { id: anchor.sheet(first.id) }, [
        h('h4', [h('span.sheet-id', capitalised(label.sheet(first.id))), ' ', sheet.title]),
        about(sheet),
        ...worked(first, subject),
      ]),
    ];
  return [
    h('section.sheet', [h('h4', `${sheet.title}, ${runs.length} times`), about(sheet)]),
    ...runs.map((run) =>
      h('section.sheet.one', { id: anchor.sheet(run.id) }, [
        h('h5', capitalised(label.sheet(run.id))),
        ...worked(run, subject),
      ]),
    ),
  ];
}

/** Purpose, sources, assumptions, method and range. */
function about(sheet: Sheet): Element {
  const entries: [string, string | undefined][] = [
    ['Purpose', sheet.purpose],
    ['Sources', sheet.sources.map(sourceSays).join(' · ')],
    ['Assumed', sheet.assumptions?.join(' ')],
    ['Method', sheet.method],
    ['Holds where', sheet.validity.map((v) => v.says).join('; ') || undefined],
    ['Remark', sheet.remark],
  ];
  return h(
    'dl.about',
    entries.flatMap(([name, text]) => (text ? [h('dt', name), h('dd', text)] : [])),
  );
}

function sourceSays(source: Source): string {
  const basis = source.basis === 'derived' ? 'follows from mechanics or geometry' : basisShort[source.basis];
  return `${[source.document, source.edition, source.clause].filter(Boolean).join(', ')} (${basis})`;
}

/** Inputs, steps, and what the results are compared with. */
function worked(run: Run, subject: Subject): ElementContent[] {
  const findings = subject.evaluation.findings.filter((f) => f.run === run.id);
  return [
    inputsTable(run, subject),
    ...drawingsForRun(run, subject.evaluation.runs),
    ...(run.outOfRange ? [h('p.out-of-range', [h('b', 'No number: '), `${run.outOfRange}.`])] : steps(run)),
    ...(findings.length > 0
      ? [
          h('p.compared', [
            h('b', 'Compared in '),
            ...joined(
              findings.map((f) => h('span', [findingPointer(f), ': ', outcomeMark(f)])),
              '; ',
            ),
            '.',
          ]),
        ]
      : []),
  ];
}

function inputsTable(run: Run, subject: Subject): Element {
  const rows = Object.entries(run.sheet.inputs).flatMap(([name, input]): (string | Element)[][] => {
    const value = run.inputs[name];
    const mark = symbolic(input.symbol);
    if (value === undefined)
      return 'usual' in input ? [[mark, input.says, input.usual ?? '', 'usual value, assumed']] : [];
    if (typeof value === 'string')
      return [[mark, input.says, value, 'choices' in input ? (input.choices[value] ?? '') : '']];
    if (isSeries(value)) return seriesRows(input, value, subject);
    return [[mark, input.says, showQuantity(value.si, value.unit, spread(value)), originOf(value, subject)]];
  });
  return table(
    'inputs',
    `Inputs of ${label.sheet(run.id)}`,
    [
      ['Symbol', 8],
      ['What', 38],
      ['Value', 17],
      ['From', 37],
    ],
    rows,
  );
}

function originsOf(values: readonly Value[], subject: Subject): Element[] {
  const places = values.flatMap(({ origin }) => (origin.kind === 'note' ? [origin.place] : []));
  return places.length === values.length ? fieldPointers(places, subject) : values.map((v) => originOf(v, subject));
}

/** What the columns of a series are, and each of its rows by its number. */
function seriesRows(input: Input, rows: SeriesValue, subject: Subject): (string | Element)[][] {
  const columns = hasColumns(input) ? Object.values(input.columns) : [];
  const head = h('span', [
    `${input.says}: `,
    ...joined(
      columns.map((c) => h('span', [symbolic(c.symbol), ` ${c.says}`])),
      '; ',
    ),
  ]);
  return [
    [h('span', joined(columns.map((c) => symbolic(c.symbol)))), head, `${rows.length} rows`, ''],
    ...rows.map((row, index) => [
      `row ${index + 1}`,
      Object.values(row)
        .map((v) => showToUncertainty(v.si, v.unit, expanded(v)))
        .join(', '),
      '',
      h('span', joined(originsOf(Object.values(row), subject))),
    ]),
  ];
}
