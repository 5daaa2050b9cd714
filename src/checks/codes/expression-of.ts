import { type ReadExpression, readExpression } from './expression.js';

const known = new Map<string, ReadExpression>();

/** The same as reading it, once for each text: codes are asked the same for every note. */
export function expressionOf(text: string): ReadExpression {
  const before = known.get(text);
  if (before) return before;
  const read = readExpression(text);
  known.set(text, read);
  return read;
}
