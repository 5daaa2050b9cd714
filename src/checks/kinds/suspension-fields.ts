import { z } from 'zod';
import { choice, list, named, onDay, quantity, text, yesNo } from '../../project/fields.js';
import type { Data } from '../engine/kind.js';
import { clearanceChanged } from './parts/ground-clearance.js';
import { singleShearField, stabilityField, workedField } from './parts/stop.js';
import { torquesField } from './parts/torques.js';

const block = <S extends z.ZodRawShape>(shape: S, says: string) =>
  z.strictObject(shape).optional().meta({ form: 'block', says });

const corner = (state: string) =>
  block(
    {
      height: quantity('mm', `wheel centre to the edge of the guard above it ${state}`, {
        measuredAs: 'ride-height',
        how: 'level floor, car rolled after it was lowered, load as stated in the note; tape from the middle of the hub straight up, three times',
        typical: '381 mm',
      }),
      bump: quantity('mm', `travel of the wheel from ride height to full bump ${state}`, {
        how: 'spring out, wheel raised with a jack until the stop is pressed as far as it goes; height of the hub against ride height',
        typical: '78 mm',
      }),
      rebound: quantity('mm', `travel of the wheel from ride height to full droop ${state}`, {
        how: 'wheel hanging on damper or strap; height of the hub against ride height',
        typical: '85 mm',
      }),
      'spring-length': quantity('mm', `length of the spring in the car at ride height ${state}`, {
        how: 'inside caliper or tape from seat to seat',
        typical: '232 mm',
      }),
      on: onDay('day on which it was measured'),
      by: text('who measured it'),
    },
    `the corner ${state}`,
  );

const spring = (state: string) =>
  block(
    {
      part: text(`maker and part of the spring ${state}`, 'invented springs, part 114-F'),
      rate: quantity('N/mm', `rate of the spring ${state}`, {
        how: "maker's paper, or two weights on a spring tester: difference of force over difference of length",
        typical: '28 N/mm',
        usual: [5, 270],
      }),
      'free-length': quantity('mm', `free length of the spring ${state}`, {
        places: 'each',
        how: 'spring standing on a flat plate, rule to the other end, three places',
        typical: '342 mm',
      }),
      wire: quantity('mm', `diameter of the wire ${state}`, {
        how: 'caliper on bare wire, two directions',
        typical: '12.4 mm',
      }),
      outside: quantity('mm', `outside diameter of the coils ${state}`, {
        measuredAs: 'thickness',
        how: 'caliper over the middle coils',
        typical: '124 mm',
      }),
      coils: named('1', `all coils of the spring ${state}, ends among them, parts of a coil too`, {
        how: 'counted from the end of the wire; half coils count',
        typical: '8.5',
      }),
      active: quantity('1', `active coils of the spring ${state}`, {
        how: 'all coils less those that lie on the seats',
        typical: '6.5',
      }),
      ends: choice(
        { ground: 'laid on and ground flat', plain: 'not ground: cut square, or run out as pigtail or tangent' },
        `ends of the spring ${state}`,
      ),
      from: text('paper that its figures come from', 'test sheet of the spring maker, 2026'),
    },
    `the spring ${state}`,
  );

const damper = block(
  {
    closed: quantity('mm', 'length of the damper fully closed, eye to eye or seat to shoulder', {
      how: 'tape, damper off the car',
      typical: '310 mm',
    }),
    open: quantity('mm', 'length of the damper fully open', { how: 'tape, damper off the car', typical: '480 mm' }),
    'at-bump': quantity('mm', 'room between its mounts at full bump', {
      how: 'tape between the mounts, spring out, stop pressed',
      typical: '330 mm',
    }),
    'at-droop': quantity('mm', 'room between its mounts at full droop', {
      how: 'tape between the mounts; where the damper itself ends the travel, say so in the note',
      typical: '465 mm',
    }),
  },
  'the damper',
);

const axle = (which: string) =>
  block(
    {
      type: choice(
        { coil: 'coil springs', leaf: 'leaf springs', torsion: 'torsion bars', air: 'air springs' },
        `kind of ${which} springs`,
      ),
      was: spring('as it came'),
      planned: spring('as planned'),
      now: spring('as fitted'),
      motion: quantity('1', 'movement of the spring for one of the wheel', {
        how: 'spring out, wheel moved 20 mm each way about ride height, seats measured; spring over wheel',
        typical: '0.92',
        usual: [0.25, 1.3],
      }),
      damper,
    },
    `${which} springs and dampers`,
  );

export const shape = {
  front: axle('front'),
  rear: axle('rear'),
  corners: list(
    { was: corner('as it came'), planned: corner('as planned'), now: corner('now') },
    'the four corners: `front-left`, `front-right`, `rear-left`, `rear-right`',
  ),
  clearance: clearanceChanged,
  'suspension-exchanged': yesNo('were mounts of the suspension moved, or the suspension of another vehicle fitted'),
  'coils-cut': yesNo('was a coil spring cut, or any part heated'),
  'springs-seated': yesNo(
    'do all springs stay in their seats at full droop and open at full bump, with bump stops where bottoming is likely',
  ),
  'springs-carry': yesNo(
    'do the springs carry at least what the original ones carried, with ends shaped as the seats are',
  ),
  'lowering-blocks': choice(
    {
      none: 'no blocks',
      located: 'steel or aluminium, located positively, U-bolts above the lowest edge of the rim',
      other: 'blocks otherwise than that',
    },
    'lowering blocks',
  ),
  'flat-tyre': yesNo('does nothing but the rim touch the road when a tyre is flat'),
  'commercial-kit': yesNo('is a raised off-road vehicle raised by a commercial kit for that model'),
  'centre-of-mass-moved': yesNo('has the centre of mass moved so much that the certifier asks for a lane change'),
  'stability-control': stabilityField,
  worked: workedField,
  'single-shear': singleShearField,
  torques: torquesField,
};
export type Suspension = Data<typeof shape>;
