import { availableParallelism } from 'node:os';

/** Does the same work for every item, as many at a time as the machine has cores but no more than four; results in the order of the items. */
export async function several<T, R>(items: readonly T[], work: (item: T) => Promise<R>): Promise<R[]> {
  const results: R[] = [];
  let next = 0;
  const worker = async (): Promise<void> => {
    for (let index = next++; index < items.length; index = next++) results[index] = await work(items[index] as T);
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), 4, items.length) }, worker));
  return results;
}
