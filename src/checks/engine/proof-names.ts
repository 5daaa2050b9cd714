import { didYouMean } from '../../platform/near.js';
import type { Build, Note } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { namesOf, type ProofName } from '../../project/proves.js';
import type { Item } from '../codes/item.js';
import type { Kind } from './kind.js';
import { partsOf, partsOfItem, servedBy } from './proofs.js';

/** What photos and documents name and what is no hold point of the note, no item of the codes, or no part of it. */
export function proofNameProblems(
  build: Build,
  kinds: ReadonlyMap<string, Kind>,
  items: ReadonlyMap<string, Item>,
): Problem[] {
  return build.notes.flatMap((note) =>
    (['photos', 'papers'] as const).flatMap((key) =>
      (note.data[key] ?? []).flatMap((entry, i) =>
        namesOf(entry).flatMap((name) =>
          unknownIn(name, note, kinds.get(note.kind)!, items).map(
            ({ word, ...problem }): Problem => ({
              code: 'reference-missing',
              ...wordIn(note, [key, i, ...name.path], word),
              ...problem,
            }),
          ),
        ),
      ),
    ),
  );
}

/** A word of a name that names nothing, with what it may be. */
export interface Unknown {
  word: string;
  found: string;
  expected: string;
  hint: string | undefined;
}

/** What of a name is no hold point of the note, no item of the codes and no part of it. */
export function unknownIn(
  { proof, parts }: Pick<ProofName, 'proof' | 'parts'>,
  note: Note,
  kind: Kind,
  items: ReadonlyMap<string, Item>,
): Unknown[] {
  const point = kind.holdPoints.find((p) => p.id === proof);
  const item = items.get(proof);
  if (!point && !item)
    return [
      {
        word: proof,
        found: `no hold point of this note and no item \`${proof.slice(0, 80)}\``,
        expected: 'the id of a hold point of this note or of an item of the codes',
        hint: didYouMean(proof, likely(proof, kind, items)),
      },
    ];
  const serving = kind.holdPoints.filter((p) => servedBy(p)?.proof === proof);
  const known = point
    ? partsOf(point, note.data)
    : [
        ...(item!.kind === 'evidence' ? partsOfItem(item!, kind, note) : []),
        ...serving.flatMap((p) => partsOf(p, note.data)),
      ];
  return parts
    .filter((part) => part !== 'all' && !known.includes(part))
    .map((part) => ({
      word: part,
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
