import { combine, type Spread } from '../../calc/propagate.js';
import { OutOfRange } from '../../calc/sheet.js';
import type { Value } from '../../calc/value.js';
import { unit } from '../../units/unit.js';
import { evaluate } from './evaluate.js';
import { expressionOf } from './expression-of.js';

type Calculated =
  | ({ is: 'number' } & Spread & Pick<Value, 'assumed'>)
  /** Names that nobody gave a value. */
  | { is: 'missing'; names: string[] }
  | { is: 'none'; reason: string };

/** The number that an expression over facts and measurements gives, with the uncertainty of all that it rests on. */
export function calculated(text: string, valueOf: (name: string) => Value | undefined): Calculated {
  const read = expressionOf(text);
  if (!read.ok) return { is: 'none', reason: `\`${text}\` is no expression` };
  const names = [...read.names];
  const values = names.map(valueOf);
  const at = (si: readonly (number | undefined)[]) =>
    evaluate(read.expression, (name) => {
      const i = names.indexOf(name);
      const value = values[i];
      return value && { si: si[i]!, dimension: unit(value.unit).dimension };
    });
  const middle = at(values.map((value) => value?.si));
  if (middle.is === 'missing') return { is: 'missing', names: [...middle.names] };
  if (middle.is !== 'number') return { is: 'none', reason: `\`${text}\` gives no number` };
  try {
    const number = combine(values as Value[], (...si) => {
      const moved = at(si);
      return moved.is === 'number' ? moved.si : NaN;
    });
    return { is: 'number', ...number };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return { is: 'none', reason: `\`${text}\` gives no number within the uncertainty of what it rests on` };
  }
}
