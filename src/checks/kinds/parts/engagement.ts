import type { z } from 'zod';
import { threadEngagement } from '../../../calc/fasteners/thread-engagement.js';
import { threadLimits } from '../../../calc/fasteners/thread-limits.js';
import { readPropertyClass } from '../../../project/designations/property-class.js';
import { readThread } from '../../../project/designations/thread.js';
import { choice, designation, list, named, quantity, text } from '../../../project/fields.js';
import { boundOf, type Limit } from '../../codes/limit.js';
import { isMissing, type Work } from '../../engine/work.js';
import { fromDesignation } from './designated.js';

/** Bolts and studs in tapped holes or nuts. */
export const boltsField = list(
  {
    joint: text('which bolt', 'engine bracket to block, left, front upper'),
    thread: designation(readThread, 'its thread', 'M10x1.5'),
    class: designation(readPropertyClass, 'class or grade marked on the head', '8.8'),
    tapped: choice(
      { steel: 'steel, or a nut', 'cast-iron': 'cast iron', aluminium: 'aluminium' },
      'what it is screwed into',
    ),
    'tapped-strength': named('MPa', 'tensile strength of the tapped material, where it is known', {
      typical: '250 MPa',
    }),
    engaged: quantity('mm', 'length of full thread that is engaged', {
      places: 'smallest',
      how: 'length of the bolt less what it clamps, and less chamfer and run-out; depth gauge in the hole',
      typical: '16 mm',
    }),
    locking: text('how it is locked', 'spring washer, paint mark'),
  },
  'bolts that hold it, each an item',
);
type Bolt = NonNullable<z.output<typeof boltsField>>[number];

/** Thread engagement: by the strength of both threads where it is known, otherwise by the rule of thumb that the item names. */
export function examineEngagement(bolts: z.output<typeof boltsField>, work: Work): void {
  if (!bolts?.length) return work.compare('fasteners.engagement', '', work.lacks('bolts'));
  for (const bolt of bolts) {
    const { id, thread, tapped } = bolt;
    if (thread) work.publish('thread_diameter', fromDesignation(thread, thread.diameter, 'mm'));
    const engaged = work.take(bolt.engaged, 'bolts', id, 'engaged');
    const lacking = thread
      ? tapped
        ? undefined
        : work.lacks('bolts', id, 'tapped')
      : work.lacks('bolts', id, 'thread');
    work.compare('fasteners.engagement', id, isMissing(engaged) ? engaged : (lacking ?? engaged), {
      limit: byStrength(bolt, work),
      states: { tapped },
    });
  }
}

function byStrength({ id, thread, class: property, 'tapped-strength': tapped }: Bolt, work: Work): Limit | undefined {
  if (!thread || !property || !tapped || !threadLimits.has(thread.text)) return undefined;
  const tensile = property.tensile(thread.diameter);
  if (tensile === undefined) return undefined;
  const required = work
    .sheet(threadEngagement, id, {
      thread: thread.text,
      boltStrength: fromDesignation(property, tensile, 'MPa'),
      tappedStrength: work.take(tapped, 'bolts', id, 'tapped-strength'),
    })
    .get('required');
  if (isMissing(required)) return undefined;
  return {
    min: boundOf(required),
    unit: 'mm',
    document: 'FED-STD-H28/2B, length of engagement; calculated for these two threads and materials',
    basis: 'quoted',
    recommended: true,
  };
}

/** What the bolts state of their locking. */
export function boltAnswers(bolts: z.output<typeof boltsField>) {
  const all = bolts ?? [];
  const loose = all.filter((b) => /^(?:none|nothing|not locked|no)$/i.test(b.locking?.trim() ?? ''));
  return {
    'fasteners.locking':
      loose.length > 0
        ? {
            answer: 'no',
            because: `not locked: ${loose.map((b) => b.id).join(', ')}`,
            from: ['bolts', loose[0]!.id, 'locking'],
          }
        : all.length > 0 && all.every((b) => b.locking)
          ? { answer: 'yes', because: all.map((b) => `${b.id}: ${b.locking}`).join('; '), from: ['bolts'] }
          : undefined,
  };
}
