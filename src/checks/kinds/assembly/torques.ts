import type { z } from 'zod';
import { readThread } from '../../../project/designations/thread.js';
import { choice, designation, list, type Measured, named, quantity, text } from '../../../project/fields.js';
import { exactBound, type Limit } from '../../codes/limit.js';
import type { Work } from '../../engine/work.js';
import { asPrescribed } from '../parts/maker-window.js';

const asked = 'as the manual writes it, with the tolerance that it gives: `60 ± 5 N·m`; a range by its middle and half';

export const joints = list(
  {
    says: text('which fasteners', 'cylinder head bolts'),
    thread: designation(readThread, 'thread', 'M10x1.25'),
    oiled: text('what is on thread and under the head', 'engine oil'),
    bolts: choice(
      {
        new: 'new',
        'used-again': 'used again, which their maker allows',
        'used-though-once-only': 'used again, though their maker allows one use only',
      },
      'new fasteners or used ones',
    ),
    sequence: text('order in which they were tightened', 'from the middle outwards, 1 to 14 as numbered in the manual'),
    steps: list(
      {
        torque: named('N*m', 'torque to which the wrench was set', {
          how: 'checked torque wrench, in one smooth pull',
          typical: '60 N·m',
        }),
        'asked-torque': quantity('N*m', "torque of this step in the engine maker's manual", {
          measuredAs: 'paper',
          how: asked,
          typical: '60 ± 5 N·m',
        }),
        angle: named('deg', 'angle by which it was turned on', {
          how: 'angle gauge, or a paint mark on the head',
          typical: '90 deg',
        }),
        'asked-angle': quantity('deg', "angle of this step in the engine maker's manual", {
          measuredAs: 'paper',
          how: asked,
          typical: '90 ± 5 deg',
        }),
      },
      'steps in their order, by torque or by angle',
    ),
    from: text('manual and page that the steps come from, kept as a paper', 'engine manual, p. 6-31'),
  },
  'joints that were tightened to a figure: heads, mains, rods, damper, flywheel, cam drive',
);
type Joint = NonNullable<z.output<typeof joints>>[number];

export function examineTorques(all: z.output<typeof joints>, work: Work): void {
  if (!all?.length) work.compare('assembly.torque', '', work.lacks('joints'));
  for (const joint of all ?? []) {
    const steps = joint.steps ?? [];
    if (steps.length === 0) work.compare('assembly.torque', joint.id, work.lacks('joints', joint.id, 'steps'));
    for (const step of steps) {
      const take = (name: 'torque' | 'angle') => work.take(step[name], 'joints', joint.id, 'steps', step.id, name);
      const subject = `${joint.id}-${step.id}`;
      if (step.torque || !step.angle)
        work.compare('assembly.torque', subject, take('torque'), {
          limit: limitOf(step['asked-torque'], joint, 'N*m'),
        });
      if (step.angle)
        work.compare('assembly.torque-angle', subject, take('angle'), {
          limit: limitOf(step['asked-angle'], joint, 'deg'),
        });
    }
  }
}

/** The manual's figure is the setting of a checked wrench; its tolerance stands behind the ±, and no other is made up. */
function limitOf(figure: Measured | undefined, { from }: Joint, unit: string): Limit | undefined {
  if (!figure || from === undefined) return undefined;
  const { si, expanded = 0 } = figure.quantity;
  return asPrescribed({
    min: exactBound(si - expanded),
    max: exactBound(si + expanded),
    unit,
    document: from,
    basis: 'maker',
  });
}

/** What the note states of all joints together, where each has its steps, its order and its manual. */
export function torqueAnswers(all: z.output<typeof joints>) {
  const whole = all?.length
    ? all.filter((j) => j.steps?.length && j.sequence !== undefined && j.from !== undefined)
    : [];
  const used = all?.filter((j) => j.bolts === 'used-though-once-only') ?? [];
  return {
    'assembly.torques':
      whole.length > 0 && whole.length === all?.length
        ? {
            answer: `${whole.length} joints with steps, order and manual`,
            because: whole.map((j) => j.says ?? j.id).join(', '),
          }
        : undefined,
    'assembly.once-only':
      used.length > 0
        ? {
            answer: 'no',
            because: `used again: ${used.map((j) => j.says ?? j.id).join(', ')}`,
            from: ['joints', used[0]!.id, 'bolts'],
          }
        : all?.length && all.every((j) => j.bolts)
          ? { answer: 'yes', from: ['joints'] }
          : undefined,
  };
}
