import { z } from 'zod';
import { choice, count, list, quantity, text, yesNo } from '../../project/fields.js';

/** The fields of a test, a block for each kind of test. */

const block = <S extends z.ZodRawShape>(shape: S, says: string) =>
  z.strictObject(shape).optional().meta({ form: 'block', says });
const when = choice({ was: 'as received', now: 'as built' }, 'as received or as built; as built where nothing is said');

const stop = {
  test: choice(
    {
      'pre-test': 'smooth stop from 30 km/h, unladen',
      service: 'service brake, all in order',
      'circuit-failed-laden': 'one circuit out of action, laden',
      'circuit-failed-light': 'one circuit out of action, lightly laden',
      'proportioning-failed': 'proportioning valve out of action',
      'antilock-failed': 'antilock system out of action',
      fade: 'one of repeated stops, the first one cold',
      'high-speed': 'from 80 % of the top speed',
      other: 'another stop, recorded only',
    },
    'which test the stop belongs to',
  ),
  load: choice(
    { unladen: 'lightly laden', laden: 'laden for the test' },
    'load of the car, where the test leaves it open',
  ),
  state: when,
  speed: quantity('km/h', 'speed at which the pedal was pressed', {
    how: 'satellite logger or fifth wheel, not the car’s speedometer',
    typical: '80.4 km/h',
  }),
  'pedal-force': quantity('N', 'greatest force on the pedal', {
    how: 'gauge strapped to the pedal pad',
    typical: '420 N',
    usual: [50, 1500],
  }),
  deceleration: quantity('m/s2', 'average deceleration, where the instrument gives it', {
    how: 'mean fully developed deceleration of the inertial meter',
    typical: '6.1 m/s2',
  }),
  peak: quantity('m/s2', 'peak deceleration', { how: 'inertial meter, fixed level to the floor', typical: '7.4 m/s2' }),
  'to-high': quantity('m', 'distance from pressing the pedal to 80 % of that speed', {
    how: 'read from the logger',
    typical: '16.4 m',
  }),
  'to-low': quantity('m', 'distance from pressing the pedal to 10 % of that speed', {
    how: 'read from the logger',
    typical: '44.2 m',
  }),
  failure: text('what was out of action', 'front circuit, opened at the master cylinder'),
  pulled: yesNo('did the car pull to a side or a wheel lock early'),
};

const brakes = {
  'split-system': yesNo('has the car two circuits'),
  stops: list(stop, 'every stop in the order in which it was made, those that were not used among them'),
  'lock-order': list(
    {
      load: choice({ unladen: 'lightly laden', laden: 'laden for the test' }, 'load of the car'),
      locked: choice(
        { front: 'a front wheel', rear: 'a rear wheel', both: 'front and rear together', none: 'no wheel' },
        'what locked first as the pedal was pressed harder',
      ),
      deceleration: quantity('m/s2', 'deceleration at which it locked; without a lock the greatest that was reached', {
        how: 'inertial meter, read where the wheel stands still on the film or in the log',
        typical: '7.6 m/s2',
      }),
      shown: text('by what it was seen which wheel locked', 'cameras at both left wheels'),
      antilock: choice(
        { none: 'the car has none', off: 'out of action in this test', works: 'at work' },
        'antilock system in this test',
      ),
    },
    'stops in which it was watched which axle locks first, on a closed track',
  ),
  'test-mass': quantity('kg', 'mass of the car at the laden test, without the persons on board', {
    how: 'weighed as loaded for the test',
    typical: '1515 kg',
  }),
  'seats-occupied': count('seats in which somebody sat during the test', { typical: '2' }),
  'surface-friction': quantity('1', 'friction of the dry surface', {
    measuredAs: 'paper',
    how: 'test track’s figure or a sled test, with its paper',
    typical: '0.78',
    usual: [0.2, 1.2],
  }),
  'parking-up': quantity('%', 'gradient on which the parking brake held, facing up', {
    measuredAs: 'gradient',
    how: 'inclinometer on the road, held for five minutes',
    typical: '20.5 %',
    usual: [3, 45],
  }),
  'parking-down': quantity('%', 'gradient on which the parking brake held, facing down', {
    measuredAs: 'gradient',
    how: 'inclinometer on the road, held for five minutes',
    typical: '20.5 %',
    usual: [3, 45],
  }),
  'plate-front-off': quantity('%', 'peak on the plate machine, front circuit off', {
    measuredAs: 'plate-brake',
    how: 'print of the machine',
    typical: '31 %',
    usual: [3.5, 120],
  }),
  'plate-rear-off': quantity('%', 'peak on the plate machine, rear circuit off', {
    measuredAs: 'plate-brake',
    how: 'print of the machine',
    typical: '58 %',
    usual: [6, 120],
  }),
  'plate-booster-off': quantity('%', 'plate machine, booster off, 500 N on the pedal', {
    measuredAs: 'plate-brake',
    how: 'print of the machine',
    typical: '54 %',
    usual: [6, 120],
  }),
};

const outlet = {
  readings: quantity('dB(A)', 'stationary noise now', {
    how: 'meter on fast, engine held at test speed, then let go; three readings in one list',
    typical: '[88.4, 88.9, 88.6] dB(A)',
  }),
  background: quantity('dB(A)', 'noise of the place with the engine off', {
    how: 'same place and setting, before and after',
    typical: '56 dB(A)',
  }),
  distance: quantity('mm', 'microphone to the edge of the outlet', { how: 'tape', typical: '500 mm' }),
  height: quantity('mm', 'microphone above the ground', { how: 'tape', typical: '280 mm' }),
  angle: quantity('deg', 'angle between microphone and direction of the outlet', {
    how: 'protractor on the ground',
    typical: '45 deg',
    usual: [8, 90],
  }),
};

const noise = {
  approval: choice(
    { none: 'built before ADR 83/00 or not approved to it', 'ADR 83/00': 'approved to ADR 83/00' },
    'noise rule that the model was approved to',
  ),
  signature: quantity('dB(A)', 'stationary noise with which the model was approved', {
    measuredAs: 'paper',
    how: 'plate under the bonnet or published list',
    typical: '84 dB(A)',
    usual: [50, 130],
  }),
  counts: choice(
    { highest: 'the highest reading', mean: 'the mean of the readings' },
    'which number counts in the procedure used; the highest where nothing is said',
  ),
  outlets: list(outlet, 'outlets, each an item of its own: `left-rear`'),
  'rated-speed': quantity('rpm', 'engine speed at rated power', {
    measuredAs: 'paper',
    how: "maker's figure",
    typical: '5400 rpm',
  }),
  'attainable-speed': quantity(
    'rpm',
    'highest speed the engine reaches standing, where something holds it below the test speed',
    { typical: '4200 rpm' },
  ),
  'test-speed': quantity('rpm', 'engine speed at which it was measured', {
    how: 'independent tachometer',
    typical: '3760 rpm',
  }),
  'calibrator-before': quantity('dB', 'meter on its calibrator before the test', {
    measuredAs: 'repeated',
    how: 'read after settling',
    typical: '94.0 dB',
    usual: [60, 130],
  }),
  'calibrator-after': quantity('dB', 'meter on its calibrator after the test', {
    measuredAs: 'repeated',
    how: 'the same way',
    typical: '94.1 dB',
    usual: [60, 130],
  }),
};

const gauge = (where: string, typical: string) =>
  quantity('mm', `${where} gauge, up positive`, {
    measuredAs: 'dial',
    range: 'signed',
    how: 'dial gauge on a stand that does not touch the car',
    typical,
    usual: [0, 17],
  });
const twistLoad = {
  force: quantity('N', 'force of the couple on one side', {
    how: 'load cell or weighed ballast',
    typical: '500 N',
    usual: [60, 4500],
  }),
  'front-left': gauge('front left', '1.80 mm'),
  'front-right': gauge('front right', '-1.80 mm'),
  'rear-left': gauge('rear left', '0.05 mm'),
  'rear-right': gauge('rear right', '-0.05 mm'),
};
const bendingLoad = {
  force: quantity('N', 'load in the middle of the wheelbase', { how: 'weighed ballast', typical: '1000 N' }),
  middle: quantity('mm', 'how far the sill has sunk under the load', {
    measuredAs: 'dial',
    range: 'signed',
    how: 'dial gauge, mean of left and right',
    typical: '0.36 mm',
    usual: [0.04, 3.5],
  }),
  front: quantity('mm', 'how far it has sunk at the front supports', {
    measuredAs: 'dial',
    range: 'signed',
    how: 'dial gauge, mean of left and right',
    typical: '0.06 mm',
    usual: [0, 0.55],
  }),
  rear: quantity('mm', 'how far it has sunk at the rear supports', {
    measuredAs: 'dial',
    range: 'signed',
    how: 'dial gauge, mean of left and right',
    typical: '0.04 mm',
    usual: [0, 0.39],
  }),
};
const loads = <S extends z.ZodRawShape>(shape: S, state: string) =>
  list(shape, `every load ${state}, up and down again to none, at least three`);

export const shape = {
  test: choice(
    {
      brakes: 'brakes',
      noise: 'stationary noise',
      speedometer: 'speedometer',
      twist: 'twist and bending of the body',
      'lane-change': 'lane change',
      emissions: 'exhaust emissions',
      road: 'road test',
    },
    'which test this note records; each test has a note of its own',
  ),
  place: text('place and surface', 'sealed yard, level, dry'),
  weather: text('weather, wind and temperature', 'dry, light wind, 19 degC'),
  'load-and-tyres': text(
    'what was in the car, and tyre pressures',
    'driver and one observer, full tank, 220 kPa cold all round',
  ),
  driver: text('who drove, measured and watched', 'J. Okoro drove, R. Ansell watched'),
  instruments: text('instruments with their last calibration', 'inertial meter no. 12, calibrated 2026-01'),
  brakes: block(brakes, 'brake test'),
  noise: block(noise, 'stationary noise'),
  'speedometer-rule': choice(
    { 'ADR 18/03': 'approved to ADR 18/03', 'ADR 18': 'approved to an earlier issue' },
    'for cars built from July 2006 to June 2007: the rule of the model',
  ),
  'true-speed-by': text(
    'with what the true speed was measured',
    'satellite logger at 10 Hz, mean over 200 m both ways',
  ),
  speeds: list(
    {
      state: when,
      indicated: quantity('km/h', 'speed shown', { how: 'steady, read straight on', typical: '103 km/h' }),
      'true-speed': quantity('km/h', 'true speed at that moment', {
        how: 'satellite logger, or stop watch over a measured distance, mean of both ways',
        typical: '98.6 km/h',
      }),
    },
    'speedometer readings at 40, 60, 80 and 100 km/h',
  ),
  twist: block(
    {
      body: text(
        'state of the body, the same in both tests: doors, glass, engine, struts',
        'doors off, glass in, engine in, no strut brace',
      ),
      arm: quantity('mm', 'distance between the two forces of the couple', {
        how: 'tape between the load points',
        typical: '1400 mm',
      }),
      'front-width': quantity('mm', 'distance between left and right gauge at the front', {
        how: 'tape between the gauge tips',
        typical: '1200 mm',
      }),
      'rear-width': quantity('mm', 'distance between left and right gauge at the rear', {
        how: 'tape between the gauge tips',
        typical: '1200 mm',
      }),
      was: loads(twistLoad, 'as received'),
      now: loads(twistLoad, 'as built'),
    },
    'twist of the body',
  ),
  bending: block(
    { was: loads(bendingLoad, 'as received'), now: loads(bendingLoad, 'as built') },
    'bending of the body',
  ),
  'lane-change': block(
    {
      runs: list(
        {
          speed: quantity('km/h', 'speed at the entry', { how: 'satellite logger', typical: '80.6 km/h' }),
          cones: count('cones that were touched', { typical: '0' }),
        },
        'runs in the order in which they were driven',
      ),
      confidence: yesNo('had the driver confidence in the car throughout'),
    },
    'double lane change',
  ),
  emissions: block(
    {
      'idle-co': quantity('%', 'carbon monoxide at idle', {
        measuredAs: 'gas',
        how: 'gas tester, engine warm, steady for a minute',
        typical: '1.8 %',
        usual: [0, 12],
      }),
      report: text(
        'which test was made, where, with what result, or why none is needed',
        'idle test at a licensed station, report kept',
      ),
    },
    'exhaust emissions',
  ),
  road: block(
    {
      rechecked: yesNo('were joints, levels, hoses and clearances looked at again afterwards'),
      found: text('what was found', 'nothing loose, no leak'),
    },
    'road test',
  ),
};

export type BrakeTest = NonNullable<z.output<typeof shape.brakes>>;
export type Stop = NonNullable<BrakeTest['stops']>[number];
export type LockOrder = NonNullable<BrakeTest['lock-order']>[number];
export type NoiseTest = NonNullable<z.output<typeof shape.noise>>;
export type Outlet = NonNullable<NoiseTest['outlets']>[number];
