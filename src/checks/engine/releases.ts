import { near } from '../../platform/near.js';
import { placeOfField } from '../../project/find-field.js';
import type { Build, Note } from '../../project/model.js';
import type { Finding } from './finding.js';
import type { HoldPoint, Kind } from './kind.js';
import { coveredOn } from './order.js';

/** At a hold point work stops until the certifier releases it; the release stands in the note of an inspection. */

interface Release {
  from: Note;
  index: number;
  on?: string | undefined;
  note?: string | undefined;
  point?: string | undefined;
  released?: 'yes' | 'no' | undefined;
  words?: string | undefined;
}

const rests = { form: 'order', basis: 'own-copy', marks: [] as string[], item: 'hold-point-release' } as const;

export function releases(build: Build, kinds: ReadonlyMap<string, Kind>): Finding[] {
  const given = build.notes.filter((n) => n.kind === 'inspection').flatMap(releasesOf);
  const points = build.notes.flatMap((note) => kinds.get(note.kind)!.holdPoints.map((point) => ({ note, point })));
  const lost = given.filter((r) => !points.some((p) => isFor(r, p.note, p.point)));
  const held = points.filter(({ point }) => point.level === 'hold');
  return [
    ...held.map(({ note, point }) =>
      releaseOf(
        note,
        point,
        given.filter((r) => isFor(r, note, point)),
      ),
    ),
    ...lost.map((r) => leadsNowhere(r, points)),
  ];
}

function releasesOf(from: Note): Release[] {
  const data = from.data as { on?: string; released?: Omit<Release, 'from' | 'index'>[] };
  return (data.released ?? []).map((r, index) => ({ ...r, from, index, on: r.on ?? data.on }));
}

/** Notes are named in full or by their number. */
const isFor = (r: Release, note: Note, point: HoldPoint) =>
  r.point === point.id && (r.note === note.name || r.note === /^\d+/.exec(note.name)?.[0]);

function releaseOf(note: Note, point: HoldPoint, given: readonly Release[]): Finding {
  const covered = coveredOn(point.before, note);
  const place = placeOfField(note, ['stages', covered?.stage ?? point.before]);
  const base = {
    ...rests,
    id: `${note.name}/${point.id}/release`,
    note: note.name,
    subject: point.id,
    title: `Release: ${point.shows}`,
  };
  const refused = given.find((r) => r.released === 'no');
  const release = given.find((r) => r.released === 'yes');
  const at = (r: Release) => placeOfField(r.from, ['released', String(r.index)]);
  if (!release && refused)
    return {
      ...base,
      of: 'answer',
      outcome: 'requirement-not-met',
      says: `not released by the certifier${refused.on ? ` on ${refused.on}` : ''}${refused.words ? `: ${refused.words}` : ''}`,
      todo: 'stop until it is released',
      place: at(refused),
      related: { place, says: 'the stage that covers it' },
    };
  if (!release) {
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
  if (release.on === undefined)
    return {
      ...base,
      of: 'proof',
      outcome: 'part-missing',
      says: `released in ${release.from.name}, which does not say when`,
      todo: 'add `on:` to the note of the inspection',
      place: at(release),
    };
  if (covered && release.on > covered.on)
    return {
      ...base,
      of: 'date',
      outcome: 'out-of-order',
      says: `released on ${release.on}, after \`${covered.stage}\` on ${covered.on}`,
      todo: 'agree with the certifier on another proof, or correct the date that is wrong',
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
