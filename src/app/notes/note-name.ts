/** The longest part of a file name that is made from a title. */
const longest = 48;

/** Numbers have at most six digits; more are a date, or somebody's own order. */
const last = 999_990;

/**
 * `020-front-disc-conversion.md`: the next free ten after the highest number among the files, and the name in plain
 * letters. Where a file has the last number of all, the first ten that is free.
 */
export function fileName(files: readonly string[], name: string, otherwise: string): string {
  const numbers = files.map((file) => Number(/^\d{1,6}(?=\D)/.exec(file)?.[0] ?? 0));
  let next = (Math.floor(Math.max(0, ...numbers) / 10) + 1) * 10;
  if (next > last) for (next = 10; numbers.includes(next); ) next += 10;
  return `${String(next).padStart(3, '0')}-${slug(name) || otherwise}.md`;
}

/** Lower case, without accents, hyphens between words, cut between words where it is long. */
export function slug(text: string): string {
  const plain = text
    .replaceAll('ß', 'ss')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return plain.length <= longest
    ? plain
    : plain
        .slice(0, longest + 1)
        .replace(/-[^-]*$/, '')
        .slice(0, longest);
}
