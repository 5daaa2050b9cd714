import { z } from 'zod';
import { choice, count, onDay, quantity, text, yesNo } from '../../project/fields.js';
import type { Data } from '../engine/kind.js';
import { boltsField } from './parts/engagement.js';
import { makerFigures } from './parts/maker-window.js';
import { stabilityField } from './parts/stop.js';
import { torquesField } from './parts/torques.js';

const block = <S extends z.ZodRawShape>(shape: S, says: string) =>
  z.strictObject(shape).optional().meta({ form: 'block', says });

/** What the brakes of one axle are; friction of a drum is in its factor. */
const axle = (which: string) =>
  block(
    {
      type: choice({ disc: 'discs', drum: 'drums' }, `kind of ${which} brakes`),
      part: text(`maker and part of callipers, discs or drums, and pads at the ${which}`),
      pads: text(
        `make and compound of the ${which} pads or linings, in the same words wherever they are the same`,
        'pads 5-F-P3',
      ),
      pistons: count(`${which} pistons that press on one side of the disc; of a drum 1`, { typical: '1' }),
      piston: quantity('mm', `diameter of a ${which} piston or wheel cylinder`, {
        measuredAs: 'thickness',
        how: 'caliper on the piston or in the bore, or as cast on the body',
        typical: '54.0 mm',
      }),
      mount: choice(
        { fixed: 'fixed calliper, pistons on both sides', floating: 'floating calliper, pistons on one side' },
        `how the ${which} calliper is mounted`,
      ),
      friction: quantity('1', `friction of the ${which} pads`, {
        measuredAs: 'paper',
        how: "maker's figure for cold, bedded pads",
        typical: '0.38',
        usual: [0.1, 0.9],
      }),
      factor: quantity('1', `brake factor of the ${which} drums: force at the drum over force of the cylinder`, {
        measuredAs: 'paper',
        how: "maker's figure",
        typical: '2.2',
      }),
      radius: quantity(
        'mm',
        `effective radius at the ${which}: axle to the middle of the pad; of a drum half its diameter`,
        {
          measuredAs: 'thickness',
          how: 'caliper: half the outer diameter of the rubbed band less half the height of the pad',
          typical: '112 mm',
        },
      ),
      diameter: quantity(
        'mm',
        `outside diameter of the ${which} discs, or inside diameter of the drums, the greatest`,
        {
          places: 'each',
          measuredAs: 'thickness',
          how: 'caliper or drum gauge, three places',
          typical: '258 mm',
          usual: [120, 420],
        },
      ),
      thickness: quantity('mm', `thickness of the ${which} discs, the least`, {
        places: 'smallest',
        how: 'micrometer, eight places, 10 mm from the edge',
        typical: '21.8 mm',
      }),
      'run-out': quantity('mm', `run-out of the ${which} discs as fitted, the greater`, {
        places: 'largest',
        measuredAs: 'dial',
        how: 'dial gauge 10 mm from the edge, wheel nuts tightened on washers',
        typical: '0.05 mm',
        usual: [0, 0.4],
      }),
      pad: quantity('mm', `thickness of the ${which} linings`, {
        places: 'smallest',
        measuredAs: 'rule',
        how: 'rule or depth gauge, without the back',
        typical: '11 mm',
        usual: [1.2, 40],
      }),
      move: quantity('mm', `movement of the ${which} pistons until the pads bite hard`, {
        measuredAs: 'dial',
        how: 'dial gauge on the pad, pedal pressed hard',
        typical: '0.6 mm',
        usual: [0.1, 5],
      }),
      swell: quantity('cm3', `swell of the ${which} hoses and fluid at working pressure`, {
        measuredAs: 'paper',
        how: "maker's figure of the hoses, or measured at the pushrod with the callipers clamped",
        typical: '0.8 cm3',
        usual: [0.1, 6],
      }),
      rolling: quantity('mm', `rolling radius of the ${which} tyre, laden`, {
        how: 'car pushed straight for one turn of the wheel: way over 6.283',
        typical: '298 mm',
      }),
    },
    `the ${which} brakes`,
  );

const system = (state: string) =>
  block(
    {
      'pedal-ratio': quantity('1', `pedal ratio ${state}`, {
        how: 'pivot to the middle of the pad over pivot to the pushrod, each square to its force',
        typical: '4.1',
      }),
      layout: choice(
        { tandem: 'one tandem master cylinder', dual: 'two master cylinders on a balance bar' },
        `master cylinders ${state}`,
      ),
      split: choice(
        { axles: 'front and rear apart', diagonal: 'diagonal', other: 'otherwise, or one circuit' },
        `how the circuits are split ${state}`,
      ),
      bore: quantity('mm', `bore of the tandem cylinder ${state}`, {
        how: 'as cast on the body, or caliper on the piston',
        typical: '22.2 mm',
      }),
      'front-bore': quantity('mm', `bore of the front master cylinder ${state}`, { typical: '19.05 mm' }),
      'rear-bore': quantity('mm', `bore of the rear master cylinder ${state}`, { typical: '19.05 mm' }),
      'bar-share': quantity('%', `share of the balance bar to the front ${state}`, {
        how: 'distance of the bearing to the rear pushrod over the distance of both pushrods',
        typical: '55 %',
        usual: [20, 80],
      }),
      stroke: quantity('mm', `stroke available at the pushrod ${state}`, {
        measuredAs: 'thickness',
        how: 'depth gauge, system open',
        typical: '34 mm',
      }),
      efficiency: quantity('1', `efficiency from pedal to pressure ${state}; left out, no losses are taken off`, {
        how: 'pressure gauge in the line against pedal force',
        typical: '0.9',
        usual: [0.5, 1],
      }),
      'booster-ratio': quantity('1', `booster ratio ${state}, force out over force in`, {
        measuredAs: 'paper',
        how: "maker's figure",
        typical: '4.0',
      }),
      'booster-assist': quantity('N', `greatest force that the booster adds ${state}`, {
        measuredAs: 'paper',
        how: "maker's figure, at its run-out",
        typical: '2900 N',
      }),
      'valve-knee': quantity('MPa', `pressure above which a valve reduces the rear pressure ${state}`, {
        how: 'two gauges, front and rear, or as marked',
        typical: '3.0 MPa',
      }),
      'valve-slope': quantity('1', `rise of rear pressure over front pressure above that ${state}`, {
        measuredAs: 'paper',
        typical: '0.3',
      }),
      front: axle('front'),
      rear: axle('rear'),
      on: onDay('day on which it was measured'),
      by: text('who measured it'),
    },
    `the brakes ${state}`,
  );

export const shape = {
  was: system('as they came'),
  planned: system('as planned'),
  now: system('as fitted'),
  'pedal-force': quantity('N', 'pedal force at which the brakes are reckoned', {
    measuredAs: 'paper',
    how: 'as agreed with the certifier, or as in the test',
    typical: '350 N',
    usual: [50, 1500],
  }),
  laden: block(
    {
      front: quantity('kg', 'mass on the front axle, laden for the test', {
        how: 'weighed as loaded for the test',
        typical: '760 kg',
      }),
      rear: quantity('kg', 'mass on the rear axle, laden for the test', { typical: '840 kg' }),
      'cg-height': quantity('mm', 'height of the centre of mass, laden', {
        measuredAs: 'cg-height',
        how: 'from the mass note, moved by the load',
        typical: '560 mm',
      }),
    },
    'the car laden; unladen masses stand in the mass note',
  ),
  'front-maker': block(
    {
      thickness: makerFigures('mm', 'thickness of the disc', [4, 60]),
      'run-out': makerFigures('mm', 'run-out of the disc', [0, 0.4]),
      diameter: makerFigures('mm', 'diameter of the drum', [120, 420]),
    },
    'figures of the maker, front',
  ),
  'rear-maker': block(
    {
      thickness: makerFigures('mm', 'thickness of the disc', [4, 60]),
      'run-out': makerFigures('mm', 'run-out of the disc', [0, 0.4]),
      diameter: makerFigures('mm', 'diameter of the drum', [120, 420]),
    },
    'figures of the maker, rear',
  ),
  'pedal-reserve': quantity('mm', 'pedal to floor when pressed hard', {
    measuredAs: 'rule',
    how: 'rule from the pad to the floor, engine running, pedal held for a minute',
    typical: '70 mm',
    usual: [8, 300],
  }),
  'maker-pedal-reserve': makerFigures('mm', 'reserve of the pedal', [5, 200]),
  'free-play': quantity('mm', 'free play of the pedal at its pad', {
    measuredAs: 'rule',
    how: 'rule at the pad, pressed by hand until the pushrod touches',
    typical: '6 mm',
    usual: [0.7, 50],
  }),
  'support-spacing': quantity('mm', 'greatest distance between two supports of a pipe or hose', {
    places: 'largest',
    how: 'tape along the pipe, all of them',
    typical: '260 mm',
  }),
  'line-gap': quantity('mm', 'least distance of pipes and hoses to wheel and tyre, over travel and lock', {
    places: 'smallest',
    measuredAs: 'rule',
    how: 'springs out, both locks, feeler or gauge',
    typical: '18 mm',
    usual: [2.5, 170],
  }),
  'fluid-mark': quantity('mm', 'distance of the mark for the kind of fluid to the filler', {
    measuredAs: 'rule',
    how: 'rule from the edge of the filler',
    typical: '40 mm',
    usual: [4.5, 350],
  }),
  fluid: text('fluid, and how the mark was made', 'DOT 4, engraved plate'),
  'threads-showing': count('clear threads past the nut, the least of all brake fasteners', {
    typical: '2',
    places: 'smallest',
  }),
  'hoses-marked': yesNo('are the hoses marked and made to SAE J1401 or a standard equal to it'),
  'hoses-reach': yesNo(
    'do the hoses reach at full lock and full travel, guarded, insulated through panels and away from heat',
  ),
  'pedal-rigid': yesNo('do pedal, booster and cylinder stay rigid under the force that the test asks for'),
  'cable-sound': yesNo(
    'is the cable of the parking brake supported, adjustable, and clear of exhaust and moving parts',
  ),
  matched: yesNo('do cylinder and reservoir suit the callipers, and was the balance worked out'),
  'smaller-or-lighter': yesNo('is any drum, disc, shoe or pad smaller, narrower or lighter than the original'),
  'engine-above-options': yesNo('has the engine more volume, power or torque than any sold with these brakes'),
  'sold-with': text(
    'with which engine at most these brakes were sold, and what was done where the engine goes beyond',
    'sold with 2.3 l, 85 kW; engine within that',
  ),
  antilock: choice(
    { kept: 'kept and working', none: 'the car was built without', removed: 'taken out or disabled' },
    'antilock system',
  ),
  'stability-control': stabilityField,
  bolts: boltsField,
  torques: torquesField,
  leaks: block(
    {
      'pedal-force': quantity('N', 'force with which the pedal was held', {
        how: 'gauge on the pedal, or an adult with both feet',
        typical: '800 N',
        usual: [90, 3000],
      }),
      held: quantity('min', 'time for which it was held', { typical: '3 min', usual: [0.4, 29] }),
      dry: yesNo('was every joint dry, felt and looked at with a lamp'),
    },
    'test for leaks under pressure',
  ),
  'pre-test': block(
    {
      'pedal-force': quantity('N', 'greatest pedal force of one smooth stop from 30 km/h, unladen', {
        how: 'gauge on the pedal; run up to 40 km/h, coast in neutral',
        typical: '310 N',
        usual: [50, 1500],
      }),
      average: quantity('m/s2', 'average deceleration of that stop', {
        how: 'inertial meter, fixed level',
        typical: '4.6 m/s2',
      }),
      peak: quantity('m/s2', 'peak deceleration of that stop', { how: 'inertial meter', typical: '5.9 m/s2' }),
    },
    'the first stop; the whole test has a note of its own',
  ),
};
export type Brakes = Data<typeof shape>;
export type System = NonNullable<Brakes['now']>;
