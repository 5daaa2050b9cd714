import type { z } from 'zod';
import { list, quantity, text } from '../../../project/fields.js';
import type { Work } from '../../engine/work.js';
import { hasNote } from './against.js';

/** Nearest places between what moves with engine and gearbox and what does not. */
export const gapsField = list(
  {
    to: text('what stands there', 'tunnel, above the tail housing'),
    gap: quantity('mm', 'least gap at rest', {
      places: 'smallest',
      measuredAs: 'rule',
      how: 'feeler, drill shank or plasticine at the nearest place, engine and gearbox on their mounts',
      typical: '18 mm',
      usual: [2.5, 170],
    }),
  },
  'nearest places of engine or gearbox to what does not move with them, each an item',
);

/** A gap at rest is what is left for the engine to move. */
export function examineGaps(gaps: z.output<typeof gapsField>, work: Work): void {
  if (!gaps?.length && hasNote(work, 'clearance'))
    return work.state('mounts.gap', '', 'out', 'the clearance note takes the gaps of the engine');
  if (!gaps?.length) return work.compare('mounts.gap', '', work.lacks('gaps'));
  for (const { id, gap } of gaps) work.compare('mounts.gap', id, work.take(gap, 'gaps', id, 'gap'));
}
