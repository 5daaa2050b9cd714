import { Decimal } from 'decimal.js';
import { expanded, type Value } from '../../calc/value.js';
import type { Limit } from '../codes/limit.js';
import type { Result } from './finding.js';

/**
 * The decision rule (JCGM 106:2012, 8.3.3, guarded acceptance and guarded rejection with w = U, k = 2; the choice of
 * guard band is ours). A value conforms when the whole of value ± U lies inside the limit, does not conform when it lies
 * outside, and is inconclusive in between. Nothing is rounded into passing: numbers are compared as decimals with the fifteen
 * significant digits that a binary64 number carries, so that arithmetic noise in the sixteenth does not decide.
 */
export function decide(value: Value, limit: Limit): { result: Result; margin: number } {
  const x = decimal(value.si);
  const u = decimal(Math.hypot(expanded(value), limit.expanded ?? 0));
  const sides = [
    ...(limit.max === undefined ? [] : [inside(x, u, decimal(limit.max), limit.open === true, 1)]),
    ...(limit.min === undefined ? [] : [inside(x, u, decimal(limit.min), limit.open === true, -1)]),
  ];
  if (sides.length === 0) throw new Error('a limit without a bound');
  const margin = Decimal.min(...sides.map((s) => s.margin)).toNumber();
  const worst = sides.some((s) => s.result === 'against')
    ? 'against'
    : sides.some((s) => s.result === 'unclear')
      ? 'unclear'
      : 'met';
  return { result: capped(worst, limit), margin };
}

function inside(
  x: Decimal,
  u: Decimal,
  bound: Decimal,
  open: boolean,
  sign: 1 | -1,
): { result: Result; margin: Decimal } {
  const margin = bound.minus(x).times(sign);
  const surely = open ? margin.greaterThan(u) : margin.greaterThanOrEqualTo(u);
  const surelyNot = open ? margin.plus(u).lessThanOrEqualTo(0) : margin.plus(u).lessThan(0);
  return { result: surely ? 'met' : surelyNot ? 'against' : 'unclear', margin };
}

/** On a figure that nobody confirmed there is no outcome, whatever the comparison shows; on a superseded text nothing conforms. */
function capped(result: Result, { basis, status }: Limit): Result {
  if (basis === 'memory') return 'unconfirmed';
  return result === 'met' && basis === 'published' && status === 'superseded' ? 'unconfirmed' : result;
}

function decimal(x: number): Decimal {
  return new Decimal(x.toPrecision(15));
}

/** What must stand beside an outcome that rests on this basis. */
export function marksOf(limit: Pick<Limit, 'basis' | 'status' | 'agreedWith'>): string[] {
  if (limit.agreedWith !== undefined) return [`agreed with the certifier`];
  if (limit.basis === 'quoted') return ['confirm against your copy'];
  if (limit.basis === 'practice') return ['common practice', 'confirm against your copy'];
  if (limit.basis === 'memory') return ['recalled, not confirmed'];
  if (limit.basis === 'published' && limit.status === 'superseded')
    return ['superseded text', 'confirm against your copy'];
  if (limit.basis === 'published' && limit.status !== 'in-force')
    return ['currency not known', 'confirm against your copy'];
  return [];
}
