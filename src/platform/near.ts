/** The known words nearest to a mistyped one, best first: at most a third of its letters may differ. */
export function near(word: string, known: Iterable<string>, most = 1): string[] {
  const reach = Math.max(1, Math.floor(word.length / 3));
  return [...known]
    .map((k) => ({ k, d: distance(word.toLowerCase().slice(0, 64), k.toLowerCase()) }))
    .filter(({ d }) => d <= reach)
    .sort((a, b) => a.d - b.d || a.k.localeCompare(b.k))
    .slice(0, most)
    .map(({ k }) => k);
}

/** Optimal string alignment distance: insertions, deletions, substitutions and swaps of neighbours. */
function distance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let d = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) d = Math.min(d, before[j - 2]! + 1);
      row.push(d);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}

/** "did you mean `x`?" when there is a near one, else the choices. */
export function didYouMean(word: string, known: readonly string[]): string {
  const [best] = near(word, known);
  return best
    ? `did you mean \`${best}\`?`
    : `known: ${known
        .slice(0, 40)
        .map((k) => `\`${k}\``)
        .join(', ')}`;
}
