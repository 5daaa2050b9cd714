import type { z } from 'zod';
import { list, quantity, text } from '../../../project/fields.js';
import { showQuantity } from '../../../units/show.js';
import { isMissing, type Work } from '../../engine/work.js';

const marked =
  'stamped or cast on the part, or on its label or data sheet; 0 oz·in for a part that is balanced in itself';

export const rotating = list(
  {
    says: text('which part', 'vibration damper'),
    original: quantity('g*mm', 'unbalance value of the original part', { how: marked, typical: '18 oz·in' }),
    replacement: quantity('g*mm', 'unbalance value of the part fitted', { how: marked, typical: '18 oz·in' }),
    'balance-report': text(
      'report of the balancing, where the whole crankshaft was balanced with this part on it',
      'balance report of 2026-03-18',
    ),
  },
  'rotating parts of the crankshaft that were replaced: damper, flywheel, flexplate',
);

/** Common practice, no source: values are marked in whole ounce inches. Half of one, in SI (kg·m). */
const halfOfMarked = 0.5 * 0.028349523125 * 0.0254;

/** A replacement has the same unbalance value as the original, as marked; a stated ± makes it less sure. */
export function examineUnbalance(all: z.output<typeof rotating>, work: Work): void {
  for (const part of all ?? []) {
    const path = ['rotating', part.id];
    const [was, now] = [
      work.take(part.original, ...path, 'original'),
      work.take(part.replacement, ...path, 'replacement'),
    ];
    const lacking = [was, now].flatMap((v) => (isMissing(v) ? v.missing : []));
    if (isMissing(was) || isMissing(now)) {
      work.state('assembly.unbalance', part.id, 'missing', `not known: ${lacking.map((m) => m.says).join('; ')}`, {
        todo: `fill in ${lacking.map((m) => `${m.where} (${m.how})`).join('; ')}`,
        path,
      });
      continue;
    }
    const apart = Math.abs(now.si - was.si);
    const stated = Math.hypot(...[part.original, part.replacement].map((m) => m?.quantity.expanded ?? 0));
    const shown = `${showQuantity(now.si, now.unit)} fitted, ${showQuantity(was.si, was.unit)} on the original`;
    const rest = { measured: now, path: [...path, 'replacement'] };
    if (apart + stated <= halfOfMarked * (1 + 1e-9))
      work.state('assembly.unbalance', part.id, 'met', `${shown}: the same`, { ...rest, answer: 'yes' });
    else if (part['balance-report'])
      work.state(
        'assembly.unbalance',
        part.id,
        'unclear',
        `${shown}: not the same, balanced with the crankshaft as ${part['balance-report']} says`,
        { ...rest, answer: 'no', todo: 'put the balance report to the certifier' },
      );
    else
      work.state(
        'assembly.unbalance',
        part.id,
        'against',
        `${shown}: they differ by ${showQuantity(apart, now.unit)}, and the crankshaft is out of balance by it`,
        {
          ...rest,
          answer: 'no',
          todo: 'fit a part with the value of the original, or have the whole crankshaft balanced with it',
        },
      );
  }
}
