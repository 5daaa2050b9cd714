import type { Rules } from '../../checks/engine/examine.js';
import type { Finding } from '../../checks/engine/finding.js';
import { openProofs } from '../../checks/engine/open-proofs.js';
import { near } from '../../platform/near.js';
import { type Stage, stageNames } from '../../project/common.js';
import type { Build, Note } from '../../project/model.js';
import type { FoundPhoto } from './find.js';

export interface Proposal {
  note: string;
  stage?: Stage | undefined;
  why: string;
  /** What of the note a photo of this stage could still prove. */
  open: { name: string; shows: string }[];
}

/** Notes and stages that a photo could belong to, best first, by the day on which it was taken. */
export function propose(
  photo: Pick<FoundPhoto, 'takenAt' | 'dated'>,
  build: Build,
  rules: Rules,
  findings: readonly Finding[],
  wanted: { note?: string | undefined; stage?: string | undefined },
): Proposal[] {
  const day = photo.takenAt.slice(0, 10);
  const clock = photo.dated ? `taken ${day}` : `file written ${day}; it does not say when it was taken`;
  const stage = stageOf(wanted.stage);
  const notes = wanted.note === undefined ? build.notes : build.notes.filter((n) => n.name === wanted.note);
  const offers = notes.flatMap((note) => {
    const fit = fitOf(note, day);
    if (!fit && wanted.note === undefined) return [];
    const chosen = stage ?? fit?.stage;
    return [
      {
        note: note.name,
        stage: chosen,
        why: fit ? `${clock}, ${fit.why}` : clock,
        open: openProofs(note, chosen, rules.kinds.get(note.kind)!, rules.codes.items, findings),
        apart: fit?.apart ?? 999,
      },
    ];
  });
  return offers
    .sort((a, b) => a.apart - b.apart)
    .slice(0, 5)
    .map(({ apart: _, ...offer }) => offer);
}

/** The stage of that name, or the one that is nearest to it. */
export function stageOf(text: string | undefined): Stage | undefined {
  if (text === undefined) return undefined;
  const found = stageNames.find((s) => s === text) ?? near(text, stageNames)[0];
  return found as Stage | undefined;
}

/** The stage whose day is that of the photo, or the last one before it while the note was being worked on. */
function fitOf(note: Note, day: string): { stage: Stage; why: string; apart: number } | undefined {
  const dated = stageNames.flatMap((s) => (note.data.stages?.[s] ? [{ stage: s, on: note.data.stages[s]! }] : []));
  const same = dated.findLast((d) => d.on === day);
  if (same) return { stage: same.stage, why: `the day of \`${same.stage}\``, apart: 0 };
  const before = dated.findLast((d) => d.on < day);
  const after = dated.find((d) => d.on > day);
  if (before && after)
    return {
      stage: before.stage,
      why: `between \`${before.stage}\` on ${before.on} and \`${after.stage}\` on ${after.on}`,
      apart: days(before.on, day),
    };
  const nearest = before ?? after;
  if (!nearest || days(nearest.on, day) > 7) return undefined;
  return {
    stage: nearest.stage,
    why: `${days(nearest.on, day)} day(s) from \`${nearest.stage}\` on ${nearest.on}`,
    apart: 10 + days(nearest.on, day),
  };
}

const days = (a: string, b: string): number => Math.round(Math.abs(Date.parse(a) - Date.parse(b)) / 86_400_000);
