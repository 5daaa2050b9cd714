/** Numbered things of which some turn out to be the same (disjoint sets with path halving). */
export interface Unions {
  add: () => number;
  find: (item: number) => number;
  unite: (one: number, other: number) => void;
}

export function unions(): Unions {
  const up: number[] = [];
  const find = (item: number): number => {
    let at = item;
    for (let above = up[at]; above !== undefined && above !== at; above = up[at]) {
      up[at] = up[above] ?? above;
      at = above;
    }
    return at;
  };
  return {
    add: () => up.push(up.length) - 1,
    find,
    unite: (one, other) => {
      up[find(other)] = find(one);
    },
  };
}
