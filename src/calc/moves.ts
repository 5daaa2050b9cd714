import type { Value } from './value.js';

/** A calculation as a function of how far each source of uncertainty is moved. */
export interface Moving {
  /** Names of the sources. */
  sources: readonly string[];
  /**
   * The results with every source moved by so many standard uncertainties.
   *
   * @throws OutOfRange where a result is no finite number
   */
  at: (moves: ArrayLike<number>) => Readonly<Record<string, number>>;
}

/** How a value moves with the sources of its uncertainty, each by so many standard uncertainties. */
export type Moved = (moves: ArrayLike<number>) => number;

/** Names of all sources that the values rest on, each once. */
export function sourcesOf(values: readonly Pick<Value, 'parts'>[]): string[] {
  return [...new Set(values.flatMap((v) => [...v.parts.keys()]))];
}

/** Laid out once, so that many thousand moves stay cheap. `place` says where each source stands among the moves. */
export function movedBy(value: Value, place: ReadonlyMap<string, number>): Moved {
  const parts = [...value.parts].map(([source, expanded]) => [place.get(source)!, expanded / 2] as const);
  if (parts.length === 0) return () => value.si;
  const shift: Moved = (moves) => {
    let by = 0;
    for (const [i, standard] of parts) by += moves[i]! * standard;
    return by;
  };
  if (!value.interval) return (moves) => value.si + shift(moves);
  const [down, up] = ([-1, 1] as const).map((side) => stretch(value, side) * (2 / NORMAL)) as [number, number];
  return (moves) => {
    const by = shift(moves);
    return value.si + by * (by < 0 ? down : up);
  };
}

/** 97.5 % point of the standard normal distribution (JCGM 100:2008, table G.1: 1.960 for 95 %). */
const NORMAL = 1.959964;

/** By what the parts are to be multiplied so that they reach to that end of the interval; 1 where there is none. */
export function stretch({ si, parts, interval }: Pick<Value, 'si' | 'parts' | 'interval'>, side: 1 | -1): number {
  if (!interval) return 1;
  const total = Math.hypot(...parts.values());
  return total === 0 ? 0 : Math.max(0, side * ((side < 0 ? interval.low : interval.high) - si)) / total;
}
