import type { Value } from '../../calc/value.js';
import type { Bound, Limit } from '../codes/limit.js';
import type { Settler } from './finding.js';
import { decide } from './verdict.js';
import { conditionsWords } from './words.js';

/**
 * What would settle a comparison that is inconclusive.
 *
 * @param because of what it is: conditions that were not met, a range in which the truth lies; and the test that settles it
 */
export function settlers(
  value: Value,
  limit: Limit,
  {
    invalid,
    range,
    test,
  }: { invalid?: readonly string[] | undefined; range?: string | undefined; test?: string | undefined },
): Settler[] {
  const other = invalid ? conditionsWords(invalid) : range;
  return [
    ...(other === undefined ? settlingSources(value, limit) : [{ words: other }]),
    ...(test === undefined ? [] : [{ words: test }]),
  ];
}

/**
 * The sources of uncertainty of which each alone, known exactly, would leave no doubt on which side of the limit the value
 * lies, with all others as they are; the largest first.
 */
function settlingSources(value: Value, limit: Limit): Settler[] {
  if (decide(value, limit).result !== 'unclear') return [];
  const all = [value, limit.min, limit.max].flatMap((one) => (one ? [...one.parts] : []));
  const largest = new Map<string, number>();
  for (const [source, part] of all) largest.set(source, Math.max(largest.get(source) ?? 0, Math.abs(part)));
  return [...largest]
    .toSorted(([, a], [, b]) => b - a)
    .filter(([source]) => decide(without(source, value), boundsWithout(source, limit)).result !== 'unclear')
    .map(([source]) => ({ source }));
}

const boundsWithout = (source: string, limit: Limit): Limit => ({
  ...limit,
  min: limit.min && without(source, limit.min),
  max: limit.max && without(source, limit.max),
});

/** The same with one source known exactly. An interval shrinks by its share, as the uncertainty does. */
function without<S extends Pick<Value, 'si' | 'parts' | 'interval'> | Bound>(source: string, of: S): S {
  const parts = new Map([...of.parts].filter(([name]) => name !== source));
  const total = Math.hypot(...of.parts.values());
  const left = total === 0 ? 1 : Math.hypot(...parts.values()) / total;
  const { interval, si } = of;
  return {
    ...of,
    parts,
    interval: interval && { low: si + (interval.low - si) * left, high: si + (interval.high - si) * left },
  };
}
