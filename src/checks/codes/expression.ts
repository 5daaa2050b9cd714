import jsep from 'jsep';
import { Decimal } from '../../units/decimal.js';
import { readNumber } from '../../units/number.js';
import { type Dimension, readUnit, type Unit } from '../../units/unit.js';

/**
 * The expressions of codes and of builders' `limits.yaml`: numbers with units, names of facts, `+ - * / ( )`,
 * comparisons, `and`, `or`, and the functions `min`, `max` and `abs`. Nothing else can be written, so nothing else can
 * be reached: names stand for numbers that the caller hands in. Arithmetic is decimal, so that 3.0 mm / 1.2 mm is 2.5.
 */

export const arithmetic: ReadonlySet<string> = new Set(['+', '-', '*', '/']);
export const comparisons: ReadonlySet<string> = new Set(['<', '<=', '>', '>=', '==', '!=']);

export type Expression =
  | { is: 'number'; si: Decimal; dimension: Dimension; scale: boolean; at: number }
  | { is: 'name'; name: string; at: number }
  | { is: 'negative'; of: Expression; at: number }
  | { is: 'binary'; operator: string; left: Expression; right: Expression; at: number }
  | { is: 'call'; of: 'min' | 'max' | 'abs'; values: Expression[]; at: number };

/** `at` counts characters of the expression from 0. */
export interface ExpressionProblem {
  found: string;
  expected: string;
  at: number;
}

export type ReadExpression =
  | { ok: true; expression: Expression; gives: 'number' | 'truth'; names: ReadonlySet<string> }
  | { ok: false; problem: ExpressionProblem };

const most = { characters: 400, depth: 40 };
const functions = { min: [2, 20], max: [2, 20], abs: [1, 1] } as const;
const notNames = new Set(['and', 'or', 'this', 'true', 'false', ...Object.keys(functions)]);
const nameForm = /^[a-z][a-z0-9]*(?:_[a-z0-9]+)*$/;
const numberForm = /(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?(?![\d.])/y;
const fractionForm = /(?:\d+[- ])?\d+\/\d+(?![\d./])/y;
const unitForm = /[ \t]*([\p{L}°%″"][\p{L}\d°%·.^²³⁴⁻/]*(?:\(A\))?)/uy;

const binding = { or: 1, and: 2, '<': 3, '<=': 3, '>': 3, '>=': 3, '==': 3, '!=': 3, '+': 4, '-': 4, '*': 5, '/': 5 };

const refused: Readonly<Record<string, string>> = {
  Literal: 'a text in quotes',
  ThisExpression: '`this`',
  MemberExpression: 'a part of something, written with a dot or square brackets',
  ArrayExpression: 'a list in square brackets',
  ConditionalExpression: 'a choice written with `?`',
  Compound: 'expressions side by side, or none',
  SequenceExpression: 'expressions side by side in brackets',
};

class Refused extends Error {
  readonly problem: ExpressionProblem;
  constructor(found: string, expected: string, at: number) {
    super(found);
    this.problem = { found, expected, at };
  }
}

jsep.removeAllUnaryOps();
jsep.removeAllBinaryOps();
jsep.removeAllLiterals();
jsep.addUnaryOp('-');
for (const [operator, strength] of Object.entries(binding)) jsep.addBinaryOp(operator, strength);
jsep.hooks.add('gobble-token', function gobbleNumber(env) {
  const at = this.index;
  const fraction = fractionAt(this.expr, at);
  numberForm.lastIndex = at;
  const digits = fraction?.digits ?? numberForm.exec(this.expr)?.[0];
  if (digits === undefined) return;
  const written = unitAt(this.expr, at + digits.length);
  this.index = written?.end ?? at + digits.length;
  const unit = written?.unit;
  const si = (fraction?.value ?? new Decimal(digits)).times(unit?.factor ?? 1).plus(unit?.offset ?? 0);
  if (!Number.isFinite(si.toNumber()))
    throw new Refused(`\`${digits}\``, 'a number of a size that can be reckoned with', at);
  env.node = { type: 'Quantity', si, dimension: unit?.dimension ?? {}, scale: unit?.offset !== undefined, at };
});

/** A fraction with its unit, such as `3/4 in` or `1-1/8 in`, which as a quotient would divide by the unit. */
function fractionAt(text: string, at: number): { digits: string; value: Decimal } | undefined {
  fractionForm.lastIndex = at;
  const digits = fractionForm.exec(text)?.[0];
  if (digits === undefined || !unitAt(text, at + digits.length)) return undefined;
  const read = readNumber(digits, 0);
  return read?.end === digits.length ? { digits, value: read.value } : undefined;
}

/** The unit behind a number; `25 mm/kg` is one, of `25 mm/length` it is `mm`. */
function unitAt(text: string, from: number): { unit: Unit; end: number } | undefined {
  unitForm.lastIndex = from;
  const [spaced, word] = unitForm.exec(text) ?? [];
  if (spaced === undefined || word === undefined || /^(?:and|or)$/.test(word)) return undefined;
  for (let written = word; ; written = written.slice(0, written.lastIndexOf('/'))) {
    const unit = readUnit(written);
    if (unit) return { unit, end: from + spaced.length - word.length + written.length };
    if (!written.includes('/')) throw new Refused(`\`${word}\` after a number`, 'a unit that is known here', from);
  }
}

jsep.hooks.add('after-token', function keepPlace(env) {
  if (env.node?.type === 'Identifier')
    env.node['at'] = this.expr.slice(0, this.index).trimEnd().length - String(env.node['name']).length;
});

/** Reads an expression and finds what can be wrong with it before any number is known, dimensions excepted. */
export function readExpression(text: string): ReadExpression {
  const names = new Set<string>();
  try {
    if (text.trim() === '') throw new Refused('nothing', 'an expression', 0);
    if (text.length > most.characters)
      throw new Refused(`${text.length} characters`, `at most ${most.characters}`, most.characters);
    const expression = take(jsep(text), names, 0);
    return { ok: true, expression, gives: typeOf(expression), names };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problem: error.problem };
    const { index, description } = error as { index?: number; description?: string };
    if (index === undefined) throw error;
    const found = index < text.length ? `\`${text.slice(index, index + 12)}\`` : 'the end';
    return {
      ok: false,
      problem: {
        found: `${found} (${description ?? 'unreadable'})`,
        expected: 'an expression such as `2.5 * thickness`',
        at: Math.min(index, text.length),
      },
    };
  }
}

function take(node: jsep.Expression, names: Set<string>, depth: number): Expression {
  if (depth > most.depth) throw new Refused('an expression nested too deeply', `at most ${most.depth} levels`, 0);
  const inner = (one: unknown) => take(one as jsep.Expression, names, depth + 1);
  switch (node.type) {
    case 'Quantity': {
      const { si, dimension, scale, at } = node as unknown as Extract<Expression, { is: 'number' }>;
      return { is: 'number', si, dimension, scale, at };
    }
    case 'Identifier': {
      const name = String(node['name']);
      const at = Number(node['at'] ?? 0);
      if (!nameForm.test(name) || notNames.has(name) || name in {})
        throw new Refused(`\`${name.slice(0, 40)}\``, 'a name of lower case words joined by `_`', at);
      names.add(name);
      return { is: 'name', name, at };
    }
    case 'UnaryExpression': {
      const of = number(inner(node['argument']));
      return { is: 'negative', of: noScale(of), at: of.at };
    }
    case 'BinaryExpression': {
      const operator = String(node['operator']);
      const [left, right] = [inner(node['left']), inner(node['right'])];
      const both = arithmetic.has(operator)
        ? (e: Expression) => noScale(number(e))
        : comparisons.has(operator)
          ? number
          : truth;
      return { is: 'binary', operator, left: both(left), right: both(right), at: right.at };
    }
    case 'CallExpression': {
      const called = (node['callee'] as jsep.Expression)['name'];
      const of = Object.keys(functions).find((f) => f === called) as keyof typeof functions | undefined;
      if (of === undefined) throw new Refused('a call of something else', '`min(…)`, `max(…)` or `abs(…)`', 0);
      const values = (node['arguments'] as jsep.Expression[]).map((one) => number(inner(one)));
      const [least, greatest] = functions[of];
      if (values.length < least || values.length > greatest)
        throw new Refused(
          `${values.length} values in \`${of}\``,
          `${least === greatest ? least : `${least} or more`}`,
          values[0]?.at ?? 0,
        );
      return { is: 'call', of, values, at: values[0]!.at };
    }
    default:
      throw new Refused(
        refused[node.type] ?? 'something else',
        'numbers with units, names, + - * / ( ), comparisons, and, or, min, max, abs',
        0,
      );
  }
}

function typeOf(expression: Expression): 'number' | 'truth' {
  return expression.is === 'binary' && !arithmetic.has(expression.operator) ? 'truth' : 'number';
}

function number(expression: Expression): Expression {
  if (typeOf(expression) === 'number') return expression;
  throw new Refused('a comparison where a number is needed', 'a number; join comparisons with `and`', expression.at);
}

function truth(expression: Expression): Expression {
  if (typeOf(expression) === 'truth') return expression;
  throw new Refused('a number beside `and` or `or`', 'a comparison such as `mass < 800 kg`', expression.at);
}

function noScale(expression: Expression): Expression {
  if (expression.is !== 'number' || !expression.scale) return expression;
  throw new Refused('a temperature on a scale inside a sum or product', 'a difference in K', expression.at);
}
