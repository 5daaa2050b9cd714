import { readFileSync } from 'node:fs';
import type { CodeItem } from '../../checks/codes/codes.js';
import type { Kind } from '../../checks/engine/kind.js';
import { type Asked, askedOf } from '../../checks/plan/asked.js';
import { type Serves, servesOf } from '../../checks/plan/serves.js';
import { packageFile } from '../../platform/package-file.js';
import { commonShape, stageNames, stages } from '../../project/common.js';
import { type Field, fieldTree } from '../../project/field-tree.js';
import type { Build } from '../../project/model.js';
import { fieldLines, prose, scalar, width } from '../../project/template-lines.js';

export interface TemplateOptions {
  title: string;
  /** What does not apply to it is left out. */
  build?: Build | undefined;
  /** All items of the codes; those that the kind raises are taken. */
  items: Iterable<CodeItem>;
}

/**
 * The text of a new note: every field of its kind as an empty key with a comment, lists with one example that is commented
 * out (`#` with no single space behind it: take it away to use the line), photos at the hold points, answers, and questions
 * for the words.
 */
export function noteTemplate(kind: Kind, { title, build, items }: TemplateOptions): string {
  const serves = servesOf(kind);
  const asked = askedOf(kind, items, build);
  const lines = [
    '---',
    `kind: ${kind.id}`,
    `title: ${scalar(title)}`,
    ...prose(
      `${kind.covers} Keys that stay empty are not measured yet. A value may carry how it was measured: { value: 2.48 mm, with: caliper-1, on: 2026-03-14, by: JO, photo: cut-edge }. Lines that begin with # and no single space are examples: take the # away to use them.`,
    ),
    ...['by', 'started', 'load-state'].flatMap((key) => fieldLines(commonField(key), [], new Map())),
    'stages:',
    ...stageNames.map((stage) => `  ${stage}: # ${stages[stage]}`),
    '',
    ...fieldTree(kind.shape).flatMap((field) => [
      ...fieldLines(field, [], serves.fields),
      ...(field.is === 'value' ? [] : ['']),
    ]),
    '',
    ...answers(kind, asked, serves),
    ...measured(asked, serves),
    ...photos(kind),
    ...papers(),
    ...leftOut(asked),
    '---',
    '',
    wordsOf(kind.id),
  ];
  return `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()}\n`;
}

const commonField = (key: string): Field => fieldTree(commonShape).find((f) => f.key === key)!;

/** Asked for by a hold point in the same words. */
const isShownBefore = (kind: Kind, item: string): boolean => kind.holdPoints.some((p) => p.serves === item);

function answers(kind: Kind, asked: readonly Asked[], serves: Serves): string[] {
  const open = asked.filter(
    (a) =>
      !a.leftOut &&
      (a.item.kind === 'answer' || a.item.kind === 'evidence') &&
      !isShownBefore(kind, a.item.id) &&
      !serves.answered.has(a.item.id) &&
      !serves.compared.has(a.item.id),
  );
  if (open.length === 0) return [];
  return [
    ...prose(
      'Answers to the items of the codes: yes, no, a few words, or { answer: not applicable, because: … }. Where the answer is shown: { answer: yes, shown: photo cut-edge }. Evidence is given by a photo or paper below with the id of the item under proves, and with the parts that it shows.',
    ),
    'answers:',
    ...open.flatMap(({ item }) => [
      ...prose(
        `${item.title}. ${item.asks}${item.kind === 'answer' && item.wants !== 'stated' ? ` Wanted: ${item.wants}.` : ''}${item.kind === 'evidence' ? ` Shown by: ${item.evidence.join(' or ')}${item.parts ? `; parts: ${item.parts.join(', ')}` : ''}.` : ''}`,
        width - 2,
      ).map((line) => `  ${line}`),
      `  ${item.id}:`,
    ]),
    '',
  ];
}

/** Limits of the codes for which the kind has no field. */
function measured(asked: readonly Asked[], serves: Serves): string[] {
  const open = asked.flatMap(({ item, leftOut: out }) =>
    out === undefined &&
    (item.kind === 'limit' || item.kind === 'test') &&
    !serves.compared.has(item.id) &&
    item.measured === undefined
      ? [item]
      : [],
  );
  if (open.length === 0) return [];
  return [
    ...prose('Values for items of the codes that have no field of their own above.'),
    'measured:',
    ...open.flatMap((item) => [
      ...prose(`${item.title}, in ${item.unit === '1' ? 'a plain number' : item.unit}. ${item.asks}`, width - 2).map(
        (line) => `  ${line}`,
      ),
      `  ${item.id}:`,
    ]),
    '',
  ];
}

function photos(kind: Kind): string[] {
  const says = {
    record: 'to be recorded',
    witness: 'the certifier is invited',
    hold: 'work stops until the certifier releases it',
  };
  return [
    ...prose(
      'Photos. Those that follow must be taken before the next stage covers what they show. A photo proves what it names under proves, with the parts that it shows; several photos may share the parts.',
    ),
    'photos:',
    ...kind.holdPoints.flatMap((point) => [
      ...prose(`Hold point ${point.id}, before it is ${point.before}: ${says[point.level]}.`).map(
        (line) => `#  ${line}`,
      ),
      `#  - file: ${point.id}.jpg`,
      `#    shows: ${scalar(point.shows)}`,
      `#    stage: ${point.during}`,
      `#    proves: [${[point.id, ...fixedParts(point)].join(' ')}]`,
    ]),
    '',
  ];
}

/** Parts that do not depend on what the note lists. */
const fixedParts = ({ parts }: Kind['holdPoints'][number]): readonly string[] =>
  typeof parts === 'object' ? parts : [];

const papers = (): string[] => [
  ...prose('Receipts, data sheets, reports and certificates, as files in papers/.'),
  'papers:',
  '#  - file: certificate.pdf',
  '#    shows: what it is and who made it',
  '#    proves: [id of an item of the codes]',
  '#    dated: 2026-03-14',
  '#    of: [size, material or part number that it names]',
  '',
];

function leftOut(asked: readonly Asked[]): string[] {
  const out = asked.filter((a) => a.leftOut);
  return out.length === 0
    ? []
    : [
        ...prose('Left out, because it does not apply to this car:'),
        ...out.flatMap((a) => prose(`${a.item.id}: ${a.leftOut}`)),
      ];
}

const folder = packageFile('templates/notes/');

/** Headings and questions for the words of a note. */
const wordsOf = (kind: string): string => readFileSync(new URL(`${kind}.md`, folder), 'utf8').trimEnd();
