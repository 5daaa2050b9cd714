import { facts as commonFacts } from '../build/facts.js';
import { readYamlFile, type Frontmatter, type Path } from '../build/frontmatter.js';
import type { Problem } from '../build/problem.js';
import { validate } from '../build/validate.js';
import { readExpression } from './expression.js';
import { codeSchema, type Applies, type Case, type Code, type Item } from './item.js';

/** Reads one code of practice: its form, its expressions, the names they use and the documents that `rests` name. */
export function readCode(text: string, file: string): { code?: Code; front?: Frontmatter; problems: Problem[] } {
  const { value: front, problems } = readYamlFile(text, file);
  if (!front) return { problems };
  const { value: code, problems: ofForm } = validate(codeSchema, front, file);
  if (!code) return { front, problems: ofForm };
  const ofExpressions = code.items.flatMap((item, i) => expressionsOf(item, ['items', i]).flatMap((one) => expressionProblem(one, code, front, file)));
  const ofSections = code.items.flatMap((item, i) => (item.section in code.sections ? [] : [problem(front, file, ['items', i, 'section'], `section \`${item.section}\``, `one of ${Object.keys(code.sections).join(', ')}`)]));
  return { code: resolved(code), front, problems: [...ofExpressions, ...ofSections] };
}

interface Written {
  text: string;
  gives: 'number' | 'truth';
  path: Path;
}

function expressionsOf(item: Item, path: Path): Written[] {
  const when = (applies: Applies | undefined, at: Path): Written[] => (applies?.when === undefined ? [] : [{ text: applies.when, gives: 'truth', path: [...at, 'applies', 'when'] }]);
  const own = when(item.applies, path);
  if (item.kind !== 'limit' && item.kind !== 'test') return own;
  const measured: Written[] = item.measured === undefined ? [] : [{ text: item.measured, gives: 'number', path: [...path, 'measured'] }];
  const bounds = (one: Case, at: Path): Written[] =>
    (['min', 'max', 'above', 'below'] as const).flatMap((b) => (one[b] === undefined ? [] : [{ text: one[b], gives: 'number' as const, path: [...at, b] }]));
  return [...own, ...measured, ...item.cases.flatMap((one, i) => [...when(one.applies, [...path, 'cases', i]), ...bounds(one, [...path, 'cases', i])])];
}

function expressionProblem({ text, gives, path }: Written, code: Code, front: Frontmatter, file: string): Problem[] {
  const read = readExpression(text);
  if (!read.ok) return [problem(front, file, path, read.problem.found, read.problem.expected, read.problem.at)];
  if (read.gives !== gives) return [problem(front, file, path, `\`${text}\``, gives === 'truth' ? 'a comparison' : 'a number with its unit')];
  const unknown = [...read.names].filter((name) => !(name in commonFacts) && !(code.facts && name in code.facts));
  return unknown.map((name) => problem(front, file, path, `the name \`${name}\``, 'a fact that is listed under `facts`', text.indexOf(name)));
}

function problem(front: Frontmatter, file: string, path: Path, found: string, expected: string, shift = 0): Problem {
  const range = front.locate(path);
  return { code: 'expression', file, ...range, column: range.column + shift, found, expected, source: front.sourceLine(range.line) };
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
