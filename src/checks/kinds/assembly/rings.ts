import { z } from 'zod';
import { ringGap } from '../../../calc/engine/assembly.js';
import { list, named, quantity, text } from '../../../project/fields.js';
import { boundOf, type Limit } from '../../codes/limit.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import { makerFigures, makerLimit } from '../parts/maker-window.js';

export const rings = list(
  {
    says: text('which ring', 'top compression ring'),
    gaps: list(
      {
        gap: quantity('mm', 'end gap of the ring in its own cylinder', {
          places: 'smallest',
          how: 'ring squared with a piston 25 mm down its bore, where the bore is smallest; feeler gauges',
          typical: '0.40 mm',
          usual: [0.1, 3],
        }),
      },
      'one item a cylinder',
    ),
    maker: makerFigures('mm', 'end gap', [0.1, 3]),
    'by-bore': z
      .strictObject({
        factor: named('1', 'least gap for each unit of bore', { typical: '0.0040', usual: [0.001, 0.02] }),
        from: z.string().min(3).meta({
          form: 'text',
          says: 'ring maker and sheet that says so, kept as a paper',
          typical: 'sheet in the ring packet',
        }),
      })
      .optional()
      .meta({
        form: 'block',
        says: "where the ring maker's sheet gives the least gap for each unit of bore instead of in mm",
      }),
  },
  'kinds of ring, such as `top`, `second` and `oil`',
);
type Ring = NonNullable<z.output<typeof rings>>[number];

/** The gap of every ring in every cylinder. A least gap in mm stands before one that is reckoned from the bore. */
export function examineRings(all: z.output<typeof rings>, bore: Maybe, work: Work): void {
  if (!all?.length) return work.compare('assembly.ring-gap', '', work.lacks('rings'));
  for (const ring of all) {
    const gaps = (ring.gaps ?? []).map(({ id, gap }) => ({
      id,
      gap: work.take(gap, 'rings', ring.id, 'gaps', id, 'gap'),
    }));
    if (gaps.length === 0) work.compare('assembly.ring-gap', ring.id, work.lacks('rings', ring.id, 'gaps'));
    const measured = gaps.filter(({ gap }) => !isMissing(gap)).map(({ gap }) => ({ gap }));
    const factor = ring['by-bore']?.factor;
    const asked =
      factor && measured.length > 0
        ? work
            .sheet(ringGap, ring.id, {
              bore,
              factor: work.take(factor, 'rings', ring.id, 'by-bore', 'factor'),
              rings: measured,
            })
            .get('asked')
        : undefined;
    for (const { id, gap } of gaps)
      work.compare(
        'assembly.ring-gap',
        `${ring.id}-${id}`,
        asked && isMissing(asked) && !isMissing(gap) ? asked : gap,
        { limit: limitOf(ring, asked) },
      );
  }
}

function limitOf(ring: Ring, asked: Maybe | undefined): Limit | undefined {
  const window = makerLimit(ring.maker, 'mm');
  if (!asked || isMissing(asked) || window?.min !== undefined) return window;
  return {
    min: boundOf(asked),
    max: window?.max,
    unit: 'mm',
    document: ring['by-bore']!.from,
    basis: 'maker',
  };
}
