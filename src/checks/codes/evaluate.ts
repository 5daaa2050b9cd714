import { Decimal } from '../../units/decimal.js';
import { timesPower } from '../../units/dimension.js';
import { type Dimension, sameDimension } from '../../units/unit.js';
import { arithmetic, comparisons, type Expression, type ExpressionProblem } from './expression.js';

export type Evaluated =
  | { is: 'number'; si: number; dimension: Dimension }
  | { is: 'truth'; holds: boolean }
  | { is: 'missing'; names: ReadonlySet<string> }
  | { is: 'problem'; problem: ExpressionProblem };

/** What a name stands for, in SI; undefined where nobody gave it. */
export type Names = (name: string) => { si: number; dimension: Dimension } | undefined;

type Amount = { is: 'number'; si: Decimal; dimension: Dimension };
type Inner = Amount | Exclude<Evaluated, { is: 'number' }>;

/** Works an expression out in SI units. All names that nobody gave are reported together. */
export function evaluate(expression: Expression, names: Names): Evaluated {
  const result = work(expression, names);
  if (result.is !== 'number') return result;
  const si = result.si.toNumber();
  if (!Number.isFinite(si)) return problem('a result without a finite value', 'no division by zero', expression.at);
  return { is: 'number', si, dimension: result.dimension };
}

function work(expression: Expression, names: Names): Inner {
  switch (expression.is) {
    case 'number':
      return expression;
    case 'name': {
      const known = names(expression.name);
      return known
        ? { is: 'number', si: new Decimal(known.si), dimension: known.dimension }
        : { is: 'missing', names: new Set([expression.name]) };
    }
    case 'negative':
      return each([expression.of], names, ([a]) => ({ ...a!, si: a!.si.neg() }));
    case 'call':
      return each(expression.values, names, (values) => {
        const stray = values.findIndex((v) => !sameDimension(v.dimension, values[0]!.dimension));
        if (stray > 0)
          return problem('values of different dimensions', 'values that can be compared', expression.values[stray]!.at);
        return { ...values[0]!, si: Decimal[expression.of](...(values.map((v) => v.si) as [Decimal])) };
      });
    case 'binary':
      return arithmetic.has(expression.operator) || comparisons.has(expression.operator)
        ? each([expression.left, expression.right], names, ([a, b]) =>
            binary(expression.operator, a!, b!, expression.at),
          )
        : join(expression.operator, work(expression.left, names), work(expression.right, names));
  }
}

function each(expressions: readonly Expression[], names: Names, then: (values: Amount[]) => Inner): Inner {
  const results = expressions.map((e) => work(e, names));
  const wrong = results.find((r) => r.is === 'problem');
  if (wrong) return wrong;
  const missing = results.flatMap((r) => (r.is === 'missing' ? [...r.names] : []));
  return missing.length > 0 ? { is: 'missing', names: new Set(missing) } : then(results as Amount[]);
}

function binary(operator: string, a: Amount, b: Amount, at: number): Inner {
  if (operator === '*')
    return { is: 'number', si: a.si.times(b.si), dimension: timesPower(a.dimension, b.dimension, 1) };
  if (operator === '/')
    return { is: 'number', si: a.si.div(b.si), dimension: timesPower(a.dimension, b.dimension, -1) };
  if (!sameDimension(a.dimension, b.dimension))
    return problem(`two dimensions joined by \`${operator}\``, 'the same dimension on both sides', at);
  if (operator === '+') return { ...a, si: a.si.plus(b.si) };
  if (operator === '-') return { ...a, si: a.si.minus(b.si) };
  const order = a.si.comparedTo(b.si);
  if (Number.isNaN(order)) return problem('a side without a finite value', 'no division by zero', at);
  const holds = {
    '<': order < 0,
    '<=': order <= 0,
    '>': order > 0,
    '>=': order >= 0,
    '==': order === 0,
    '!=': order !== 0,
  }[operator]!;
  return { is: 'truth', holds };
}

/** `and` and `or` are decided by one side where that suffices, whatever the other side lacks. */
function join(operator: string, left: Inner, right: Inner): Inner {
  const sides = [left, right];
  const wrong = sides.find((s) => s.is === 'problem');
  if (wrong) return wrong;
  const deciding = operator === 'or';
  if (sides.some((s) => s.is === 'truth' && s.holds === deciding)) return { is: 'truth', holds: deciding };
  const missing = sides.flatMap((s) => (s.is === 'missing' ? [...s.names] : []));
  return missing.length > 0 ? { is: 'missing', names: new Set(missing) } : { is: 'truth', holds: !deciding };
}

function problem(found: string, expected: string, at: number): Extract<Evaluated, { is: 'problem' }> {
  return { is: 'problem', problem: { found, expected, at } };
}
