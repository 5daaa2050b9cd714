import { z } from 'zod';
import { readSection } from '../../project/designations/section.js';
import { readSteel } from '../../project/designations/steel.js';
import { hardnessScales } from '../../project/designations/steel-hardness.js';
import { bodyParts } from '../../project/designations/steel-of-original.js';
import { choice, designation, idOf, onDay, quantity, text, yesNo } from '../../project/fields.js';
import type { Data } from '../engine/kind.js';
import { couponsField } from './parts/thin-weld.js';
import { weldsField } from './parts/weld.js';

const common = (state: string) => ({
  section: designation(readSection, `section ${state}, with its measured sizes`, 'RHS 50x30x2.5 (EN 10219)'),
  steel: designation(readSteel, `steel ${state}; \`unknown\` opens a question`, 'S355'),
  wall: quantity('mm', `wall or sheet thickness ${state}`, {
    places: 'smallest',
    how: 'caliper on a cut edge cleaned to bright metal, or ultrasonic gauge, three places',
    typical: '2.48 mm',
    usual: [0.4, 20],
  }),
  loss: quantity('mm', `wall lost to corrosion, ${state}`, {
    places: 'largest',
    measuredAs: 'thickness',
    how: 'wall stated above less the thinnest place after cleaning; counts for metal that is kept, never for an original that is replaced',
    typical: '0.2 mm',
    usual: [0, 1.9],
  }),
  'closed-by': choice(
    {
      floor: 'spot-welded or welded to a floor along both flanges, so that both make a box',
      none: 'open along its length',
      'not-known': 'not known: both are worked, and the less favourable decides',
    },
    `what closes a top-hat ${state} along its length`,
  ),
  on: onDay('day on which it was measured'),
  by: text('who measured it'),
});

const block = <S extends z.ZodRawShape>(shape: S, state: string) =>
  z
    .strictObject(shape)
    .optional()
    .meta({ form: 'block', says: `the member ${state}` });

const original = block(
  {
    ...common('as it came'),
    hardness: quantity('1', 'hardness of its steel, where the steel is not known', {
      measuredAs: 'steel-hardness',
      how: 'tester on bright metal away from welds and heat, the mean of five',
      typical: '112',
      usual: [40, 600],
    }),
    'hardness-scale': choice(hardnessScales, 'scale of that hardness'),
  },
  'as it came',
);

export const shape = {
  pieces: z
    .array(
      z.strictObject({
        id: idOf,
        role: choice(
          {
            replacement: 'takes the place of an original member',
            doubler: 'laid on an original member',
            bracket: 'new bracket or mount',
          },
          'what the piece does',
        ),
        part: choice(bodyParts, 'which part of the body the original is'),
        was: original,
        planned: block(common('as planned'), 'as planned'),
        now: block(common('as built'), 'as built'),
        floor: quantity('mm', 'thickness of the floor that closes it', {
          places: 'smallest',
          how: 'caliper on a cut edge or ultrasonic gauge, cleaned to bright metal',
          typical: '0.9 mm',
          usual: [0.5, 6],
        }),
        'joint-shown': text('photo or paper that shows the new joint along the floor', 'photo floor-spots'),
        'joined-to': quantity(
          'mm',
          'thickness of the original metal that it is welded to; of several places the least counts',
          {
            places: 'smallest',
            how: 'caliper on a cut edge or ultrasonic gauge, cleaned to bright metal, at the thinnest places',
            typical: '[1.20, 1.14, 1.18] mm',
            usual: [0.4, 11],
          },
        ),
        'weld-pattern': text(
          'how a doubler is welded: plugs or runs, their size and pitch',
          'plugs of 8 mm at 40 mm, edge in runs of 25 mm',
        ),
        ends: choice(
          {
            tapered: 'cut at 45 degrees or flatter',
            forked: 'forked or spear-shaped',
            round: 'rounded',
            square: 'cut square across',
          },
          'form of the ends of a doubler',
        ),
        welds: weldsField,
      }),
    )
    .optional()
    .meta({ form: 'list', says: 'pieces let in, laid on or welded to the body' }),
  'structure-cut': yesNo('was a roof, floor, chassis, frame or inner panel cut, or a member replaced'),
  welded: yesNo('was anything welded'),
  coupons: couponsField,
};
export type Body = Data<typeof shape>;
export type Piece = NonNullable<Body['pieces']>[number];
/** The member as it is compared: as built, and before that as planned. */
export const stateOf = (piece: Piece): 'now' | 'planned' => (piece.now ? 'now' : 'planned');
