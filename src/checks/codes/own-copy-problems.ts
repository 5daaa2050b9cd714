import { didYouMean } from '../../platform/near.js';
import type { Path } from '../../project/frontmatter.js';
import type { LimitsFile } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { readUnit, sameDimension } from '../../units/unit.js';
import type { Codes } from './codes.js';
import type { Fact, Item } from './item.js';
import type { Confirmed, OwnFigure } from './own-copy.js';
import { expressionProblem, expressionsOf } from './read-code.js';

/** What keeps an entry of `limits.yaml` from being taken as it was meant, each with its place. */

/** What of the build the entries are checked against. */
export interface Reading {
  /** The day of the check, as `2026-03-14`. */
  today?: string | undefined;
  /** Ids and files of the papers of the build. */
  papers?: ReadonlySet<string> | undefined;
  isCertifier?: ((name: string) => boolean) | undefined;
}

export interface Here {
  file: LimitsFile;
  path: Path;
}

type Told = Pick<Problem, 'found' | 'expected'> & { code?: Problem['code']; hint?: string | undefined };

function problemAt({ file, path }: Here, told: Told, part: 'key' | 'value' = 'value'): Problem {
  const range = file.front.locate(path, part);
  return { code: 'value', file: file.file, ...range, source: file.front.sourceLine(range.line), ...told };
}

const placeText = ({ file, path }: Here): string => {
  const { line, column } = file.front.locate(path);
  return `${file.file}:${line}:${column}`;
};
const at = (here: Here, ...keys: string[]): Here => ({ ...here, path: [...here.path, ...keys] });

/** Two entries for one item: which of them holds cannot be told. */
export function twice(here: Here, first: Here, id: string): Problem {
  const key = here.path[0] === 'items' ? 'id' : 'item';
  return problemAt(at(here, key), {
    code: 'id-duplicate',
    found: `a second entry for \`${id}\`; the first stands at ${placeText(at(first, key))}`,
    expected: 'one entry for each item',
  });
}

export function figureProblems(
  figure: OwnFigure,
  here: Here,
  items: ReadonlyMap<string, Item>,
  facts: ReadonlyMap<string, Fact>,
  reading: Reading,
): Problem[] {
  const item = items.get(figure.item);
  if (!item) return [noItem(figure.item, here, items)];
  if (item.kind !== 'limit' && item.kind !== 'test')
    return [
      problemAt(at(here, 'item'), {
        found: `a figure for \`${item.id}\`, which asks for ${item.kind === 'answer' ? 'an answer' : 'a proof'}`,
        expected: 'an item that compares a number',
        hint: 'put it under `confirmed:` with edition, clause, read-by and on',
      }),
    ];
  const bounds = (['min', 'above', 'max', 'below'] as const).filter((b) => figure[b] !== undefined);
  return [
    ...(bounds.length === 0
      ? [
          problemAt(at(here, 'item'), {
            found: 'a figure without a bound',
            expected: '`min:`, `max:`, `above:` or `below:`',
          }),
        ]
      : []),
    ...besideEachOther(figure, here),
    ...bounds.flatMap((b) => boundProblems(figure[b]!, at(here, b), item.unit, facts)),
    ...(figure['agreed-with'] !== undefined || figure.letter !== undefined
      ? agreedProblems(figure, item, here, reading)
      : readProblems(figure, here)),
    ...dateProblems(figure.on, here, reading),
  ];
}

export function confirmationProblems(
  entry: Confirmed,
  here: Here,
  items: ReadonlyMap<string, Item>,
  reading: Reading,
): Problem[] {
  const item = items.get(entry.item);
  if (!item) return [noItem(entry.item, here, items)];
  const isNumber = item.kind === 'limit' || item.kind === 'test';
  return [
    ...(isNumber
      ? [
          problemAt(at(here, 'item'), {
            found: `\`${item.id}\`, which compares a number`,
            expected: 'a question or a proof',
            hint: 'put its figure under `figures:`; that confirms it',
          }),
        ]
      : []),
    ...readProblems(entry, here),
    ...dateProblems(entry.on, here, reading),
  ];
}

/** An item of the builder's own: its expressions, and the id, which may be that of an item of a code only where it says so. */
export function itemProblems(item: Item, here: Here, codes: Pick<Codes, 'items' | 'facts'>): Problem[] {
  const code = codes.items.get(item.id);
  const says = item.replaces ?? [];
  const clash =
    code && !says.includes(item.id)
      ? [
          problemAt(at(here, 'id'), {
            code: 'id-duplicate',
            found: `the id \`${item.id}\`, which an item of ${code.code}.yaml has ("${code.title}")`,
            expected: `another id, or \`replaces: [${item.id}]\` where it is to stand in its place`,
            hint: 'for another figure alone, put it under `figures:`',
          }),
        ]
      : [];
  const others = says
    .filter((id) => id !== item.id)
    .map((id) =>
      problemAt(at(here, 'replaces'), {
        found: `\`${item.id}\` in place of \`${id}\``,
        expected: 'the id of the item that it replaces as its own id, so that all that leads there still does',
      }),
    );
  const unfit =
    code && says.includes(item.id) && !standsFor(item, code)
      ? [
          problemAt(at(here, 'kind'), {
            found: `\`${item.id}\` as ${item.kind}${'unit' in item ? ` in ${item.unit}` : ''}`,
            expected: `${code.kind}${'unit' in code ? ` in ${code.unit}` : ''}, as the item that it replaces`,
          }),
        ]
      : [];
  return [...clash, ...others, ...unfit, ...expressionsIn(item, here, codes.facts)];
}

function standsFor(item: Item, code: Item): boolean {
  if (item.kind !== code.kind) return false;
  if (!('unit' in item) || !('unit' in code)) return true;
  const [own, theirs] = [readUnit(item.unit), readUnit(code.unit)];
  return own !== undefined && theirs !== undefined && sameDimension(own.dimension, theirs.dimension);
}

function expressionsIn(item: Item, here: Here, facts: ReadonlyMap<string, Fact>): Problem[] {
  if ('unit' in item && !readUnit(item.unit))
    return [
      problemAt(at(here, 'unit'), {
        code: 'expression',
        found: `the unit \`${item.unit}\``,
        expected: 'a unit that is known here',
      }),
    ];
  return expressionsOf(item, here.path).flatMap((one) =>
    expressionProblem(one, Object.fromEntries(facts), here.file.front, here.file.file),
  );
}

const noItem = (id: string, here: Here, items: ReadonlyMap<string, Item>): Problem =>
  problemAt(at(here, 'item'), {
    code: 'reference-missing',
    found: `no item \`${id}\``,
    expected: 'the id of an item of the code',
    hint: didYouMean(id, [...items.keys()]),
  });

function besideEachOther(figure: OwnFigure, here: Here): Problem[] {
  return (
    [
      ['min', 'above'],
      ['max', 'below'],
    ] as const
  ).flatMap(([with_, without]) =>
    figure[with_] !== undefined && figure[without] !== undefined
      ? [
          problemAt(
            at(here, without),
            {
              found: `\`${without}:\` beside \`${with_}:\` at ${placeText(at(here, with_))}`,
              expected: `one of them: \`${with_}\` includes the figure itself, \`${without}\` does not`,
            },
            'key',
          ),
        ]
      : [],
  );
}

/** A bound has the dimension of its item. */
const boundProblems = (text: string, here: Here, unit: string, facts: ReadonlyMap<string, Fact>): Problem[] =>
  expressionProblem({ text, unit, path: here.path }, Object.fromEntries(facts), here.file.front, here.file.file);

function readProblems(entry: OwnFigure | Confirmed, here: Here): Problem[] {
  return (['edition', 'clause', 'read-by'] as const).flatMap((key) =>
    entry[key] === undefined
      ? [
          problemAt(at(here, 'item'), {
            found: `no \`${key}:\` for \`${entry.item}\``,
            expected: 'edition, clause and who read them',
          }),
        ]
      : [],
  );
}

/** What the certifier adopted in writing: a figure of common practice, with a letter that the build has. */
function agreedProblems(figure: OwnFigure, item: Item, here: Here, reading: Reading): Problem[] {
  const { 'agreed-with': by, letter } = figure;
  if (by === undefined || letter === undefined)
    return [
      problemAt(at(here, by === undefined ? 'letter' : 'agreed-with'), {
        found: by === undefined ? '`letter:` without `agreed-with:`' : '`agreed-with:` without `letter:`',
        expected: 'both: the certifier, and the paper that says so',
      }),
    ];
  const told = (key: string, says: Told): Problem => problemAt(at(here, key), says);
  return [
    ...(item.rests.basis === 'practice'
      ? []
      : [
          told('agreed-with', {
            found: `a figure that was agreed for \`${item.id}\`, which rests on ${item.rests.document}`,
            expected: 'an item of common practice; a figure of a text has its edition and clause',
          }),
        ]),
    ...(reading.isCertifier?.(by) === false
      ? [told('agreed-with', { found: `\`${by}\``, expected: 'the certifier of build.md' })]
      : []),
    ...(reading.papers && !reading.papers.has(letter)
      ? [
          told('letter', {
            code: 'paper-missing',
            found: `no paper \`${letter}\` in the notes`,
            expected: 'the id or file of a paper of this build',
            hint: didYouMean(letter, [...reading.papers]),
          }),
        ]
      : []),
  ];
}

function dateProblems(on: string, here: Here, { today }: Reading): Problem[] {
  return today !== undefined && on > today
    ? [problemAt(at(here, 'on'), { found: `${on}, which is still to come`, expected: `a day up to ${today}` })]
    : [];
}
