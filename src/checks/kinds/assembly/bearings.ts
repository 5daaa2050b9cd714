import type { z } from 'zod';
import { bearingClearance } from '../../../calc/engine/assembly.js';
import { list, quantity, text } from '../../../project/fields.js';
import type { Work } from '../../engine/work.js';
import { makerFigures, makerLimit } from '../parts/maker-window.js';
import { difference } from '../parts/maybe.js';

export const bearings = list(
  {
    says: text('which bearings', 'main bearings'),
    journals: list(
      {
        journal: quantity('mm', 'diameter of the journal', {
          places: 'each',
          measuredAs: 'fit',
          how: 'micrometer at both ends of the journal, two directions each; the largest counts',
          typical: '59.990 mm',
        }),
        bore: quantity('mm', 'bore with its shells fitted and the cap tightened to its torque', {
          places: 'each',
          measuredAs: 'fit',
          how: 'bore gauge square to the parting line, set with the micrometer that measured the journal; the smallest of three',
          typical: '60.035 mm',
        }),
      },
      'one item a journal, in their order along the shaft',
    ),
    maker: makerFigures('mm', 'oil clearance', [0.005, 0.3]),
  },
  'groups of bearings with one oil clearance, such as `mains` and `big-ends`',
);

/** The clearance of every journal against the window of its group. */
export function examineBearings(groups: z.output<typeof bearings>, work: Work): void {
  if (!groups?.length) return work.compare('assembly.oil-clearance', '', work.lacks('bearings'));
  for (const { id, journals = [], maker } of groups) {
    if (journals.length === 0) work.compare('assembly.oil-clearance', id, work.lacks('bearings', id, 'journals'));
    const rows = journals.map((one) => {
      const take = (name: 'journal' | 'bore') => work.take(one[name], 'bearings', id, 'journals', one.id, name);
      return { subject: `${id}-${one.id}`, bore: take('bore'), journal: take('journal') };
    });
    if (rows.length > 0)
      work.sheet(bearingClearance, id, { journals: rows.map(({ bore, journal }) => ({ bore, journal })) });
    for (const { subject, bore, journal } of rows)
      work.compare('assembly.oil-clearance', subject, difference(bore, journal), { limit: makerLimit(maker, 'mm') });
  }
}
