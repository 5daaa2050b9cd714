import { didYouMean } from '../platform/near.js';
import type { Frontmatter, Path, Plain } from './frontmatter.js';
import { measuredIn } from './measured-in.js';
import type { Build } from './model.js';
import type { Problem } from './problem.js';

/** Texts, days and names that were typed and cannot stand: what only holds a place, a day to come, a person whom nobody knows. */

/** A place that is kept for something: no letter and no digit, or words that say that it is still to come. */
export const keepsAPlace = (text: string): boolean =>
  !/[\p{L}\p{N}%°″]/u.test(text) ||
  /^\s*(?:tb[acd]|to[ -]?do|fix ?me|x{3,}|to be (?:\w+|\w+ \w+))\s*[.?!]*\s*$/iu.test(text);

/** What a text says that settles nothing: not yet, unknown, later, asked. */
export const leavesOpen = (text: string): boolean =>
  /^\s*(?:not (?:yet|known|sure|checked|done|measured)|unknown|unsure|later|pending|open|maybe|perhaps|don'?t know|asked|see later|to follow)\b/iu.test(
    text,
  );

/** Every text of `build.md`, notes, queries and limits that keeps a place; an empty key says the same and is told as open. */
export function placesKept({ front, file, notes, queries, limits }: Build): Problem[] {
  return [{ front, file }, ...notes, ...queries, ...limits].flatMap((one) =>
    textsIn(one.front.data).flatMap(({ path, text }) =>
      text !== '' && keepsAPlace(text)
        ? [
            {
              ...at(one.front, one.file, path),
              found: `\`${text.replace(/\p{C}/gu, ' ').slice(0, 60)}\`, which says nothing yet`,
              expected: 'what is meant, or nothing',
              hint: 'leave the key empty until it is known: it is then told as open',
            },
          ]
        : [],
    ),
  );
}

/** The day that it is in the farthest place east, as `2026-03-14`: a day after it is to come everywhere. */
export const latestDay = (now = Date.now()): string => new Date(now + 14 * 3_600_000).toISOString().slice(0, 10);

/** Days of `build.md`, notes and queries that are still to come: nothing was measured, checked or signed on them. */
export function daysToCome({ front, file, notes, queries }: Build, today: string): Problem[] {
  return [{ front, file }, ...notes, ...queries].flatMap((one) =>
    textsIn(one.front.data).flatMap(({ path, text }) =>
      /^\d{4}-\d{2}-\d{2}$/.test(text) && text > today
        ? [
            {
              ...at(one.front, one.file, path),
              found: `${text}, which is still to come`,
              expected: `a day up to ${today}`,
              hint: 'correct the day, or write it when it has come',
            },
          ]
        : [],
    ),
  );
}

/** A name without what stands in brackets behind it. */
const bare = (name: string): string => name.replace(/\s*\([^)]*\)\s*$/, '').trim();

/** Who measured or did the work, where `build.md` names its people and not this one. */
export function unknownPeople(build: Build): Problem[] {
  const { people, certifier } = build.data;
  if (!people?.length) return [];
  const known = [...people.flatMap((p) => [p.id, bare(p.name)]), ...(certifier ? [bare(certifier.name)] : [])];
  const unknown = ({ line, column, endColumn }: TextRange, { front, file }: Owner, name: string): Problem[] =>
    known.includes(bare(name))
      ? []
      : [
          {
            code: 'reference-missing',
            file,
            line,
            column,
            ...(endColumn === undefined ? {} : { endColumn }),
            source: front.sourceLine(line),
            found: `\`${name.slice(0, 80)}\``,
            expected: 'a person of build.md, by id or name',
            hint: didYouMean(name, known) ?? 'add this person to `people:` of build.md',
          },
        ];
  return [
    ...build.notes.flatMap((note) => (note.data.by ? unknown(note.front.locate(['by']), note, note.data.by) : [])),
    ...[{ data: build.data, front: build.front, file: build.file }, ...build.notes].flatMap((one) =>
      measuredIn(one.data).flatMap(({ by, byAt }) => (by && byAt ? unknown(byAt, one, by) : [])),
    ),
  ];
}

type TextRange = { line: number; column: number; endColumn?: number | undefined };
interface Owner {
  front: Frontmatter;
  file: string;
}

const at = (front: Frontmatter, file: string, path: Path) => {
  const range = front.locate(path);
  return { code: 'value' as const, file, ...range, source: front.sourceLine(range.line) };
};

function textsIn(value: Plain | undefined, path: Path = []): { path: Path; text: string }[] {
  if (typeof value === 'string') return [{ path, text: value }];
  if (Array.isArray(value)) return value.flatMap((one, i) => textsIn(one, [...path, i]));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => textsIn(inner as Plain, [...path, key]));
}
