import { placeOfField } from '../../project/find-field.js';
import type { Note } from '../../project/model.js';
import type { Finding } from './finding.js';
import { datedStages, follows } from './stages.js';

const rests = { form: 'order', basis: 'own-copy', marks: [] as string[] } as const;

/** Of each stage that is dated before one that it can only follow, the latest of those. */
export function stageOrder(note: Note): Finding[] {
  const dated = datedStages(note);
  return dated.flatMap(({ stage, on }): Finding[] => {
    const before = dated
      .filter((d) => follows(stage, d.stage) && d.on > on)
      .reduce<(typeof dated)[number] | undefined>((latest, d) => (latest && latest.on >= d.on ? latest : d), undefined);
    if (!before) return [];
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
