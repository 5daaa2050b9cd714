import type { Path } from '../../project/frontmatter.js';
import type { LimitsFile } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { validate } from '../../project/validate.js';
import type { CodeItem, Codes } from './codes.js';
import type { Item } from './item.js';
import { type Confirmed, limitsSchema, type OwnFigure } from './own-copy.js';
import { confirmationProblems, figureProblems, itemProblems, type Reading, twice } from './own-copy-problems.js';

/** What `limits.yaml` of the workshop and of the build say. */
export interface OwnCopy {
  figures: Map<string, OwnFigure & { file: string }>;
  confirmed: Map<string, Confirmed & { file: string }>;
  /** Items of the builder's own, and those of the codes as the own copy confirms or replaces them. */
  items: CodeItem[];
  problems: Problem[];
}

/**
 * Reads the limits files of the workshop and of the build; what a later file says stands before what an earlier one says.
 *
 * @param reading what the entries can be checked against; what is left out is not checked
 */
export function readLimits(
  files: readonly LimitsFile[],
  codes: Pick<Codes, 'items' | 'facts'>,
  reading: Reading = {},
): OwnCopy {
  const figures: OwnCopy['figures'] = new Map();
  const confirmed: OwnCopy['confirmed'] = new Map();
  const own = new Map<string, Item & { file: string }>();
  const problems: Problem[] = [];
  const read = files.map((file) => ({ ...file, ...validate(limitsSchema, file.front, file.file) }));
  problems.push(...read.flatMap((r) => r.problems));
  const placed = new Map<string, { file: LimitsFile; path: Path }>();
  for (const file of read)
    (file.value?.items ?? []).forEach((item, i) => {
      const here = { file, path: ['items', i] as Path };
      const other = placed.get(item.id);
      if (other) problems.push(twice(here, other, item.id));
      else problems.push(...itemProblems(item, here, codes));
      placed.set(item.id, here);
      own.set(item.id, { ...item, file: file.file });
    });
  const known = new Map<string, Item>([...codes.items, ...own]);
  for (const file of read) {
    const seen = new Map<string, Path>();
    const entries = <E extends { item: string }>(
      key: 'figures' | 'confirmed',
      list: readonly E[] | undefined,
      problemsOf: (entry: E, here: { file: LimitsFile; path: Path }) => Problem[],
      into: Map<string, E & { file: string }>,
    ) =>
      (list ?? []).forEach((entry, i) => {
        const here = { file, path: [key, i] as Path };
        const first = seen.get(`${key} ${entry.item}`);
        const found = first ? [twice(here, { file, path: first }, entry.item)] : problemsOf(entry, here);
        problems.push(...found);
        seen.set(`${key} ${entry.item}`, here.path);
        if (found.length === 0) into.set(entry.item, { ...entry, file: file.file });
      });
    entries('figures', file.value?.figures, (f, here) => figureProblems(f, here, known, codes.facts, reading), figures);
    entries('confirmed', file.value?.confirmed, (c, here) => confirmationProblems(c, here, known, reading), confirmed);
  }
  const items = [
    ...[...own.values()].map(({ file: _, ...item }) => replacing(item, codes.items.get(item.id))),
    ...[...confirmed.values()].flatMap((c) => {
      const item = codes.items.get(c.item);
      return item ? [confirmedItem(item, c)] : [];
    }),
  ];
  return { figures, confirmed, items, problems };
}

/** An item of the builder's own; one that replaces an item of a code keeps who raises it, what it leads to and its stop. */
function replacing(item: Item, code: CodeItem | undefined): CodeItem {
  const own: CodeItem = { ...item, code: 'own', country: '' };
  if (!code) return own;
  const links = [...(code['leads-to'] ?? []), ...(item['leads-to'] ?? [])];
  return {
    ...own,
    'raised-by': [...new Set([...code['raised-by'], ...item['raised-by']])],
    ...(links.length > 0 ? { 'leads-to': links } : {}),
    ...('stop' in code && code.stop === true ? { stop: true } : {}),
  } as CodeItem;
}

/** Neither figure nor wording changes: what it rests on, and whether it applies, was read. */
function confirmedItem(item: CodeItem, { document, edition, clause, on, 'read-by': by }: Confirmed): CodeItem {
  const { basis: _, ...applies } = item.applies ?? {};
  return {
    ...item,
    ...(item.applies ? { applies } : {}),
    rests: { document: document ?? item.rests.document, edition, clause, basis: 'own-copy', 'read-by': by, on },
  };
}
