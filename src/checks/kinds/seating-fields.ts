import { z } from 'zod';
import { readPropertyClass } from '../../project/designations/property-class.js';
import { readThread } from '../../project/designations/thread.js';
import { choice, count, designation, list, quantity, text, yesNo } from '../../project/fields.js';
import { anchorageList } from './parts/anchorages.js';
import { torquesField } from './parts/torques.js';

const height = 'tape from the floor panel to the front edge of the cushion, seat in its middle position, nobody in it';

const plate = z
  .strictObject({
    length: quantity('mm', 'length of the plate in contact', {
      how: 'tape or caliper, without rounded corners',
      typical: '75 mm',
      usual: [8, 450],
    }),
    width: quantity('mm', 'width of the plate in contact', {
      how: 'tape or caliper, without rounded corners',
      typical: '50 mm',
    }),
    thickness: quantity('mm', 'thickness of the plate', {
      places: 'smallest',
      how: 'caliper, clean edge',
      typical: '3.0 mm',
    }),
    material: text('material of the plate', 'steel S275'),
    against: text('what it lies against, and how thick that is', 'floor of steel sheet, 1.0 mm'),
    centred: yesNo('does the bolt go through its middle'),
  })
  .optional()
  .meta({ form: 'block', says: 'plate under the anchorage' });

export const shape = {
  code: text('modification code agreed with the certifier', 'LK1'),
  seats: list(
    {
      change: choice(
        {
          kept: 'the seat that was there, where it was',
          replaced: 'another seat in its place',
          moved: 'the same seat in another place',
          added: 'a seat where there was none',
          removed: 'taken out',
        },
        'what was done',
      ),
      seat: text('what seat it is, with the standard on its label', 'reclining seat with a label of its standard').meta(
        {
          recordedFor: 'whoever compares it with the label on the seat',
        },
      ),
      bolts: count('number of bolts that hold the seat', { typical: '4' }),
      thread: designation(readThread, 'thread of these bolts', 'M8x1.25'),
      class: designation(readPropertyClass, 'class or grade marked on their heads', '10.9'),
      plate,
      through: choice(
        {
          sheet: 'steel sheet of the floor',
          member: 'a member or bracket of the body',
          original: "the maker's own anchorage",
          other: 'wood, fibreglass, aluminium sheet or plastic',
        },
        'what the anchorages go through',
      ),
      'height-was': quantity('mm', 'height of the cushion above the floor as received', {
        how: height,
        typical: '255 mm',
      }),
      'height-now': quantity('mm', 'height of the cushion above the floor now', { how: height, typical: '250 mm' }),
    },
    'seats, each an item of its own: `front-left`',
  ),
  belts: list(
    {
      belt: choice({ 'lap-and-torso': 'lap and sash', lap: 'lap only', harness: 'harness' }, 'what belt it is'),
      label: text('standard and date on its label', 'label of its standard, made 2024').meta({
        recordedFor: 'whoever compares it with the label on the belt',
      }),
      'on-seat': yesNo('is any end of it fixed to the seat'),
      'proof-load': quantity('kN', 'load that an added or moved anchorage was shown to hold', {
        measuredAs: 'paper',
        how: 'pull test or calculation by the certifier, kept as a paper',
        typical: '14.0 kN',
      }),
    },
    'belts, one item a seating position: `front-left`',
  ),
  anchorages: anchorageList,
  'child-points': list(
    {
      usable: yesNo('is it where the maker put it, uncovered and free to be used'),
    },
    'anchorages of child restraints: `rear-left`',
  ),
  airbags: choice(
    {
      yes: 'all there and working',
      no: 'one or more disabled, moved or left out',
      none: 'the car was built without them',
    },
    'airbags and belt tensioners',
  ),
  torques: torquesField,
};
