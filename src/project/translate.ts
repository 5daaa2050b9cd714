import type { Frontmatter, Path, Plain, Range } from './frontmatter.js';
import { type Obsolete, obsolete } from './obsolete.js';
import type { Problem } from './problem.js';

/** An obsolete field or word that a file uses and that was read as what stands for it now. */
export interface ObsoleteUse extends Range {
  file: string;
  sort: FileSort;
  source: string;
  /** Keys down to it as they stood when the row was applied, items of lists by their number. */
  path: Path;
  row: Obsolete;
  /** The key or word as it stands there. */
  found: string;
  /** What has become of it, after `is`: `now `y``, or why it is no longer read. */
  now: string;
}

type Keyed = Frontmatter['data'];
interface Followed {
  row: Obsolete;
  /** Of its path, what is still to come. */
  rest: readonly string[];
}

/** Which rows hold for a file: those of `build.md`, of a query, of `limits.yaml`, or of a note and of its kind. */
export type FileSort = 'build' | 'query' | 'limits' | 'note';

/**
 * Reads obsolete fields as what stands for them now, one format after the other. Places stay those of the file. What only
 * a person can replace, and a field that stands under both names, is a problem.
 */
export function translate(
  front: Frontmatter,
  file: string,
  sort: FileSort,
  table: readonly Obsolete[] = obsolete,
): { value?: Frontmatter; obsolete: ObsoleteUse[]; problems: Problem[] } {
  const uses: ObsoleteUse[] = [];
  const problems: Problem[] = [];
  let now = front;
  for (const since of [...new Set(table.map((row) => row.since))].sort((a, b) => a - b)) {
    const { kind } = now.data;
    const rows = table.filter(
      (row) => row.since === since && (row.of === sort || (sort === 'note' && row.of === kind)),
    );
    if (rows.length > 0) now = applied(now, { file, sort }, rows, uses, problems);
  }
  return problems.length > 0 ? { obsolete: uses, problems } : { value: now, obsolete: uses, problems };
}

function applied(
  front: Frontmatter,
  { file, sort }: { file: string; sort: FileSort },
  rows: readonly Obsolete[],
  uses: ObsoleteUse[],
  problems: Problem[],
): Frontmatter {
  /** The key that stands in the file, by the path under which it is read now. */
  const before = new Map<string, string>();
  const place = (path: Path, part: 'key' | 'value') => {
    const range = front.locate(path, part);
    return { file, ...range, source: front.sourceLine(range.line) };
  };
  const use = (path: Path, part: 'key' | 'value', row: Obsolete, found: string, now: string) =>
    uses.push({ ...place(path, part), sort, path, row, found, now });

  const value = (old: Plain | undefined, path: Path, named: Path, followed: readonly Followed[]): Plain | undefined => {
    if (old === undefined || followed.length === 0) return old;
    if (typeof old === 'string') {
      for (const { row, rest } of followed) {
        if (rest.length > 0 || !('words' in row.now) || !Object.hasOwn(row.now.words, old)) continue;
        const word = row.now.words[old]!;
        use(path, 'value', row, `\`${old}\``, `now \`${word}\``);
        return word;
      }
      return old;
    }
    if (Array.isArray(old)) {
      const below = next(followed, '[]');
      return old.map((item, i) => value(item, [...path, i], [...named, i], below)!);
    }
    return block(old, path, named, followed);
  };

  const block = (old: Keyed, path: Path, named: Path, followed: readonly Followed[]): Keyed => {
    const entries: [string, Plain | undefined][] = [];
    for (const [key, inner] of Object.entries(old)) {
      const here = [...path, key];
      const below = followed.flatMap(({ row, rest: [first, ...rest] }) =>
        first !== undefined && isStep(key, first, followed) ? [{ row, rest }] : [],
      );
      const row = below.find(
        ({ rest, row: { path, now } }) => rest.length === 0 && path.at(-1) === key && !('words' in now),
      )?.row;
      if (row && 'ask' in row.now) {
        problems.push({
          code: 'obsolete',
          ...place(here, 'key'),
          found: `the key \`${key}\`, obsolete since format ${row.since}`,
          expected: row.now.ask,
        });
        continue;
      }
      if (row && 'gone' in row.now) {
        use(here, 'key', row, `\`${key}\``, `no longer read: ${row.now.gone}`);
        continue;
      }
      const renamed = row && 'key' in row.now ? row.now.key : key;
      if (row && renamed !== key) {
        if (Object.hasOwn(old, renamed)) {
          problems.push({
            code: 'obsolete',
            ...place(here, 'key'),
            found: `\`${key}\` beside \`${renamed}\`, which stands for it since format ${row.since}`,
            expected: 'one of the two',
            hint: `keep \`${renamed}\``,
          });
          continue;
        }
        use(here, 'key', row, `\`${key}\``, `now \`${renamed}\``);
        before.set([...named, renamed].join('\0'), key);
      }
      entries.push([renamed, value(inner, here, [...named, renamed], below)]);
    }
    return Object.fromEntries(entries);
  };

  const data = block(
    front.data,
    [],
    [],
    rows.map((row) => ({ row, rest: row.path })),
  );
  const locate: Frontmatter['locate'] = (path, part) =>
    front.locate(
      path.map((key, i) => before.get(path.slice(0, i + 1).join('\0')) ?? key),
      part,
    );
  return { ...front, data, locate };
}

const next = (followed: readonly Followed[], key: string): Followed[] =>
  followed.flatMap(({ row, rest: [first, ...rest] }) => (first === key ? [{ row, rest }] : []));

/** Whether a key of a block is meant by a step of a path: a block above may stand under its new name already. */
const isStep = (key: string, step: string, beside: readonly Followed[]): boolean =>
  step === key ||
  step === '*' ||
  beside.some(({ row: { now }, rest }) => rest.length === 1 && rest[0] === step && 'key' in now && now.key === key);
