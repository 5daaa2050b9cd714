import { Decimal } from 'decimal.js';
import { type Spread, weighted } from '../../calc/propagate.js';
import { expanded, type Value } from '../../calc/value.js';
import { type Bound, exactBound, type Limit, type Rule, ruleOf } from '../codes/limit.js';
import type { Result } from './finding.js';

export interface Decision {
  result: Result;
  /** From the value to the nearer bound, positive inside, in SI units. */
  margin: number;
  /** How much smaller that margin may be: its expanded uncertainty, of a simulated value down to its 2.5 % point. */
  expanded: number;
  rule: Rule;
  /** Where inconclusive: the values that would conform with the same uncertainty, in SI units; absent where none would. */
  conformsOnlyIf?: { min?: Bound | undefined; max?: Bound | undefined };
}

/** Where a margin lies, uncertainty and all, against zero. */
type Where = 'inside' | 'across' | 'beyond';
const resultOf = { inside: 'met', across: 'unclear', beyond: 'against' } as const;

/**
 * Compares a value with a limit. What decides is the margin between both, with its own uncertainty, so that a measurement
 * on both sides counts as one (JCGM 100:2008, 5.2.2). By the rule `guarded` the value conforms when the margin is at least
 * its uncertainty, does not conform when it is as far beyond, and is inconclusive in between (JCGM 106:2012, 8.3.2 and
 * 8.3.3, guard band w = U, k = 2; the choice of guard band is ours). Numbers are compared unrounded, as decimals with the
 * fifteen significant digits that a binary64 number carries.
 */
export function decide(value: Value, limit: Limit): Decision {
  const rule = ruleOf(limit);
  const sides = [
    ...(limit.min ? [sideOf(value, limit.min, 1, rule)] : []),
    ...(limit.max ? [sideOf(value, limit.max, -1, rule)] : []),
  ];
  if (sides.length === 0) throw new Error('a limit without a bound');
  const nearest = sides.reduce((least, side) => (side.margin.lessThan(least.margin) ? side : least));
  const where = (['beyond', 'across'] as const).find((w) => sides.some((side) => side.where === w)) ?? 'inside';
  const result = capped(resultOf[where], limit);
  return {
    result,
    margin: nearest.margin.toNumber(),
    expanded: nearest.less.toNumber(),
    rule,
    ...(result === resultOf.across && movedIn(value, limit, sides)),
  };
}

interface Side {
  where: Where;
  margin: Decimal;
  /** How much smaller the margin may be. */
  less: Decimal;
}

/** @param sign 1 for a lower bound, −1 for an upper */
function sideOf(value: Value, bound: Bound, sign: 1 | -1, rule: Rule): Side {
  const [from, to] = sign > 0 ? [bound, value] : [value, bound];
  const margin = decimal(to.si).minus(decimal(from.si));
  const own = weighted([1, to], [-1, from]);
  const [less, more] = ([-1, 1] as const).map((side) => (rule === 'exact' ? decimal(0) : reach(own, side))) as [
    Decimal,
    Decimal,
  ];
  const [low, high] = rule === 'guarded' ? [margin.minus(less), margin.plus(more)] : [margin, margin];
  const inside = bound.strict ? low.greaterThan(0) : low.greaterThanOrEqualTo(0);
  const beyond = bound.strict ? high.lessThanOrEqualTo(0) : high.lessThan(0);
  return { where: inside ? 'inside' : beyond ? 'beyond' : 'across', margin, less };
}

function reach(margin: Spread, side: 1 | -1): Decimal {
  const { interval, si } = margin;
  return decimal(interval ? side * ((side < 0 ? interval.low : interval.high) - si) : expanded(margin));
}

/**
 * The limit moved in by the uncertainty. Where value and bound rest on one measurement the bound would move with the value,
 * and where the window is narrower than the uncertainty nothing conforms: no value can be named for either.
 */
function movedIn(value: Value, { min, max }: Limit, sides: readonly Side[]): Pick<Decision, 'conformsOnlyIf'> {
  const shared = [min, max].some((bound) => bound && [...bound.parts.keys()].some((source) => value.parts.has(source)));
  if (shared) return {};
  const moved = (bound: Bound | undefined, sign: 1 | -1, side: Side | undefined): Bound | undefined =>
    bound && side && exactBound(decimal(bound.si).plus(side.less.times(sign)).toNumber(), bound.strict);
  const low = moved(min, 1, sides[0]);
  const high = moved(max, -1, sides.at(-1));
  return low && high && low.si > high.si ? {} : { conformsOnlyIf: { min: low, max: high } };
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
