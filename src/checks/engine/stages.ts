import { type Stage, stageNames } from '../../project/common.js';
import type { Note } from '../../project/model.js';

/**
 * What must lie behind a stage. Paint and assembly are free against each other: a bracket is painted before it is bolted on,
 * a seam after. A part may be machined before it is welded or after.
 */
const after: Readonly<Record<Stage, readonly Stage[]>> = {
  'as-received': [],
  dismantled: ['as-received'],
  cut: ['as-received'],
  machined: ['as-received'],
  tacked: ['cut'],
  welded: ['tacked'],
  assembled: ['dismantled', 'machined', 'welded'],
  painted: ['welded'],
  trimmed: ['painted'],
  tested: ['assembled'],
  finished: ['trimmed', 'tested'],
};

/** Whether `later` can only come once `earlier` is done. */
export function follows(later: Stage, earlier: Stage): boolean {
  return after[later].some((before) => before === earlier || follows(before, earlier));
}

/** The stages of a note that have a date, in the order in which they are listed. */
export function datedStages(note: Note): { stage: Stage; on: string }[] {
  return stageNames.flatMap((stage) => {
    const on = note.data.stages?.[stage];
    return on === undefined ? [] : [{ stage, on }];
  });
}

/**
 * When something was covered: by the stage that covers it, else by the earliest of those that only come after it. A test
 * covers only what it was named to come after.
 */
export function coveredOn(stage: Stage, note: Note): { stage: Stage; on: string } | undefined {
  const dated = datedStages(note);
  const later = dated.filter((d) => d.stage !== 'tested' && follows(d.stage, stage));
  return dated.find((d) => d.stage === stage) ?? later.sort((a, b) => a.on.localeCompare(b.on))[0];
}
