import { type Stage, stageNames } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import type { Finding } from './finding.js';
import type { HoldPoint, Kind } from './kind.js';

/** Capture time of photos by path, as `2026-03-14T10:20:00`, as far as the files say. */
export type TakenAt = ReadonlyMap<string, string>;

/** Evidence must have been made before the next stage covered it, and the stages must follow each other. */
export function checkOrder(note: Note, kind: Kind, takenAt: TakenAt): Finding[] {
  return [...stageOrder(note), ...kind.holdPoints.map((point) => heldBefore(point, note, takenAt))];
}

const rests = { form: 'order', basis: 'own-copy', marks: [] as string[] } as const;

function stageOrder(note: Note): Finding[] {
  const dated = stageNames.flatMap((stage) =>
    note.data.stages?.[stage] ? [{ stage, on: note.data.stages[stage]! }] : [],
  );
  return dated.slice(1).flatMap(({ stage, on }, i): Finding[] => {
    const before = dated[i]!;
    if (on >= before.on) return [];
    return [
      {
        ...rests,
        id: `${note.name}/${stage}/stage-order`,
        note: note.name,
        subject: stage,
        item: 'stage-order',
        title: 'Stages follow each other',
        of: 'date',
        outcome: 'out-of-order',
        says: `\`${stage}\` is dated ${on}, before \`${before.stage}\` on ${before.on}`,
        todo: 'correct the date that is wrong',
        place: placeOfField(note, ['stages', stage]),
        related: { place: placeOfField(note, ['stages', before.stage]), says: `\`${before.stage}\` is dated here` },
      },
    ];
  });
}

function heldBefore(point: HoldPoint, note: Note, takenAt: TakenAt): Finding {
  const photos = (note.data.photos ?? []).flatMap((photo, i) =>
    photo.stage === point.during
      ? [
          {
            ...photo,
            on: takenAt.get(photo.file)?.slice(0, 10) ?? photo['taken-on'],
            place: placeOfField(note, ['photos', String(i)]),
          },
        ]
      : [],
  );
  const covered = coveredOn(point.before, note);
  const base = {
    ...rests,
    id: `${note.name}/${point.id}/hold-point`,
    note: note.name,
    subject: point.id,
    item: 'hold-point',
    title: point.shows,
  };
  const place = placeOfField(note, ['stages', covered?.stage ?? point.before]);
  if (photos.length === 0) {
    if (!covered)
      return {
        ...base,
        of: 'proof',
        outcome: 'not-shown',
        says: `still to be recorded in the stage \`${point.during}\`, before it is ${point.before}`,
        todo: `photograph it: ${point.shows}`,
        place,
      };
    return {
      ...base,
      of: 'proof',
      outcome: 'not-shown',
      says: `\`${covered.stage}\` since ${covered.on}, without a photo of the stage \`${point.during}\``,
      todo: 'find an earlier photo, or agree with the certifier on opening it or on another proof',
      place,
    };
  }
  const late = covered && photos.find((p) => p.on !== undefined && p.on > covered.on);
  if (late) {
    return {
      ...base,
      of: 'date',
      outcome: 'out-of-order',
      says: `the photo for \`${point.during}\` was taken on ${late.on}, after \`${covered.stage}\` on ${covered.on}`,
      todo: 'name the photo that was taken before it was covered, or correct the date',
      place: late.place,
      related: { place, says: `\`${covered.stage}\` is dated here` },
    };
  }
  const shown = photos.find((p) => p.on !== undefined) ?? photos[0]!;
  if (shown.on === undefined)
    return {
      ...base,
      of: 'proof',
      outcome: 'part-missing',
      says: `photo \`${shown.file}\` does not say when it was taken`,
      todo: 'add `taken-on:` to the photo',
      place: shown.place,
    };
  return {
    ...base,
    of: 'proof',
    outcome: 'seen',
    says: covered
      ? `photographed on ${shown.on}, \`${covered.stage}\` on ${covered.on}`
      : `photographed on ${shown.on}, not covered yet`,
    place: shown.place,
  };
}

/** The first stage at or after the covering one that has a date. A test covers only what it was named to come after. */
export function coveredOn(stage: Stage, note: Note): { stage: Stage; on: string } | undefined {
  const later = stageNames.slice(stageNames.indexOf(stage)).filter((s) => s !== 'tested' || stage === 'tested');
  const found = later.find((s) => note.data.stages?.[s] !== undefined);
  return found && { stage: found, on: note.data.stages![found]! };
}
