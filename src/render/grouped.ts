/** In the order of the first of each group. */
export function grouped<T>(of: readonly T[], by: (one: T) => string): [T, ...T[]][] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const one of of) {
    const group = groups.get(by(one));
    if (group) group.push(one);
    else groups.set(by(one), [one]);
  }
  return [...groups.values()];
}
