import { allSheets, sheetIds } from '../../calc/catalogue.js';
import { hasColumns, isChoice } from '../../calc/inputs.js';
import { typedName } from '../../calc/names.js';
import { type Example, type Input, type Sheet, type Subject, subjects } from '../../calc/sheet.js';
import { twoColumns } from '../terminal/help.js';
import { wrap } from '../terminal/wrap.js';
import { inUnit, restsText } from './calc-text.js';

/** All sheets by subject. */
export async function listText(): Promise<string> {
  const titles = new Map((await allSheets()).map((sheet) => [sheet.id, sheet.title]));
  const widest = Math.max(...[...titles.keys()].map((id) => id.length));
  const parts = (Object.keys(subjects) as Subject[]).map((subject) =>
    [subjects[subject], ...sheetIds[subject].map((id) => `  ${id.padEnd(widest)}  ${titles.get(id)}`), ''].join('\n'),
  );
  return `${parts.join('\n')}\ngusset calc <sheet> shows its inputs and an example.\n`;
}

/** What a sheet is for, what it wants, and a command to start from. */
export function describeText(sheet: Sheet, width: number): string {
  const lines = [
    `${sheet.title} (${sheet.id})`,
    ...wrap(sheet.purpose, width, ''),
    '',
    'Inputs',
    ...twoColumns(
      Object.entries(sheet.inputs).flatMap(([name, input]) => inputEntries(name, input)),
      width,
    ),
    '',
    'Results',
    ...twoColumns(
      Object.entries(sheet.results).flatMap(([name, r]) =>
        r.step ? [] : [[typedName(name) + inUnit(r.unit), r.says] as const],
      ),
      width,
    ),
    '',
    ...restsText(sheet, width),
    '',
    'Example',
    `  ${exampleCommand(sheet, sheet.examples[0])}`,
    '',
  ];
  return lines.join('\n');
}

type Entry = readonly [label: string, says: string];

function inputEntries(name: string, input: Input): Entry[] {
  const typed = typedName(name);
  if (hasColumns(input)) {
    const columns = Object.entries(input.columns).map(
      ([column, c]): Entry => [`  ${typedName(column)}${inUnit(c.unit)}`, c.says],
    );
    return [[typed, `${input.says}; or ${typed}=@file.csv with the columns`], ...columns];
  }
  const usual = input.usual === undefined ? '' : ` [${input.usual} where left out]`;
  if (isChoice(input))
    return [
      [typed, `${input.says}${usual}`],
      ...Object.entries(input.choices).map(([choice, says]): Entry => [`  ${choice}`, says]),
    ];
  return [[typed + inUnit(input.unit), `${input.says}${usual}${input.optional ? ' [may be left out]' : ''}`]];
}

/** The inputs of an example as arguments. */
export function exampleArgs(sheet: Sheet, example: Example): string[] {
  return Object.entries(example.given).flatMap(([name, value]) => {
    const input = sheet.inputs[name]!;
    if (typeof value === 'string' || !hasColumns(input)) return [`${typedName(name)}=${value as string}`];
    return value.map(
      (row) =>
        `${typedName(name)}=${Object.keys(input.columns)
          .map((column) => row[column])
          .join(',')}`,
    );
  });
}

/** The example as it would be typed into a shell. */
function exampleCommand(sheet: Sheet, example: Example): string {
  const quoted = (arg: string) => arg.replace(/=(.*[^\w./%+-].*)$/, "='$1'");
  return ['gusset calc', sheet.id, ...exampleArgs(sheet, example).map(quoted)].join(' ');
}
