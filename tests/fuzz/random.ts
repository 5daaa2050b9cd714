/** Random choices that a seed fixes (the generator known as mulberry32, public domain). */
export interface Random {
  /** From 0 up to, but not including, `n`. */
  below: (n: number) => number;
  one: <T>(list: readonly T[]) => T;
  chance: (share: number) => boolean;
}

export function random(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (n: number) => Math.floor(next() * n);
  return { below, one: (list) => list[below(list.length)]!, chance: (share) => next() < share };
}
