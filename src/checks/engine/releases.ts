import { near } from '../../platform/near.js';
import { placeOfField } from '../../project/find-field.js';
import type { Build, Note } from '../../project/model.js';
import { isCertifier } from './certifier.js';
import type { Finding } from './finding.js';
import { type HoldPoint, holdPointsOf, type Kind } from './kind.js';
import { coveredOn } from './stages.js';

/** At a hold point work stops until the certifier releases it; the release stands in the note of an inspection. */

interface Release {
  from: Note;
  index: number;
  on?: string | undefined;
  note?: string | undefined;
  point?: string | undefined;
  released?: 'yes' | 'no' | undefined;
  words?: string | undefined;
  who?: string | undefined;
}

const rests = { form: 'order', basis: 'own-copy', marks: [] as string[], item: 'hold-point-release' } as const;

export function releases(build: Build, kinds: ReadonlyMap<string, Kind>): Finding[] {
  const given = build.notes.filter((n) => n.kind === 'inspection').flatMap(releasesOf);
  const points = build.notes.flatMap((note) =>
    holdPointsOf(kinds.get(note.kind)!, note).map((point) => ({ note, point })),
  );
  const lost = given.filter((r) => !points.some((p) => isFor(r, p.note, p.point)));
  const held = points.filter(({ point }) => point.level === 'hold');
  return [
    ...held.map(({ note, point }) =>
      releaseOf(
        note,
        point,
        given.filter((r) => isFor(r, note, point)),
        build,
      ),
    ),
    ...lost.map((r) => leadsNowhere(r, points)),
  ];
}

function releasesOf(from: Note): Release[] {
  const data = from.data as { on?: string; who?: string; released?: Omit<Release, 'from' | 'index'>[] };
  return (data.released ?? []).map((r, index) => ({ ...r, from, index, on: r.on ?? data.on, who: data.who }));
}

/** Notes are named in full or by their number. */
const isFor = (r: Release, note: Note, point: HoldPoint) =>
  r.point === point.id && (r.note === note.name || r.note === /^\d+/.exec(note.name)?.[0]);

/** By day, of one day as they stand; a refusal without a day counts last. */
const inOrder = (a: Release, b: Release): number => dayOf(a).localeCompare(dayOf(b));
const dayOf = ({ on, released }: Release): string => on ?? (released === 'no' ? '9999' : '');

function releaseOf(note: Note, point: HoldPoint, given: readonly Release[], build: Build): Finding {
  const covered = coveredOn(point.before, note);
  const place = placeOfField(note, ['stages', covered?.stage ?? point.before]);
  const base = {
    ...rests,
    id: `${note.name}/${point.id}/release`,
    note: note.name,
    subject: point.id,
    title: `Release: ${point.shows}`,
  };
  const at = (r: Release) => placeOfField(r.from, ['released', String(r.index)]);
  const words = [...given].sort(inOrder);
  const last = words.at(-1);
  if (last?.released === 'no')
    return {
      ...base,
      of: 'answer',
      outcome: 'requirement-not-met',
      says: `not released by the certifier${last.on ? ` on ${last.on}` : ''}${last.words ? `: ${last.words}` : ''}`,
      todo: 'stop until it is released',
      place: at(last),
      related: { place, says: 'the stage that covers it' },
    };
  // What was released before a refusal was taken back by it.
  const standing = words.slice(words.findLastIndex((r) => r.released === 'no') + 1).filter((r) => r.released === 'yes');
  if (standing.length === 0) {
    const says = covered
      ? `\`${covered.stage}\` since ${covered.on}, without a release by the certifier`
      : `work stops here before it is ${point.before}, until the certifier releases it`;
    return {
      ...base,
      of: 'proof',
      outcome: 'not-shown',
      says,
      todo: 'show it to the certifier and keep the release in a note of the inspection, under `released:`',
      place,
    };
  }
  const lacking = (r: Release) => whatIsLacking(r, note, point, build);
  const release =
    standing.find((r) => lacking(r) === undefined && (!covered || r.on! <= covered.on)) ??
    standing.find((r) => lacking(r) === undefined) ??
    standing.at(-1)!;
  const why = lacking(release);
  if (why) return { ...base, of: 'proof', outcome: 'part-missing', says: why.says, todo: why.todo, place: at(release) };
  if (covered && release.on! > covered.on)
    return {
      ...base,
      of: 'date',
      outcome: 'out-of-order',
      says: `released on ${release.on}, after \`${covered.stage}\` on ${covered.on}`,
      todo: 'agree alternative evidence with the certifier, or correct the date that is wrong',
      place: at(release),
      related: { place, says: `\`${covered.stage}\` is dated here` },
    };
  return {
    ...base,
    of: 'date',
    outcome: 'in-order',
    says: `released on ${release.on}${release.words ? `: ${release.words}` : ''}${covered ? `, \`${covered.stage}\` on ${covered.on}` : ''}`,
    place: at(release),
  };
}

/** What keeps a release from counting. */
function whatIsLacking(
  { from, on, who }: Release,
  note: Note,
  point: HoldPoint,
  build: Build,
): { says: string; todo: string } | undefined {
  if (on === undefined)
    return {
      says: `released in ${from.name}, which does not say when`,
      todo: 'add `on:` to the note of the inspection',
    };
  if (who === undefined || !isCertifier(who, build))
    return {
      says: `released in ${from.name} by ${who ?? 'nobody who is named'}, not by the certifying engineer of build.md`,
      todo: 'name the certifying engineer in build.md (`certifier:`) and in the note of the inspection (`who:`)',
    };
  const begun = note.data.stages?.[point.during];
  if (begun !== undefined && on < begun)
    return {
      says: `released on ${on}, before it was ${point.during} on ${begun}: what was released is not what is there`,
      todo: 'show it to the certifier again, or correct the date that is wrong',
    };
  return undefined;
}

function leadsNowhere(r: Release, points: readonly { note: Note; point: HoldPoint }[]): Finding {
  const named = `${r.note ?? '…'} ${r.point ?? '…'}`;
  const [best] = near(
    named,
    points.map((p) => `${p.note.name} ${p.point.id}`),
    1,
  );
  return {
    ...rests,
    id: `${r.from.name}/${r.index + 1}/release`,
    note: r.from.name,
    subject: named,
    title: 'Release of a hold point',
    of: 'proof',
    outcome: 'not-shown',
    says: `no hold point \`${named}\``,
    todo: best ? `did you mean \`${best}\`?` : 'name the note and the id of its hold point; `gusset plan` lists them',
    place: placeOfField(r.from, ['released', String(r.index)]),
  };
}
