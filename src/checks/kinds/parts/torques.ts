import type { z } from 'zod';
import type { Answer } from '../../../project/common.js';
import { readPropertyClass } from '../../../project/designations/property-class.js';
import { readThread } from '../../../project/designations/thread.js';
import { designation, list, quantity, text } from '../../../project/fields.js';
import type { Work } from '../../engine/work.js';
import { asPrescribed, makerFigures, makerLimit } from './maker-window.js';

/** Joints that were tightened to a figure. */
export const torquesField = list(
  {
    joint: text('which joint it is', 'lower ball joint to knuckle, left'),
    thread: designation(readThread, 'its thread', 'M12x1.75'),
    class: designation(readPropertyClass, 'class or grade marked on the head', '8.8'),
    torque: quantity('N*m', 'torque to which it was tightened', {
      how: 'checked torque wrench at ride height, threads as the maker asks (dry or oiled), then a paint mark',
      typical: '80 N·m',
    }),
    maker: makerFigures('N*m', 'torque'),
  },
  'joints that were tightened to a figure, each an item of its own',
);

/** Each torque against the maker's window. */
export function examineTorques(torques: z.output<typeof torquesField>, work: Work): void {
  if (!torques?.length) return work.compare('fasteners.torque', '', work.lacks('torques'));
  for (const one of torques)
    work.compare('fasteners.torque', one.id, work.take(one.torque, 'torques', one.id, 'torque'), {
      limit: asPrescribed(makerLimit(one.maker, 'N*m')),
    });
}

/** Torques that the note gives are the record that the code asks for. */
export function torqueAnswers(torques: z.output<typeof torquesField>): Readonly<Record<string, Answer | undefined>> {
  const whole = torques?.length && torques.every((one) => one.torque);
  return { 'fasteners.torque-record': whole ? { answer: `${torques.length} joints`, shown: 'note' } : undefined };
}
