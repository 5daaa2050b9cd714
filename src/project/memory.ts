/**
 * Pure work under a name, which is done again only when what it was made from (`from`) differs from the last time. What
 * comes back is shared between readings and must not be changed.
 */
export type Recall = <T>(name: string, from: string | (() => string), make: () => T) => T;

/** Remembers nothing: for a process that reads a build once. */
export const afresh: Recall = (_name, _from, make) => make();

/** Remembers the last result under each name: for a process that reads one build again and again. */
export function memory(): Recall {
  const kept = new Map<string, { from: string; result: unknown }>();
  return <T>(name: string, stated: string | (() => string), make: () => T): T => {
    const from = typeof stated === 'string' ? stated : stated();
    const known = kept.get(name);
    if (known?.from === from) return known.result as T;
    const result = make();
    kept.set(name, { from, result });
    // What failed once may succeed the next time, although its file is the same.
    if (result instanceof Promise)
      result.catch(() => {
        if (kept.get(name)?.result === result) kept.delete(name);
      });
    return result;
  };
}

/** Plain data as text, to tell whether two are the same: maps and sets count, keys in their order. */
export function textOf(data: unknown): string {
  return (
    JSON.stringify(data, (_, value: unknown) => (value instanceof Map || value instanceof Set ? [...value] : value)) ??
    ''
  );
}

/** A number for each thing that was read, so that the same one is known again. */
export function numberOf(thing: object): number {
  const known = numbers.get(thing) ?? count++;
  numbers.set(thing, known);
  return known;
}
const numbers = new WeakMap<object, number>();
let count = 0;
