import { z } from 'zod';
import { readRim } from '../../project/designations/rim.js';
import { readTyre } from '../../project/designations/tyre.js';
import { choice, designation, list, named, onDay, quantity, text, yesNo } from '../../project/fields.js';
import type { Data } from '../engine/kind.js';
import { makerFigures } from './parts/maker-window.js';
import { stabilityField } from './parts/stop.js';

const wheels = (state: string) =>
  z
    .strictObject({
      tyre: designation(readTyre, `tyre ${state}, as it stands on the sidewall`, '205/65R15 94H'),
      diameter: quantity('mm', `overall diameter of the tyre ${state}, where its size does not say it`, {
        how: 'wheel off the ground at running pressure, steel tape around the middle of the tread divided by 3.1416, three times',
        typical: '648 mm',
      }),
      rim: designation(readRim, `rim ${state}, as marked on it`, '6Jx15 ET25'),
      offset: quantity(
        'mm',
        `offset of the rim ${state}, where none is marked; positive where the mounting face stands outboard of the middle`,
        {
          measuredAs: 'rule',
          range: 'signed',
          how: 'straightedge across the back of the rim, depth gauge to the mounting face, less half the width over the flanges',
          typical: '25 mm',
          usual: [0, 150],
        },
      ),
      spacer: quantity('mm', `spacer between hub and wheel ${state}, each side`, {
        places: 'each',
        measuredAs: 'thickness',
        how: 'caliper, three places',
        typical: '0 mm',
        usual: [0, 60],
      }),
      track: quantity('mm', `track ${state}, tread centre to tread centre`, {
        how: 'unladen on level ground, car rolled two metres after it was lowered; tape between tread centres at hub height ahead of the axle and behind it, mean of both, three times',
        typical: '1421 mm',
        usual: [1000, 2000],
      }),
      'guard-height': quantity(
        'mm',
        `wheel centre to the edge of the guard above it ${state}, mean of left and right`,
        {
          measuredAs: 'ride-height',
          how: 'tape from the middle of the hub straight up, car rolled, load as stated in the note',
          typical: '380 mm',
        },
      ),
      clearance: quantity('mm', `ground clearance of the lowest part near this axle ${state}`, {
        places: 'smallest',
        measuredAs: 'ride-height',
        how: 'level floor, car rolled, load as stated in the note; rule or block gauge',
        typical: '155 mm',
      }),
      on: onDay('day on which it was measured'),
      by: text('who measured it'),
    })
    .optional()
    .meta({ form: 'block', says: `tyre, rim and track ${state}` });

const axle = (which: string) =>
  z
    .strictObject({
      was: wheels('as it came'),
      planned: wheels('as planned'),
      now: wheels('as fitted'),
      'widest-track': named('mm', `widest ${which} track that the maker offered, where it is wider than this car's`, {
        measuredAs: 'paper',
        how: "maker's data, or the state's list of tracks",
        typical: '1420 mm',
      }),
      'least-gap': quantity('mm', `least gap of the ${which} tyres to anything through travel and steering`, {
        places: 'smallest',
        measuredAs: 'rule',
        how: 'springs out, wheel moved from full droop to full bump at straight ahead and both locks, feeler or plasticine at the nearest place',
        typical: '28 mm',
        usual: [3, 250],
      }),
    })
    .optional()
    .meta({ form: 'block', says: `the ${which} axle` });

export const shape = {
  front: axle('front'),
  rear: axle('rear'),
  changed: choice(
    { both: 'both axles', front: 'the front axle only', rear: 'the rear axle only' },
    'which axles got other wheels or tyres; without a word, both',
  ),
  listed: list(
    {
      tyre: designation(readTyre, 'a tyre that the maker lists for the model', '185/70R14 88S'),
      diameter: named('mm', 'its overall diameter, where its size does not say it', { typical: '616 mm' }),
      width: named('mm', 'its section width, where its size does not say it', { typical: '185 mm' }),
      load: named('kg', 'the load of its index, where its size does not say it', { typical: '560 kg' }),
      'least-rim': named('in', 'the narrowest rim that the maker lists for it', { typical: '5 in' }),
      from: text('where it is listed', "tyre placard, driver's door"),
    },
    'tyres and rims that the maker lists for this model, on the placard or in the book',
  ),
  'original-nut-engagement': quantity('mm', 'thread engaged by an original nut on an original wheel', {
    how: 'count the turns from first bite to seated, times the pitch; or depth gauge; three studs',
    typical: '13.5 mm',
  }),
  'nut-engagement': quantity('mm', 'thread engaged by the nuts now, the least of all', {
    places: 'smallest',
    how: 'count the turns from first bite to seated, times the pitch; every stud of one wheel of each axle',
    typical: '14 mm',
  }),
  'nut-torque': quantity('N*m', 'torque to which the nuts were tightened', {
    how: 'checked torque wrench, dry threads, in a star, again after 50 km',
    typical: '110 N·m',
    usual: [60, 250],
  }),
  'maker-nut-torque': makerFigures('N*m', 'torque of the wheel nuts', [60, 250]),
  spacers: yesNo('is there a spacer between hub and wheel that the maker did not fit'),
  alike: yesNo(
    'are both sides of each axle alike in construction, size, offset and mounting, without slotted holes or added welds',
  ),
  'within-guards': yesNo(
    'do the tyres stay within the guards straight ahead, and touch nothing at full lock and full bump',
  ),
  axles: choice({ 'beam-front-and-rear': 'beam axles front and rear', other: 'any other' }, 'kind of axles'),
  'stability-control': stabilityField,
};
export type WheelsTyres = Data<typeof shape>;
