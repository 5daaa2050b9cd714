import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import type { InputValue, InputValues } from '../../calc/inputs.js';
import { hasColumns, isChoice } from '../../calc/inputs.js';
import { typedName } from '../../calc/names.js';
import type { SeriesInput, Sheet } from '../../calc/sheet.js';
import type { Value } from '../../calc/value.js';
import { didYouMean } from '../../platform/near.js';
import { UsageError } from '../../platform/usage.js';
import { readQuantity } from '../../units/quantity.js';
import { inUnit } from '../text/calc-text.js';

/**
 * Reads `name=value` arguments as the inputs of a sheet. A row of a series is written in the order of its columns,
 * `parts=20kg,1.2m`, once for each row, or taken from a CSV file with the names of the columns in its first line,
 * `parts=@parts.csv`.
 *
 * @throws UsageError that names all that cannot be read
 */
export function readInputs(sheet: Sheet, args: readonly string[]): InputValues {
  const problems: string[] = [];
  const inputs: Record<string, InputValue> = {};
  for (const arg of args) {
    try {
      take(sheet, inputs, arg);
    } catch (error) {
      if (!(error instanceof UsageError)) throw error;
      problems.push(error.message);
    }
  }
  if (problems.length > 0) throw new UsageError(problems.join('\n'));
  return inputs;
}

function take(sheet: Sheet, inputs: Record<string, InputValue>, arg: string): void {
  const equals = arg.indexOf('=');
  if (equals < 1) throw new UsageError(`found “${arg}”, expected name=value, such as ${exampleOf(sheet)}`);
  const [typed, text] = [arg.slice(0, equals), arg.slice(equals + 1).trim()];
  const name = named(Object.keys(sheet.inputs), typed, 'input', sheet);
  const input = sheet.inputs[name]!;
  if (hasColumns(input)) {
    const rows = text.startsWith('@')
      ? readTable(input, typed, text.slice(1))
      : [readRow(input, typed, inList(text), rowsOf(inputs[name]).length)];
    inputs[name] = [...rowsOf(inputs[name]), ...rows];
    return;
  }
  if (inputs[name] !== undefined) throw new UsageError(`${typed} is given twice`);
  if (!isChoice(input)) inputs[name] = quantity(text, input.unit, typed, typed);
  else if (Object.hasOwn(input.choices, text)) inputs[name] = text;
  else
    throw new UsageError(
      `${typed}: found “${text}”, expected one of ${Object.keys(input.choices).join(', ')}; ${didYouMean(text, Object.keys(input.choices))}`,
    );
}

/** The declared name that was typed. @throws UsageError with the nearest one */
export function named(names: readonly string[], typed: string, what: 'input' | 'result', sheet: Sheet): string {
  const found = names.find((name) => typedName(name) === typed);
  if (found === undefined)
    throw new UsageError(
      `found the ${what} “${typed}”, expected one of those of sheet ${sheet.id}; ${didYouMean(typed, names.map(typedName))}`,
    );
  return found;
}

/** A number as typed. One without ± is taken as exact. @throws UsageError with what fits */
export function quantity(text: string, unit: string, where: string, source: string): Value {
  const read = readQuantity(text, unit);
  if (!read.ok)
    throw new UsageError(
      `${where}: found ${read.problem.found}, expected ${read.problem.expected}; ${read.problem.hint}`,
    );
  const { si, unit: shown, expanded } = read.quantity;
  return {
    si,
    unit: shown,
    parts: new Map(expanded === undefined ? [] : [[source, expanded]]),
    assumed: new Set(),
    origin: { kind: 'given', text },
  };
}

function rowsOf(value: InputValue | undefined): Readonly<Record<string, Value>>[] {
  return Array.isArray(value) ? [...value] : [];
}

function readRow(input: SeriesInput, typed: string, cells: readonly string[], index: number): Record<string, Value> {
  const columns = Object.entries(input.columns);
  const form = columns.map(([name, c]) => `${typedName(name)} (${c.unit})`).join(', ');
  if (cells.length !== columns.length)
    throw new UsageError(
      `${typed}: found ${cells.length} values in row ${index + 1}, expected ${columns.length}: ${form}`,
    );
  return Object.fromEntries(
    columns.map(([name, { unit }], i) => [
      name,
      quantity(
        cells[i]!,
        unit,
        `${typed}, row ${index + 1}, ${typedName(name)}`,
        `${typed}[${index + 1}].${typedName(name)}`,
      ),
    ]),
  );
}

/** Commas within brackets belong to a list of readings. */
function inList(text: string): string[] {
  return text.split(/,(?![^[\]]*\])/).map((cell) => cell.trim());
}

function readTable(input: SeriesInput, typed: string, file: string): Record<string, Value>[] {
  let rows: string[][];
  try {
    rows = parse(readFileSync(file, 'utf8'), {
      bom: true,
      trim: true,
      skip_empty_lines: true,
      delimiter: [',', ';', '\t'],
    });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new UsageError(`${typed}: ${file} cannot be read: ${code === 'ENOENT' ? 'there is no such file' : message}`);
  }
  const [head = [], ...body] = rows;
  const wanted = Object.keys(input.columns).map(typedName);
  const places = wanted.map((name) => head.indexOf(name));
  const lacking = wanted.filter((_, i) => places[i] === -1);
  if (lacking.length > 0)
    throw new UsageError(
      `${typed}: found the columns ${head.join(', ') || 'none'} in ${file}, expected ${wanted.join(', ')}; name them in the first line`,
    );
  return body.map((cells, i) =>
    readRow(
      input,
      typed,
      places.map((place) => cells[place] ?? ''),
      i,
    ),
  );
}

function exampleOf(sheet: Sheet): string {
  const [name, input] = Object.entries(sheet.inputs)[0]!;
  if (hasColumns(input))
    return `${typedName(name)}=${Object.values(input.columns)
      .map((c) => `…${c.unit}`)
      .join(',')}`;
  return `${typedName(name)}=${isChoice(input) ? Object.keys(input.choices)[0] : `…${input.unit}`}`;
}

/** @throws UsageError that names every input that is wanted and was not given */
export function wantAll(sheet: Sheet, inputs: InputValues): void {
  const lacking = Object.entries(sheet.inputs).filter(
    ([name, input]) => inputs[name] === undefined && !('optional' in input && input.optional),
  );
  if (lacking.length === 0) return;
  const names = lacking.map(
    ([name, input]) => `  ${typedName(name)}${'unit' in input ? inUnit(input.unit) : ''}: ${input.says}`,
  );
  throw new UsageError(`not given, of sheet ${sheet.id}:\n${names.join('\n')}`);
}
