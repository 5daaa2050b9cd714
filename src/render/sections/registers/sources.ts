import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Run } from '../../../calc/run.js';
import { anchor } from '../../anchors.js';
import { restsOf } from '../../item.js';
import { basisShort, howRead } from '../../limit-text.js';
import type { Subject } from '../../subject.js';
import { table } from '../../table.js';

/** One clause of a text in one edition, and how it was read. */
interface Cited {
  document: string;
  edition?: string | undefined;
  clause?: string | undefined;
  read: string;
}

/** Every text that a limit, an item or a sheet of this document rests on, with its edition. */
export function sourceRegister({ evaluation }: Subject): Element {
  const applied = new Set(evaluation.findings.filter((f) => f.outcome !== 'not-applicable').map((f) => f.item));
  const rests = [
    ...evaluation.findings.flatMap((f) => f.limit ?? []),
    ...evaluation.raised.flatMap(({ item }) => (applied.has(item.id) ? [restsOf(item.rests)] : [])),
  ];
  return h('section', { id: anchor.section('sources') }, [
    h('h2', 'Sources and editions'),
    textTable(
      'codes',
      'Texts that limits and items of the codes rest on',
      rests.map((r) => ({ ...r, read: howRead(r) })),
    ),
    ...(evaluation.runs.length > 0
      ? [textTable('sheets', 'Texts that calculation sheets rest on', evaluation.runs.flatMap(sourcesOf))]
      : [h('p', 'No calculation sheet was used.')]),
  ]);
}

const sourcesOf = (run: Run): Cited[] =>
  run.sheet.sources.map((s) => ({
    ...s,
    read: s.basis === 'derived' ? 'follows from mechanics or geometry' : basisShort[s.basis],
  }));

/** A row for each text, edition and way of reading, with all clauses that were drawn on. */
function textTable(name: string, caption: string, cited: readonly Cited[]): Element {
  const texts = new Map<string, { first: Cited; clauses: Set<string>; uses: number }>();
  for (const one of cited) {
    const key = [one.document, one.edition, one.read].join('\n');
    const text = texts.get(key) ?? { first: one, clauses: new Set<string>(), uses: 0 };
    if (one.clause) text.clauses.add(one.clause);
    texts.set(key, { ...text, uses: text.uses + 1 });
  }
  const alphabetical = [...texts].sort(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }));
  const rows = alphabetical.map(([, { first, clauses, uses }]) => [
    first.document,
    first.edition ?? 'not stated',
    [...clauses].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })).join('; ') || '–',
    first.read,
    String(uses),
  ]);
  return table(
    'sources',
    caption,
    [
      ['Text', 34],
      ['Edition', 13],
      ['Clauses', 20],
      ['How it was read', 27],
      ['Used', 6],
    ],
    rows,
    { id: `sources/${name}` },
  );
}
