import { facts as commonFacts } from '../../project/facts.js';
import { type Frontmatter, type Path, readYamlFile } from '../../project/frontmatter.js';
import type { Problem } from '../../project/problem.js';
import { validate } from '../../project/validate.js';
import { nameOf } from '../../units/kinds.js';
import { readUnit, sameDimension } from '../../units/unit.js';
import { evaluate, type Names } from './evaluate.js';
import { readExpression } from './expression.js';
import { type Applies, type Case, type Code, codeSchema, type Fact, type Item } from './item.js';

/** Reads one code of practice: its form, its expressions, the names they use and the documents that `rests` name. */
export function readCode(text: string, file: string): { code?: Code; front?: Frontmatter; problems: Problem[] } {
  const { value: front, problems } = readYamlFile(text, file);
  if (!front) return { problems };
  const { value: code, problems: ofForm } = validate(codeSchema, front, file);
  if (!code) return { front, problems: ofForm };
  const ofExpressions = code.items.flatMap((item, i) =>
    expressionsOf(item, ['items', i]).flatMap((one) => expressionProblem(one, code.facts ?? {}, front, file)),
  );
  const ofSections = code.items.flatMap((item, i) =>
    item.section in code.sections
      ? []
      : [
          problem(
            front,
            file,
            ['items', i, 'section'],
            `section \`${item.section}\``,
            `one of ${Object.keys(code.sections).join(', ')}`,
          ),
        ],
  );
  return {
    code: resolved(code),
    front,
    problems: [...unitProblems(code, front, file), ...ofExpressions, ...ofSections],
  };
}

function unitProblems(code: Code, front: Frontmatter, file: string): Problem[] {
  const written = [
    ...code.items.flatMap((item, i): [string, Path][] => ('unit' in item ? [[item.unit, ['items', i, 'unit']]] : [])),
    ...Object.entries(code.facts ?? {}).map(([name, fact]): [string, Path] => [fact.unit, ['facts', name, 'unit']]),
  ];
  return written
    .filter(([unit]) => !readUnit(unit))
    .map(([unit, path]) => problem(front, file, path, `the unit \`${unit}\``, 'a unit that is known here'));
}

export interface Written {
  text: string;
  /** The unit that its value must fit; absent where it must be a comparison. */
  unit?: string;
  path: Path;
}

/** Every expression of an item, with its place. */
export function expressionsOf(item: Item, path: Path): Written[] {
  const when = (applies: Applies | undefined, at: Path): Written[] =>
    applies?.when === undefined ? [] : [{ text: applies.when, path: [...at, 'applies', 'when'] }];
  const own = when(item.applies, path);
  if (item.kind !== 'limit' && item.kind !== 'test') return own;
  const measured: Written[] =
    item.measured === undefined ? [] : [{ text: item.measured, unit: item.unit, path: [...path, 'measured'] }];
  const bounds = (one: Case, at: Path): Written[] =>
    (['min', 'max', 'above', 'below'] as const).flatMap((b) =>
      one[b] === undefined ? [] : [{ text: one[b], unit: item.unit, path: [...at, b] }],
    );
  return [
    ...own,
    ...measured,
    ...item.cases.flatMap((one, i) => [
      ...when(one.applies, [...path, 'cases', i]),
      ...bounds(one, [...path, 'cases', i]),
    ]),
  ];
}

/** What keeps an expression from being evaluated: its grammar, its names or its dimension. */
export function expressionProblem(
  { text, unit, path }: Written,
  own: Readonly<Record<string, Fact>>,
  front: Frontmatter,
  file: string,
): Problem[] {
  const here = (found: string, expected: string, shift = 0) => [problem(front, file, path, found, expected, shift)];
  const read = readExpression(text);
  if (!read.ok) return here(read.problem.found, read.problem.expected, read.problem.at);
  const facts = { ...commonFacts, ...own } as Readonly<Record<string, Fact>>;
  const unknown = [...read.names].find((name) => !Object.hasOwn(facts, name));
  if (unknown !== undefined)
    return here(`the name \`${unknown}\``, 'a fact that is listed under `facts`', text.indexOf(unknown));
  const wanted = unit === undefined ? undefined : readUnit(unit);
  if (unit !== undefined && !wanted) return [];
  if (read.gives !== (wanted ? 'number' : 'truth'))
    return here(`\`${text}\``, wanted ? 'a number with its unit' : 'a comparison');
  const tried = evaluate(read.expression, trial(facts, [...read.names]));
  if (tried.is === 'problem') return here(tried.problem.found, tried.problem.expected, tried.problem.at);
  if (wanted && tried.is === 'number' && !sameDimension(tried.dimension, wanted.dimension)) {
    return here(
      `${nameOf(tried.dimension) ?? 'another dimension'} in \`${text}\``,
      `${nameOf(wanted.dimension) ?? 'a value'} in ${unit}`,
    );
  }
  return [];
}

/** Some number in the unit of each fact, for trying out whether dimensions fit. */
function trial(facts: Readonly<Record<string, Fact>>, names: readonly string[]): Names {
  return (name) => ({ si: 1 + names.indexOf(name) / 8, dimension: readUnit(facts[name]!.unit)?.dimension ?? {} });
}

function problem(front: Frontmatter, file: string, path: Path, found: string, expected: string, shift = 0): Problem {
  const range = front.locate(path);
  return {
    code: 'expression',
    file,
    ...range,
    column: range.column + shift,
    found,
    expected,
    source: front.sourceLine(range.line),
  };
}

/** Replaces the short name of a document by its title, edition and status, wherever a `rests` names one. */
function resolved<T>(value: T, documents = (value as { documents?: Record<string, object> }).documents ?? {}): T {
  if (Array.isArray(value)) return value.map((one) => resolved(one, documents)) as T;
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, inner]) => [key, resolved(inner, documents)] as const);
  const plain = Object.fromEntries(entries) as Record<string, unknown>;
  const named = typeof plain['document'] === 'string' && 'basis' in plain ? documents[plain['document']] : undefined;
  if (!named) return plain as T;
  const { title, ...rest } = named as { title: string };
  return { ...rest, ...plain, document: title } as T;
}
