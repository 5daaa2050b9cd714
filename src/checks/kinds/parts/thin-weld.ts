import type { Value } from '../../../calc/value.js';
import { type parts, withinAs4100 } from '../../../calc/welds/as4100.js';
import { choice, list, type Measured, quantity, text } from '../../../project/fields.js';
import { showQuantity } from '../../../units/show.js';
import { judgeEvidence } from '../../engine/evidence.js';
import { evidenceIn } from '../../engine/proofs.js';
import type { Work } from '../../engine/work.js';

/** Welds in metal that is too thin for a structural standard to give them a capacity, and what takes its place. */

const positions = {
  flat: 'flat',
  horizontal: 'horizontal',
  vertical: 'vertical',
  overhead: 'overhead',
} as const;

export const thinWeldFields = {
  position: choice(positions, 'position in which it was welded'),
  capacity: quantity(
    'kN',
    'design capacity by a sheet-steel standard, where the metal is too thin for a structural one',
    {
      measuredAs: 'paper',
      how: 'worked by the standard as read in your own copy',
      typical: '6.5 kN',
      usual: [0.7, 60],
    },
  ),
  'capacity-from': text(
    'that standard with edition and clause, who read it and when',
    'AS/NZS 4600:2018, clause …, JO 2026-03-01',
  ),
};

export const couponsField = list(
  {
    thickness: quantity('mm', 'thickness of the sheet of the coupon', {
      how: 'caliper on its cut edge',
      typical: '1.2 mm',
      usual: [0.5, 11],
    }),
    position: choice(positions, 'position in which the coupon was welded'),
  },
  'coupons that were welded, cut through and etched, each as a thin weld of this note',
);
export type Coupons = readonly { thickness?: Measured | undefined; position?: keyof typeof positions | undefined }[];

interface ThinWeld {
  part?: keyof typeof parts | undefined;
  position?: keyof typeof positions | undefined;
  capacity?: Measured | undefined;
  'capacity-from'?: string | undefined;
}

/** Whether one of the thicknesses is below what the standard gives a capacity for. */
export function isThin(thicknesses: readonly (number | undefined)[], part: keyof typeof parts = 'plate'): boolean {
  return thicknesses.some((t) => t !== undefined && !withinAs4100(t, part));
}

/** By how much a coupon may differ in thickness; common practice, no source. */
const ALIKE = 0.1;

/**
 * A weld that no structural standard calculates. A capacity by a sheet-steel standard, read at first hand, is compared with the
 * load; else procedure, coupon and crack test together stand for it, and what lacks of these is named.
 */
export function examineThinWeld(
  item: string,
  weld: ThinWeld,
  of: { subject: string; path: readonly string[]; thinner: Value; coupons: Coupons; named: string | undefined },
  work: Work,
): void {
  const { subject, path, thinner, coupons, named } = of;
  const from = weld['capacity-from'];
  if (weld.capacity && from !== undefined) {
    const loadCase = work.loadCase(named);
    return work.demandAgainst(item, subject, {
      demand: loadCase?.force ? work.take(loadCase.force, ...path, 'load-case') : undefined,
      capacity: work.take(weld.capacity, ...path, 'capacity'),
      loadCase,
      named,
      marks: [`capacity by ${from}, as the builder read it`],
    });
  }
  const size = showQuantity(thinner.si, 'mm');
  const cut = shownBy(proofs.coupon, work);
  const alike = coupons.some(
    (c) =>
      c.thickness !== undefined &&
      Math.abs(c.thickness.quantity.si - thinner.si) <= ALIKE * thinner.si * (1 + 1e-9) &&
      c.position !== undefined &&
      c.position === weld.position,
  );
  const asked: readonly (readonly [name: string, found: string | undefined, wants: string])[] = [
    ['weld procedure', shownBy(proofs.procedure, work), 'a paper with `proves: [body.weld-procedure]`'],
    [
      `coupon of ${size}${weld.position ? `, ${weld.position}` : ''}`,
      alike ? cut : undefined,
      `\`position:\` of the weld, \`coupons:\` with one of ${size} in the same position, and its photo or paper with \`proves: [body.weld-test]\``,
    ],
    ['crack test', shownBy(proofs.crackTest, work), 'a photo or paper with `proves: [body.crack-test]`'],
  ];
  const lacking = asked.filter(([, found]) => found === undefined);
  const why = `not calculable by AS 4100: ${size} is below the thickness that it is for`;
  const common = { of: 'element', path, measured: undefined } as const;
  if (lacking.length === 0)
    return work.state(
      item,
      subject,
      'out',
      `${why}; shown instead by ${asked.map(([name, found]) => `${name} (${found})`).join(', ')}`,
      common,
    );
  work.state(
    item,
    subject,
    'missing',
    `${why}; to show instead, all three: ${lacking.map(([name]) => name).join(', ')} lacking`,
    {
      ...common,
      ...(weld.capacity ? { marks: ['a capacity without its standard does not count'] } : {}),
      todo: `${weld.capacity ? 'state `capacity-from:`, or ' : ''}add ${lacking.map(([, , wants]) => wants).join('; ')}`,
    },
  );
}

/** Of the items that stand together for a capacity, what each takes for a proof; as the code of practice has them. */
const proofs = {
  procedure: { id: 'body.weld-procedure', evidence: ['paper'] },
  coupon: { id: 'body.weld-test', evidence: ['paper', 'photo'] },
  crackTest: { id: 'body.crack-test', evidence: ['paper', 'photo'], 'after-work': true },
} satisfies Record<string, Parameters<typeof judgeEvidence>[0]>;

/** What of the build shows the item. */
function shownBy(item: Parameters<typeof judgeEvidence>[0], work: Work): string | undefined {
  const all = work.build.notes.flatMap((from) => evidenceIn(from, new Map()).map((one) => ({ ...one, from })));
  const judged = judgeEvidence(item, [], all, work.note.data.answers?.[item.id]);
  return judged.result === 'met' ? judged.answer : undefined;
}
