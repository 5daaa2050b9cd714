import { type Form, type OptionForm, usageLine } from './form.js';
import { padTo, widestOf, wrap } from './wrap.js';

/** Lines longer than this are hard to read, however wide the terminal is. */
const widest = 100;

/** The help of a command: what it does, what it takes, and command lines to begin with. */
export function helpText(form: Form, columns = widest): string {
  const width = Math.min(columns, widest);
  const options = Object.entries(form.options).map(([name, option]): [string, string] => [
    `--${name}${argument(option)}`,
    says(option),
  ]);
  return [
    usageLine(form),
    '',
    ...paragraphs(form.about, width),
    ...(options.length > 0 ? [...twoColumns([...options, ['--help', 'this text']], width), ''] : []),
    ...paragraphs(form.more ?? '', width),
    'Examples',
    ...form.examples.map((line) => `  ${line}`),
    '',
  ].join('\n');
}

function argument(option: OptionForm): string {
  if ('flag' in option) return '';
  return 'oneOf' in option ? ` ${option.oneOf.join('|')}` : ` <${option.takes}>`;
}

function says(option: OptionForm): string {
  const usual = 'flag' in option ? undefined : (option.usual ?? ('otherwise' in option ? option.otherwise : undefined));
  return option.says + (usual === undefined || usual === '' ? '' : ` (${usual})`);
}

function paragraphs(text: string, width: number): string[] {
  return text === '' ? [] : text.split(/\n\s*\n/).flatMap((paragraph) => [...wrap(paragraph.trim(), width, ''), '']);
}

/** Labels beside their texts, or above them where there is no room. */
export function twoColumns(rows: readonly (readonly [label: string, says: string])[], width: number): string[] {
  const column = widestOf(rows.map(([label]) => label)) + 4;
  if (width - column < 30) return rows.flatMap(([label, text]) => [`  ${label}`, ...wrap(text, width, '      ')]);
  return rows.flatMap(([label, text]) =>
    wrap(text, width, ' '.repeat(column)).map((line, i) =>
      i === 0 ? padTo(`  ${label}`, column) + line.slice(column) : line,
    ),
  );
}
