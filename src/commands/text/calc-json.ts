import { type InputValue, isSeries } from '../../calc/inputs.js';
import { typedName } from '../../calc/names.js';
import type { Run } from '../../calc/run.js';
import type { Sheet } from '../../calc/sheet.js';
import { expanded, type Value } from '../../calc/value.js';
import { jsonText } from '../../platform/json-text.js';
import { jsonForm } from '../../project/format.js';
import { toUnit } from '../../units/unit.js';

/** What sheets want and give, for programs that offer them. */
export function sheetsJson(sheets: readonly Sheet[]) {
  const describe = ({ id, subject, title, purpose, inputs, results, validity, sources }: Sheet) => ({
    sheet: id,
    subject,
    title,
    purpose,
    inputs: renamed(inputs, (input) =>
      'columns' in input ? { ...input, columns: renamed(input.columns, (column) => column) } : input,
    ),
    results: renamed(results, ({ symbol, unit, says, step }) => ({ symbol, unit, says, step })),
    validity: validity.map((v) => v.says),
    sources,
  });
  return { form: jsonForm('sheets'), sheets: sheets.map(describe) };
}

/** The stable, documented form of one sheet worked through; numbers stand in the unit named beside them. */
export function runJson(run: Run) {
  const { sheet } = run;
  return {
    form: jsonForm('calc'),
    sheet: sheet.id,
    subject: sheet.subject,
    title: sheet.title,
    inputs: renamed(run.inputs, inputJson),
    results:
      run.results &&
      renamed(run.results, (value, name) => ({
        ...valueJson(value),
        says: sheet.results[name]!.says,
        step: sheet.results[name]!.step,
        method: run.methods[name],
      })),
    noNumber: run.outOfRange,
    shares: renamed(run.shares, (shares) => shares.map(({ source, share }) => ({ source, share: plain(share) }))),
    method: sheet.method,
    assumptions: sheet.assumptions,
    validity: sheet.validity.map((v) => v.says),
    remark: sheet.remark,
    sources: sheet.sources,
  };
}

function renamed<T, U>(
  of: Readonly<Record<string, T>>,
  by: (value: NonNullable<T>, name: string) => U,
): Record<string, U> {
  return Object.fromEntries(
    Object.entries(of).flatMap(([name, value]) =>
      value === undefined || value === null ? [] : [[typedName(name), by(value, name)]],
    ),
  );
}

function inputJson(value: InputValue) {
  if (typeof value === 'string') return value;
  if (isSeries(value)) return value.map((row) => renamed(row, valueJson));
  return valueJson(value as Value);
}

function valueJson(value: Value) {
  const U = expanded(value);
  return {
    value: plain(toUnit(value.si, value.unit)),
    unit: value.unit,
    expandedUncertainty: U === 0 ? undefined : plain(toUnit(value.si + U, value.unit) - toUnit(value.si, value.unit)),
    interval: value.interval && [value.interval.low, value.interval.high].map((end) => plain(toUnit(end, value.unit))),
    usual: value.origin.kind === 'usual' || undefined,
  };
}

/** Twelve digits: more are the noise of binary fractions. */
const plain = (x: number): number => Number(x.toPrecision(12));

export const json = (of: unknown): string => `${jsonText(of)}\n`;
