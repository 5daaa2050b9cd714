/** Where two texts part, white space and ligatures aside: a few words of each; nothing where they say the same. */
export function textDifference(one: string, other: string): { one: string; other: string } | undefined {
  const [a, b] = [normal(one), normal(other)];
  const [i, j] = parting(a, b);
  if (i === a.length && j === b.length) return undefined;
  // From the end, but no further than to where they part.
  const [back, forth] = parting(reversed(a.slice(i)), reversed(b.slice(j)));
  return { one: excerpt(a, i, a.length - back), other: excerpt(b, j, b.length - forth) };
}

const around = 24;
const most = 60;

function excerpt(text: string, start: number, end: number): string {
  const [from, to] = [
    Math.max(0, start - around),
    Math.min(text.length, Math.min(Math.max(end, start), start + most) + around),
  ];
  return `${from > 0 ? '…' : ''}${text.slice(from, to).trim()}${to < text.length ? '…' : ''}`;
}

/** How far two texts are the same when spaces are passed over: a line may break elsewhere. */
function parting(a: string, b: string): [number, number] {
  let [i, j] = [0, 0];
  for (;;) {
    while (a[i] === ' ') i += 1;
    while (b[j] === ' ') j += 1;
    if (i >= a.length || j >= b.length || a[i] !== b[j]) return [Math.min(i, a.length), Math.min(j, b.length)];
    i += 1;
    j += 1;
  }
}

const normal = (text: string): string => text.normalize('NFKC').replace(/\s+/g, ' ').trim();

const reversed = (text: string): string => text.split('').reverse().join('');
