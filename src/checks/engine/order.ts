import { type Stage, stageNames } from '../../project/common.js';
import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import type { Finding } from './finding.js';

const rests = { form: 'order', basis: 'own-copy', marks: [] as string[] } as const;

/** The stages of a note must follow each other. */
export function stageOrder(note: Note): Finding[] {
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

/** The first stage at or after the covering one that has a date. A test covers only what it was named to come after. */
export function coveredOn(stage: Stage, note: Note): { stage: Stage; on: string } | undefined {
  const later = stageNames.slice(stageNames.indexOf(stage)).filter((s) => s !== 'tested' || stage === 'tested');
  const found = later.find((s) => note.data.stages?.[s] !== undefined);
  return found && { stage: found, on: note.data.stages![found]! };
}
