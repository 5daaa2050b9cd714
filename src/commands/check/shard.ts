import { UsageError } from '../../platform/usage.js';

/** Every nth of many builds, beginning with the kth: `2/4`. Without a shard, all. */
export function shardOf<T>(all: readonly T[], shard: string | undefined): readonly T[] {
  if (shard === undefined) return all;
  const [, k, n] = /^(\d{1,4})\/(\d{1,4})$/.exec(shard) ?? [];
  const [which, of] = [Number(k), Number(n)];
  if (!(which >= 1 && which <= of))
    throw new UsageError(
      `found --shard ${shard}, expected two numbers such as 2/4, the first no greater than the second`,
    );
  return all.filter((_, i) => i % of === which - 1);
}
