import type { InputValues } from '../../calc/inputs.js';
import { typedName } from '../../calc/names.js';
import { type Run, run as workThrough } from '../../calc/run.js';
import type { Sheet } from '../../calc/sheet.js';
import { type Solution, solveFor } from '../../calc/solve.js';
import { exactly } from '../../calc/value.js';
import { UsageError } from '../../platform/usage.js';
import { jsonForm } from '../../project/format.js';
import { showNumber, showQuantity } from '../../units/show.js';
import { toUnit } from '../../units/unit.js';
import { type Exit, exits, type Io } from '../terminal/io.js';
import { json, runJson } from '../text/calc-json.js';
import { runText } from '../text/calc-text.js';
import { named, quantity, wantAll } from './read-inputs.js';

export type Options = { find?: string | undefined; for?: string | undefined; format: string; 'monte-carlo': boolean };

/** Solves a sheet backwards and prints every solution worked through. */
export function solve(
  sheet: Sheet,
  inputs: InputValues,
  given: readonly string[],
  options: Options,
  io: Pick<Io, 'stdout' | 'columns'>,
): Exit {
  if (options.find === undefined || options.for === undefined)
    throw new UsageError('found one of --find and --for, expected both: --find <input> --for <result>=<value>');
  const input = named(Object.keys(sheet.inputs), options.find, 'input', sheet);
  if (given.some((arg) => arg.startsWith(`${options.find}=`)))
    throw new UsageError(`${options.find} is given and sought; leave one out`);
  const [, name, text] = /^([^=]+)=(.+)$/.exec(options.for) ?? [];
  if (name === undefined || text === undefined)
    throw new UsageError(`found --for ${options.for}, expected <result>=<value>`);
  const result = named(Object.keys(sheet.results), name, 'result', sheet);
  wantAll(sheet, { ...inputs, [input]: exactly(0, '1') });
  const target = quantity(text, sheet.results[result]!.unit, name, name).si;
  const solution = solveFor(sheet, inputs, input, result, target);
  const unit = 'unit' in sheet.inputs[input]! ? sheet.inputs[input].unit : '1';
  const runs = solution.roots.map((x) =>
    workThrough(sheet.id, sheet, { ...inputs, [input]: exactly(x, unit, 'solved for') }),
  );
  if (options.format === 'json') io.stdout(json(solutionJson(solution, sheet, input, result, unit, runs)));
  else
    io.stdout(
      [solutionText(solution, sheet, input, result, unit), ...runs.map((r) => runText(r, io.columns ?? 100))].join(
        '\n',
      ),
    );
  return solution.roots.length > 0 ? exits.clean : exits.findings;
}

function solutionText(
  { roots, why, nearest }: Solution,
  sheet: Sheet,
  input: string,
  result: string,
  unit: string,
): string {
  const name = typedName(input);
  const places = roots.map((x) => `${showNumber(toUnit(x, unit), { digits: 6 })} ${unit === '1' ? '' : unit}`.trim());
  if (roots.length === 1) return `${name} = ${places[0]}\n`;
  if (roots.length > 1) return `More than one solution: ${name} = ${places.join(' or ')}\n`;
  const near = nearest
    ? `; the nearest is ${showQuantity(nearest.result, sheet.results[result]!.unit)} at ${name} = ${showQuantity(Math.abs(toUnit(nearest.input, unit)) < 1e-9 ? 0 : nearest.input, unit)}`
    : '';
  return `${name}: ${why}${near}.\n`;
}

function solutionJson(
  { roots, why, nearest }: Solution,
  sheet: Sheet,
  input: string,
  result: string,
  unit: string,
  runs: readonly Run[],
) {
  return {
    form: jsonForm('solution'),
    sheet: sheet.id,
    find: typedName(input),
    for: typedName(result),
    unit,
    solutions: roots.map((x) => toUnit(x, unit)),
    why,
    nearest: nearest && {
      input: toUnit(nearest.input, unit),
      result: toUnit(nearest.result, sheet.results[result]!.unit),
      resultUnit: sheet.results[result]!.unit,
    },
    sheets: runs.map(runJson),
  };
}
