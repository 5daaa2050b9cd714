import { didYouMean } from '../../platform/near.js';
import type { Path } from '../../project/frontmatter.js';
import type { Build, Note } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';

/** Ids of items that notes name and that no code and no limits file has: a mistyped id would answer nothing. */
export function unknownItems(build: Build, known: readonly string[]): Problem[] {
  const ids = new Set(known);
  return build.notes.flatMap((note) =>
    named(note).flatMap(({ id, path, part }): Problem[] => {
      if (ids.has(id)) return [];
      const range = note.front.locate(path, part);
      return [
        {
          code: 'reference-missing',
          file: note.file,
          ...range,
          source: note.front.sourceLine(range.line),
          found: `no item \`${id.slice(0, 80)}\``,
          expected: 'the id of an item of the codes or of limits.yaml',
          hint: hintFor(id, known),
        },
      ];
    }),
  );
}

function named({ data }: Note): { id: string; path: Path; part: 'key' | 'value' }[] {
  const keys = (of: 'answers' | 'measured') =>
    Object.keys(data[of] ?? {}).map((id) => ({ id, path: [of, id], part: 'key' as const }));
  const conceded = (data.concessions ?? []).map((c, i) => ({
    id: c.item,
    path: ['concessions', i, 'item'],
    part: 'value' as const,
  }));
  return [...keys('answers'), ...keys('measured'), ...conceded];
}

/** Items of the same subject are the likeliest. */
function hintFor(id: string, known: readonly string[]): string {
  const family = known.filter((k) => k.startsWith(`${id.split('.')[0]}.`));
  return didYouMean(id, family.length > 0 ? family : known);
}
