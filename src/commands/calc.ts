import { allSheets, findSheet, nearestSheets } from '../calc/catalogue.js';
import type { InputValues } from '../calc/inputs.js';
import { monteCarlo } from '../calc/monte-carlo.js';
import { type Run, run as workThrough } from '../calc/run.js';
import type { Sheet } from '../calc/sheet.js';
import { withUsual } from '../calc/usual.js';
import { expanded } from '../calc/value.js';
import { UsageError } from '../platform/usage.js';
import { readInputs, wantAll } from './calc/read-inputs.js';
import { type Options, solve } from './calc/solve.js';
import { formOf, parse } from './terminal/form.js';
import { type Exit, exits, type Io } from './terminal/io.js';
import { describeText, listText } from './text/calc-describe.js';
import { json, runJson, sheetsJson } from './text/calc-json.js';
import { monteCarloText, runText } from './text/calc-text.js';

export const form = formOf({
  command: 'calc',
  names: [
    { name: 'sheet', count: 'optional', is: 'sheet' },
    { name: 'input=value', count: 'any' },
  ],
  about: `Works one calculation sheet through at the bench. Without a sheet: all sheets by subject. A sheet without values: what it
wants, with an example.`,
  options: {
    find: { takes: 'input', says: 'solves backwards for this input; with --for' },
    for: { takes: 'result=value', says: 'the result that --find is to give' },
    'monte-carlo': { flag: true, says: 'a second opinion on the uncertainty' },
    format: { oneOf: ['text', 'json'], usual: 'text', says: 'how it is printed' },
  },
  more: `A value carries its unit and, where known, its uncertainty: bore='86.00 ± 0.01 mm'. A series takes one argument a row,
in the order of its columns (parts='20 kg,1.2 m'), or a table (parts=@parts.csv).

Exit codes: 0 a number; 1 no number (outside the range of validity, no solution); 2 wrong usage.`,
  examples: [
    'gusset calc',
    'gusset calc engine-capacity',
    'gusset calc engine-capacity bore=86mm stroke=86mm cylinders=4',
    'gusset calc engine-capacity stroke=86mm cylinders=4 --find bore --for capacity=2000cm3',
  ],
});

export async function run(args: readonly string[], io: Pick<Io, 'stdout' | 'stderr' | 'columns'>): Promise<Exit> {
  const { values, names } = parse(form, args);
  const [id, ...given] = names;
  if (id === undefined) {
    io.stdout(values.format === 'json' ? json(sheetsJson(await allSheets())) : await listText());
    return exits.clean;
  }
  const sheet = await findSheet(id);
  if (!sheet) throw new UsageError(unknown(id));
  if (given.length === 0 && values.find === undefined && values.for === undefined) {
    io.stdout(values.format === 'json' ? json(sheetsJson([sheet])) : describeText(sheet, io.columns ?? 100));
    return exits.clean;
  }
  const inputs = withUsual(sheet, readInputs(sheet, given));
  return values.find === undefined && values.for === undefined
    ? calculate(sheet, inputs, values, io)
    : solve(sheet, inputs, given, values, io);
}

function unknown(id: string): string {
  const near = nearestSheets(id);
  return `found the sheet “${id}”, expected one of those that \`gusset calc\` lists${near.length > 0 ? `; did you mean ${near.map((n) => `\`${n}\``).join(' or ')}?` : ''}`;
}

function calculate(sheet: Sheet, inputs: InputValues, options: Options, io: Pick<Io, 'stdout' | 'columns'>): Exit {
  wantAll(sheet, inputs);
  const done = workThrough(sheet.id, sheet, inputs);
  if (options.format === 'json') io.stdout(json(runJson(done)));
  else io.stdout(runText(done, io.columns ?? 100) + secondOpinion(done, options));
  return done.results ? exits.clean : exits.findings;
}

function secondOpinion(done: Run, options: Options): string {
  if (!options['monte-carlo'] || !done.results) return '';
  const uncertain = Object.values(done.results).some((value) => expanded(value) > 0);
  return uncertain
    ? monteCarloText(done, monteCarlo(done.sheet, done.inputs))
    : 'Monte Carlo: no input has an uncertainty, so there is nothing to propagate.\n';
}
