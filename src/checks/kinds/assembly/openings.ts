import type { z } from 'zod';
import { readThread } from '../../../project/designations/thread.js';
import { choice, designation, list, onDay, text } from '../../../project/fields.js';
import { metaAt } from '../../../project/find-field.js';
import type { Work } from '../../engine/work.js';

export const openings = list(
  {
    place: text('which opening, and where', 'heater outlet, rear of the cylinder head'),
    what: choice(
      { plugged: 'closed by a plug', moved: 'its fitting or sender moved to another opening' },
      'what was done',
    ),
    'moved-to': text('where its fitting or sender went, where it was moved', 'front of the manifold'),
    thread: designation(
      readThread,
      'thread of the plug or fitting; count the threads over an inch and measure the taper',
      '3/8-18 NPT',
    ),
    sealant: text('what seals the thread, and what it is made for', 'thread sealant for oil and coolant'),
    on: onDay('day on which it was closed'),
  },
  'openings of block, head, manifold or gearbox that were closed, or whose fitting was moved',
);

const needed = ['place', 'what', 'thread', 'sealant'] as const;

/** Each opening is recorded with its thread and what seals it. */
export function examineOpenings(all: z.output<typeof openings>, work: Work): void {
  for (const opening of all ?? []) {
    const lacking = [...needed, ...(opening.what === 'moved' ? (['moved-to'] as const) : [])].filter(
      (name) => opening[name] === undefined,
    );
    const path = ['openings', opening.id];
    const says = (name: string) => metaAt({ openings }, [...path, name]).says ?? name;
    if (lacking.length > 0) {
      work.state('assembly.openings', opening.id, 'missing', `not recorded: ${lacking.map(says).join('; ')}`, {
        todo: `fill in ${lacking.map((name) => [...path, name].join('.')).join('; ')}`,
        path,
      });
      continue;
    }
    const { place, what, thread, sealant } = opening;
    if (/^(?:none|no|nothing|dry|-)$/iu.test(sealant!)) {
      work.state(
        'assembly.openings',
        opening.id,
        'against',
        `${place}: ${thread!.text} closed without anything that seals it`,
        { todo: 'take the plug out and seal its thread', answer: 'no', path },
      );
      continue;
    }
    const done = what === 'moved' ? `moved to ${opening['moved-to']}` : 'plugged';
    work.state('assembly.openings', opening.id, 'met', `${place}: ${done}, ${thread!.text}, ${sealant}`, {
      answer: 'yes',
      path,
    });
  }
}
