import type { Place } from '../../calc/value.js';
import type { Stage } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import { namesOf, type ProofName, readName } from '../../project/proves.js';
import type { Finding, ShownIn } from './finding.js';
import type { HoldPoint, Kind } from './kind.js';

/** What a photo or document names is what it proves; of several views each must be named. */

/** Capture time of photos by path, as `2026-03-14T10:20:00`, as far as the files say. */
export type TakenAt = ReadonlyMap<string, string>;

/** A photo or document of a note, with what it names. */
export interface Evidence extends ShownIn {
  id?: string | undefined;
  names: readonly Pick<ProofName, 'proof' | 'parts'>[];
  stage?: Stage | undefined;
  /** Of a photo when it was taken, of a document its own date. */
  on?: string | undefined;
  /** What a document names: sizes, designations, part numbers. */
  of?: readonly string[] | undefined;
  place: Place;
}

/** The photos and documents of a note. */
export function evidenceIn(note: Note, takenAt: TakenAt): Evidence[] {
  const of = <K extends 'photos' | 'papers'>(key: K) => (note.data[key] ?? []) as NonNullable<Note['data'][K]>;
  const at = (key: string, i: number) => placeOfField(note, [key, String(i)]);
  return [
    ...of('photos').map(
      (p, i): Evidence => ({
        is: 'photo',
        note: note.name,
        id: p.id,
        file: p.file,
        names: namesOf(p),
        stage: p.stage,
        on: takenAt.get(p.file)?.slice(0, 10) ?? p['taken-on'],
        place: at('photos', i),
      }),
    ),
    ...of('papers').map(
      (p, i): Evidence => ({
        is: 'paper',
        note: note.name,
        id: p.id,
        file: p.file,
        names: namesOf(p),
        on: p.dated,
        of: p.of,
        place: at('papers', i),
      }),
    ),
  ];
}

/** Parts that a hold point has in this note. */
export function partsOf(point: HoldPoint, data: Note['data']): readonly string[] {
  return typeof point.parts === 'function' ? point.parts(data as never) : (point.parts ?? []);
}

/** Parts of an evidence item, made from a note's own lists where its kind says how. */
export const partsOfItem = (
  item: { id: string; parts?: readonly string[] | undefined },
  kind: Kind | undefined,
  note: Note,
): readonly string[] => kind?.proofParts?.(note.data as never)[item.id] ?? item.parts ?? [];

/** The item that a hold point serves, with the parts of the item. */
export const servedBy = (point: Pick<HoldPoint, 'serves'>) =>
  point.serves === undefined ? undefined : readName(point.serves);

/**
 * Which of the parts a name names; the whole of what has no parts is `''`. What has several parts is not named as a whole:
 * `unsaid` then.
 */
export function named(parts: readonly string[], words: readonly string[]): readonly string[] | 'unsaid' {
  if (parts.length === 0) return [''];
  if (words.includes('all')) return parts;
  if (words.length === 0) return parts.length === 1 ? parts : 'unsaid';
  return parts.filter((part) => words.includes(part));
}

/** Which parts of a hold point a photo or document names, under its own id or that of the item that it serves. */
export function namedOf(point: HoldPoint, parts: readonly string[], evidence: Evidence) {
  const served = servedBy(point);
  const found = evidence.names.flatMap(({ proof, parts: words }) => {
    if (proof === point.id) return [named(parts, words)];
    if (!served || proof !== served.proof) return [];
    if (served.parts.length === 0) return [named(parts, words)];
    const own = named(served.parts, words);
    if (own === 'unsaid') return [own];
    return own.length === 0 ? [] : [parts.length === 0 ? [''] : named(parts, own)];
  });
  const told = found.flatMap((f) => (f === 'unsaid' ? [] : f));
  return { parts: [...new Set(told)], unsaid: told.length === 0 && found.includes('unsaid') };
}

/** Each part with what shows it. */
export const shownParts = (
  parts: readonly string[],
  accepted: readonly { evidence: ShownIn; parts: readonly string[] }[],
): NonNullable<Finding['proof']> =>
  (parts.length === 0 ? [''] : parts).map((part) => ({
    part,
    by: accepted.filter((a) => a.parts.includes(part)).map(({ evidence: { is, note, file } }) => ({ is, note, file })),
  }));

export const missingOf = (proof: NonNullable<Finding['proof']>): string[] =>
  proof.filter((p) => p.by.length === 0).map((p) => p.part);

/** `proves: [hoses-at-ends droop bump]`. */
export const provesText = (id: string, parts: readonly string[]): string =>
  `\`proves: [${[id, ...parts.filter((p) => p !== '')].join(' ')}]\``;

const nameOfFile = (file: string): string => file.split('/').at(-1)!;
export const showName = ({ is, file }: Pick<ShownIn, 'is' | 'file'>): string =>
  `${is === 'photo' ? 'photo' : 'document'} \`${nameOfFile(file)}\``;
