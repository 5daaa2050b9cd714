import { didYouMean } from '../../platform/near.js';
import type { JudgementEntry } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import { type Build, type Note, placeIn } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import { readQuantity } from '../../units/quantity.js';
import { showQuantity } from '../../units/show.js';
import type { Finding, Judgement, ShownIn } from './finding.js';
import { shownBy } from './shown.js';

/** A person's word on a finding, a photo or a document: a record of its own that changes no outcome. */

type About = { is: 'finding'; id: string } | ShownIn;

/** A judgement with what it is about. */
export interface Given {
  about: About;
  judgement: Judgement;
}

/** SHA-256 of a photo or document by its path in the build, in hexadecimal digits. */
export type DigestOf = (path: string) => string | undefined;

/** Where judgements stand: in `build.md`, and in each note. */
interface Owner {
  name: string;
  note?: Note;
  file: string;
  front: Note['front'];
  entries: readonly JudgementEntry[];
}
const owners = (build: Build): Owner[] => [
  { name: 'build', file: build.file, front: build.front, entries: build.data.judgements ?? [] },
  ...build.notes.map((note) => ({
    name: note.name,
    note,
    file: note.file,
    front: note.front,
    entries: note.data.judgements ?? [],
  })),
];

/** Every judgement of the build that leads somewhere; those that do not are problems. */
export function judgementsOf(build: Build, findings: readonly Finding[], digestOf: DigestOf): Given[] {
  return owners(build).flatMap((owner) =>
    owner.entries.flatMap((entry, i): Given[] => {
      const about = aboutOf(entry, owner.note, build, findings);
      const person = personOf(entry.by, build);
      if (!about || !person) return [];
      const { words, basis, on, letter, of } = entry;
      return [
        {
          about,
          judgement: {
            id: `${owner.name}/${entry.id}`,
            words,
            basis,
            by: person.name,
            role: person.role,
            on,
            letter,
            of,
            lapsed: lapsed(entry, about, build, findings, digestOf),
            place: owner.note ? placeOfField(owner.note, ['judgements', entry.id]) : placeIn(build, ['judgements', i]),
          },
        },
      ];
    }),
  );
}

/** Findings with the judgements on them and on what shows them; one that lapsed is a mark beside the outcome. */
export function judged(findings: readonly Finding[], given: readonly Given[]): Finding[] {
  if (given.length === 0) return [...findings];
  return findings.map((finding) => {
    const shown = finding.proof?.flatMap((p) => p.by) ?? [];
    const own = given
      .filter(({ about }) =>
        about.is === 'finding'
          ? about.id === finding.id
          : shown.some((s) => s.is === about.is && s.note === about.note && s.file === about.file),
      )
      .map(({ judgement }) => judgement);
    const marks = own.flatMap((j) => (j.lapsed ? [`judgement lapsed: ${j.lapsed}`] : []));
    return own.length === 0 ? finding : { ...finding, judgements: own, marks: [...finding.marks, ...marks] };
  });
}

/** Judgements on what is not there, or of somebody whom `build.md` does not name. */
export function judgementProblems(build: Build, findings: readonly Finding[]): Problem[] {
  return owners(build).flatMap(({ note, file, front, entries }) =>
    entries.flatMap((entry, i): Problem[] => {
      const problem = (key: 'about' | 'by' | 'letter', expected: string, known: readonly string[]): Problem => {
        const range = front.locate(['judgements', i, key]);
        return {
          code: 'reference-missing',
          file,
          ...range,
          source: front.sourceLine(range.line),
          found: `\`${entry[key]!.slice(0, 80)}\``,
          expected,
          hint: didYouMean(entry[key]!, known),
        };
      };
      const own = findings.filter((f) => note === undefined || f.note === note.name);
      const people = [
        ...(build.data.people ?? []).flatMap((p) => [p.id, p.name]),
        ...(build.data.certifier ? [build.data.certifier.name] : []),
      ];
      return [
        ...(aboutOf(entry, note, build, findings)
          ? []
          : [
              problem('about', 'the id of a finding, an item with its subject, `photo …` or `paper …`', [
                ...own.map((f) => nameOf(f)),
                ...findings.map((f) => f.id),
              ]),
            ]),
        ...(personOf(entry.by, build) ? [] : [problem('by', 'a person of build.md or the certifier', people)]),
        ...(entry.letter === undefined || paperOf(entry.letter, note, build)
          ? []
          : [
              problem(
                'letter',
                'a document of this build',
                build.notes.flatMap((n) => (n.data.papers ?? []).map((p) => p.file.split('/').at(-1)!)),
              ),
            ]),
      ];
    }),
  );
}

/** `judged by R. Ansell, certifying engineer, on 2026-03-14, as seen: the left weld is sound (of 2.48 mm; letter.pdf)`. */
export function judgementText({ words, basis, by, role, on, letter, of, lapsed: why }: Judgement): string {
  const how = { seen: 'as seen', calculated: 'by calculation', document: 'by a document' }[basis];
  return `${why ? 'lapsed: ' : ''}judged by ${by}, ${role}, on ${on}, ${how}: ${words.replace(/\.$/, '')} (of ${of}${letter ? `; ${letter}` : ''})`;
}

const nameOf = (f: Finding): string => [f.item, f.subject].filter(Boolean).join(' ');

function aboutOf(
  entry: JudgementEntry,
  note: Note | undefined,
  build: Build,
  findings: readonly Finding[],
): About | undefined {
  const { about } = entry;
  if (/^(?:photo|paper) /.test(about)) {
    const [found] = shownIn(about, note, build);
    if (found?.is === 'photo') return { is: 'photo', note: found.note.name, file: found.file };
    return found?.is === 'paper' ? paperOf(about.slice('paper '.length), note, build) : undefined;
  }
  const id =
    findings.find((f) => f.id === about) ??
    findings.find((f) => f.note === note?.name && nameOf(f) === about) ??
    findings.find((f) => nameOf(f) === about);
  return id && { is: 'finding', id: id.id };
}

/** What is named, of the own note before others; `build.md` has no photos and documents that findings rest on. */
function shownIn(text: string, note: Note | undefined, build: Build) {
  const from = note ?? build.notes[0];
  return from ? shownBy(text, from, build, []) : [];
}

/** The document, in the note that names it. */
function paperOf(name: string, note: Note | undefined, build: Build): ShownIn | undefined {
  const [found] = shownIn(`paper ${name}`, note, build);
  if (found?.is !== 'paper') return undefined;
  const owner = [...(note ? [note] : []), ...build.notes].find((n) =>
    n.data.papers?.some((p) => p.file === found.file),
  )!;
  return { is: 'paper', note: owner.name, file: found.file };
}

function personOf(name: string, build: Build): { name: string; role: string } | undefined {
  const { people, certifier } = build.data;
  const person = people?.find((p) => p.id === name || p.name === name);
  if (person) return { name: person.name, role: person.role };
  return certifier?.name === name ? { name, role: 'certifying engineer' } : undefined;
}

/** What was judged against what is there now: numbers as far as the digits that were written, else words, and files by digest. */
function lapsed(
  { of, sha256 = [] }: JudgementEntry,
  about: About,
  build: Build,
  findings: readonly Finding[],
  digestOf: DigestOf,
): string | undefined {
  const finding = about.is === 'finding' ? findings.find((f) => f.id === about.id)! : undefined;
  const unit = finding?.limit?.unit ?? finding?.measured?.unit;
  if (finding?.measured && unit !== undefined) {
    const read = readQuantity(of, unit);
    const now = showQuantity(finding.measured.si, unit);
    const same = read.ok && Math.abs(read.quantity.si - finding.measured.si) <= read.quantity.halfDigit * (1 + 1e-9);
    return same ? undefined : `was given of ${of}, now ${now}`;
  }
  const now = about.is === 'finding' ? textOf(finding!) : showsOf(about, build);
  if (plain(now) !== plain(of)) return `was given of ${of}, now ${now}`;
  const files = about.is === 'finding' ? (finding!.proof ?? []).flatMap((p) => p.by.map((b) => b.file)) : [about.file];
  return [...new Set(files)].map((file) => otherFile(file, sha256, digestOf(file))).find((why) => why !== undefined);
}

/** A file is known by its digest: another one under the same name was not judged. */
function otherFile(path: string, judged: readonly string[], now: string | undefined): string | undefined {
  const name = path.split('/').at(-1)!;
  if (now === undefined) return `${name} could not be compared with the file that was judged`;
  if (judged.length === 0)
    return `it does not say which file was judged: state \`sha256: ${now.slice(0, 12)}\` of ${name}`;
  return judged.some((digits) => now.startsWith(digits))
    ? undefined
    : `${name} is another file than the one that was judged`;
}

const textOf = (finding: Finding): string =>
  finding.answer ??
  ([...new Set((finding.proof ?? []).flatMap((p) => p.by.map((b) => b.file.split('/').at(-1)!)))].join(', ') ||
    finding.says);

function showsOf(about: ShownIn, build: Build): string {
  const { data } = build.notes.find((n) => n.name === about.note)!;
  const entries = about.is === 'photo' ? data.photos : data.papers;
  return entries!.find((e) => e.file === about.file)!.shows;
}

const plain = (text: string): string => text.toLowerCase().replace(/\s+/g, ' ').trim();
