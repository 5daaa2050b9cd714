import { typedName } from '../../calc/names.js';
import { plainTex } from '../../calc/plain-tex.js';
import { type Example, type Input, type Sheet, type Source, type Subject, subjects } from '../../calc/sheet.js';
import { basisWords } from './words.js';

/** The reference page of all calculation sheets. */
export function sheetsPage(sheets: readonly Sheet[]): string {
  const by = Object.keys(subjects).map((s) => [s as Subject, sheets.filter((x) => x.subject === s)] as const);
  return [
    '# Calculation sheets',
    '',
    'Made from the sheets themselves by `npm run generate`. Work one at the bench with `gusset calc <sheet> name=value …`.',
    '',
    ...by
      .filter(([, of]) => of.length > 0)
      .map(
        ([s, of]) => `- [${subjects[s]}](#${slug(subjects[s])}): ${of.map((x) => `[${x.id}](#${x.id})`).join(', ')}`,
      ),
    '',
    ...by.filter(([, of]) => of.length > 0).flatMap(([s, of]) => [`## ${subjects[s]}`, '', ...of.flatMap(one)]),
  ].join('\n');
}

const slug = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9 -]/g, '')
    .replaceAll(' ', '-');
const cell = (text: string) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

function one(sheet: Sheet): string[] {
  const symbolOf = (name: string) => plainTex(sheet.inputs[name]?.symbol ?? sheet.results[name]?.symbol ?? name);
  const formula = (tex: string) =>
    plainTex(
      tex.replace(
        /@([A-Za-z][A-Za-z0-9]*)/g,
        (_, n: string) => `{${sheet.inputs[n]?.symbol ?? sheet.results[n]?.symbol ?? n}}`,
      ),
    );
  return [
    `### ${sheet.id}`,
    '',
    `**${sheet.title}.** ${sheet.purpose}`,
    '',
    '| input | symbol | unit | what |',
    '| --- | --- | --- | --- |',
    ...Object.entries(sheet.inputs).map(
      ([name, input]) =>
        `| \`${typedName(name)}\` | ${cell(symbolOf(name))} | ${unitOf(input)} | ${cell(saysOf(input))} |`,
    ),
    '',
    '| result | symbol | unit | formula | what |',
    '| --- | --- | --- | --- | --- |',
    ...Object.entries(sheet.results).map(
      ([name, r]) =>
        `| \`${typedName(name)}\`${r.step ? ' (step)' : ''} | ${cell(symbolOf(name))} | ${r.unit === '1' ? '' : r.unit} | ${r.tex ? `\`${cell(formula(r.tex))}\`` : ''} | ${cell(r.says)} |`,
    ),
    '',
    ...(sheet.method ? [`Method: ${sheet.method}`, ''] : []),
    ...(sheet.assumptions?.length ? ['Assumed:', '', ...sheet.assumptions.map((a) => `- ${a}`), ''] : []),
    `Holds where ${sheet.validity.map((v) => v.says).join('; ')}.`,
    '',
    ...(sheet.remark ? [`Remark: ${sheet.remark}`, ''] : []),
    'Sources:',
    '',
    ...sheet.sources.map((s) => `- ${sourceLine(s)}`),
    '',
    ...sheet.examples.flatMap((e) => example(sheet, e)),
  ];
}

function unitOf(input: Input): string {
  if ('choices' in input) return 'one of the names';
  if ('columns' in input)
    return `rows of ${Object.entries(input.columns)
      .map(([n, c]) => `${typedName(n)} (${c.unit})`)
      .join(', ')}`;
  return input.unit === '1' ? '' : input.unit;
}

function saysOf(input: Input): string {
  const choices =
    'choices' in input
      ? `: ${Object.entries(input.choices)
          .slice(0, 8)
          .map(([k, says]) => `\`${k}\` ${says}`)
          .join('; ')}${Object.keys(input.choices).length > 8 ? '; and more' : ''}`
      : '';
  const usual =
    'usual' in input && input.usual !== undefined
      ? ` (usual: ${input.usual})`
      : 'optional' in input
        ? ' (may be left out)'
        : '';
  return `${input.says}${choices}${usual}`;
}

const sourceLine = (s: Source) =>
  `${[s.document, s.edition, s.clause].filter(Boolean).join(', ')} (${basisWords[s.basis]})`;

function example(sheet: Sheet, e: Example): string[] {
  const given = Object.entries(e.given).flatMap(([name, v]) =>
    typeof v === 'string'
      ? [`${typedName(name)}=${quoted(v)}`]
      : v.map((row) => `${typedName(name)}=${quoted(Object.values(row).join(','))}`),
  );
  return [
    `Example: \`gusset calc ${sheet.id} ${given.join(' ')}\` gives ${Object.entries(e.gives)
      .map(([n, v]) => `${typedName(n)} ${v}`)
      .join(', ')}. ${sourceLine(e.source)}.`,
    '',
  ];
}

const quoted = (text: string) => (/[^\w.=/-]/.test(text) ? `'${text}'` : text);
