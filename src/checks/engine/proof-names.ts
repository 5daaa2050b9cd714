import { didYouMean } from '../../platform/near.js';
import type { Build, Note } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { namesOf, type ProofName } from '../../project/proves.js';
import type { Item } from '../codes/item.js';
import type { Kind } from './kind.js';
import { partsOf, partsOfItem } from './proofs.js';

/** What photos and documents name and what is no hold point of the note, no item of the codes, or no part of it. */
export function proofNameProblems(
  build: Build,
  kinds: ReadonlyMap<string, Kind>,
  items: ReadonlyMap<string, Item>,
): Problem[] {
  return build.notes.flatMap((note) =>
    (['photos', 'papers'] as const).flatMap((key) =>
      (note.data[key] ?? []).flatMap((entry, i) =>
        namesOf(entry).flatMap((name) => problemsOf(name, [key, i], note, kinds.get(note.kind)!, items)),
      ),
    ),
  );
}

function problemsOf(
  { proof, parts, path }: ProofName,
  at: readonly [string, number],
  note: Note,
  kind: Kind,
  items: ReadonlyMap<string, Item>,
): Problem[] {
  const point = kind.holdPoints.find((p) => p.id === proof);
  const item = items.get(proof);
  const place = (word: string) => wordIn(note, [...at, ...path], word);
  if (!point && !item)
    return [
      {
        code: 'reference-missing',
        ...place(proof),
        found: `no hold point of this note and no item \`${proof.slice(0, 80)}\``,
        expected: 'the id of a hold point of this note or of an item of the codes',
        hint: didYouMean(proof, likely(proof, kind, items)),
      },
    ];
  const serving = kind.holdPoints.filter((p) => p.serves?.split(' ')[0] === proof);
  const known = point
    ? partsOf(point, note.data)
    : [
        ...(item!.kind === 'evidence' ? partsOfItem(item!, kind, note) : []),
        ...serving.flatMap((p) => partsOf(p, note.data)),
      ];
  return parts
    .filter((part) => part !== 'all' && !known.includes(part))
    .map((part) => ({
      code: 'reference-missing' as const,
      ...place(part),
      found: `no part \`${part.slice(0, 80)}\` of \`${proof}\``,
      expected:
        known.length > 0 ? `one of ${[...new Set(known)].join(', ')}` : `\`${proof}\` alone, which has no parts`,
      hint: known.length > 0 ? didYouMean(part, known) : undefined,
    }));
}

/** Hold points of the note, and items of the same subject where there are any. */
function likely(proof: string, kind: Kind, items: ReadonlyMap<string, Item>): string[] {
  const family = [...items.keys()].filter((id) => id.startsWith(`${proof.split('.')[0]}.`));
  return [...kind.holdPoints.map((p) => p.id), ...(family.length > 0 || !proof.includes('.') ? family : items.keys())];
}

/** The word within the value at a path. */
function wordIn(note: Note, path: readonly (string | number)[], word: string) {
  const range = note.front.locate(path as (string | number)[]);
  const source = note.front.sourceLine(range.line);
  const at = source
    .slice(range.column - 1, range.endColumn - 1)
    .search(new RegExp(`(?<=^|["'\\s])${escaped(word)}(?=$|["'\\s])`));
  return {
    file: note.file,
    line: range.line,
    column: range.column + Math.max(at, 0),
    endColumn: at === -1 ? range.endColumn : range.column + at + word.length,
    source,
  };
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
