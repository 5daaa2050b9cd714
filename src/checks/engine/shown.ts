import type { Run } from '../../calc/run.js';
import type { Place } from '../../calc/value.js';
import { near } from '../../platform/near.js';
import { placeOfField } from '../../project/find-field.js';
import { measuredIn } from '../../project/measured-in.js';
import type { Build, Note } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';

/** Where an answer is shown: what its `shown:` names. */
export type Shown =
  | { is: 'note'; note: Note }
  | { is: 'build' }
  | { is: 'photo'; note: Note; file: string }
  | { is: 'paper'; file: string }
  | { is: 'sheets'; runs: readonly string[] };

type Lost = { is: 'lost'; part: string; expected: string; near?: string | undefined };

/** Each part of a text such as `sheet crossmember, photo tube-wall`: where it leads, or why it leads nowhere. */
export function shownBy(text: string, note: Note, build: Build, runs: readonly Pick<Run, 'id'>[]): (Shown | Lost)[] {
  return text
    .split(/\s*(?:[,;]|\band\b)\s*/)
    .filter((part) => part !== '')
    .map((part) => {
      const [, kind = '', name = ''] = /^(\S+)\s+(.+)$/.exec(part) ?? [];
      const find = Object.hasOwn(finders, kind.toLowerCase())
        ? finders[kind.toLowerCase() as keyof typeof finders]
        : undefined;
      if (!find) return { is: 'lost', part, expected: '`note …`, `photo …`, `paper …`, `drawing …` or `sheet …`' };
      const found = find(name, note, build, runs);
      return 'names' in found
        ? { is: 'lost', part, expected: found.expected, near: nearest(kind, name, found.names) }
        : found;
    });
}

type Finder = (
  name: string,
  note: Note,
  build: Build,
  runs: readonly Pick<Run, 'id'>[],
) => Shown | { expected: string; names: readonly string[] };

const photo: Finder = (name, note, build) => {
  const found = fileOf('photos', name, note, build);
  return found
    ? { is: 'photo', note: found.note, file: found.file }
    : { expected: 'the id or file of a photo of this build', names: namesOf('photos', build) };
};

const paper: Finder = (name, note, build) => {
  const found = fileOf('papers', name, note, build);
  return found
    ? { is: 'paper', file: found.file }
    : { expected: 'the id or file of a paper of this build', names: namesOf('papers', build) };
};

const finders = {
  note: (name, _, build) => {
    if (name === 'build.md' || name === 'build') return { is: 'build' };
    const wanted = name.replace(/^notes\//, '').replace(/\.md$/, '');
    const found =
      build.notes.find((n) => n.name === wanted) ?? build.notes.find((n) => /^\d+/.exec(n.name)?.[0] === wanted);
    return found
      ? { is: 'note', note: found }
      : { expected: 'the name or number of a note, or build.md', names: build.notes.map((n) => n.name) };
  },
  photo,
  paper,
  drawing: (name, note, build, runs) => {
    const asPaper = paper(name, note, build, runs);
    return 'names' in asPaper ? photo(name, note, build, runs) : asPaper;
  },
  sheet: (name, note, _, runs) => {
    const own = runs.filter((r) => r.id.startsWith(`${note.name}/`) && hasParts(r.id, name));
    const found = own.length > 0 ? own : runs.filter((r) => hasParts(r.id, name));
    if (found.length > 0) return { is: 'sheets', runs: found.map((r) => r.id) };
    const names = new Set(runs.flatMap((r) => [r.id, ...r.id.split('/').slice(1)]));
    return { expected: 'the subject or name of a calculation sheet of this build', names: [...names] };
  },
} as const satisfies Record<string, Finder>;

/** Whether the parts of `name` follow each other in the id of a run; a note may be named by its number. */
function hasParts(id: string, name: string): boolean {
  const [first, ...rest] = id.split('/');
  return [first, /^\d+/.exec(first!)?.[0]].some((note) => `/${[note, ...rest].join('/')}/`.includes(`/${name}/`));
}

/** By id, file name or file name without its ending; of the own note before others. `020 tube-wall` names the note. */
function fileOf(
  key: 'photos' | 'papers',
  name: string,
  note: Note,
  build: Build,
): { note: Note; file: string } | undefined {
  const [, number, rest] = /^(\d+)[ /](.+)$/.exec(name) ?? [];
  const among = (notes: readonly Note[], wanted: string) =>
    notes.flatMap((n) =>
      (n.data[key] ?? []).filter((e) => spellings(e).includes(wanted)).map((e) => ({ note: n, file: e.file })),
    )[0];
  const numbered =
    number === undefined
      ? undefined
      : among(
          build.notes.filter((n) => n.name.startsWith(number)),
          rest!,
        );
  return numbered ?? among([note, ...build.notes], name);
}

export function spellings(entry: { id?: string | undefined; file: string }): string[] {
  const base = entry.file.split('/').at(-1)!;
  return [...(entry.id ? [entry.id] : []), entry.file, base, base.replace(/\.[^.]*$/, '')];
}

const namesOf = (key: 'photos' | 'papers', build: Build): string[] =>
  build.notes.flatMap((n) => (n.data[key] ?? []).map((e) => e.id ?? spellings(e).at(-1)!));

const nearest = (kind: string, name: string, names: readonly string[]): string | undefined => {
  const [first] = near(name, names, 1);
  return first === undefined ? undefined : `${kind} ${first}`;
};

/** Every `shown:` of an answer and `photo:` of a value that leads nowhere. */
export function shownProblems(build: Build, evaluation: { runs: readonly Pick<Run, 'id'>[] }): Problem[] {
  return build.notes.flatMap((note) => [
    ...Object.entries(note.data.answers ?? {}).flatMap(([item, answer]) =>
      lostIn(answer?.shown ?? '', placeOfField(note, ['answers', item, 'shown']), note, build, evaluation),
    ),
    ...measuredIn(note.data).flatMap((m) =>
      m.photo === undefined ? [] : lostIn(`photo ${m.photo}`, m.at, note, build, evaluation),
    ),
  ]);
}

function lostIn(
  text: string,
  place: Place,
  note: Note,
  build: Build,
  { runs }: { runs: readonly Pick<Run, 'id'>[] },
): Problem[] {
  return shownBy(text, note, build, runs).flatMap((s): Problem[] => {
    if (s.is !== 'lost') return [];
    const { file, line, column, endColumn } = place;
    const hint = s.near ? `did you mean \`${s.near}\`?` : undefined;
    return [
      {
        code: 'reference-missing',
        file,
        line,
        column,
        endColumn,
        source: note.front.sourceLine(line),
        found: `\`${s.part}\` as what shows it, which leads nowhere`,
        expected: s.expected,
        hint,
      },
    ];
  });
}
