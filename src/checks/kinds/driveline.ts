import { tubeCriticalSpeed } from '../../calc/driveline/critical-speed.js';
import { highestShaftSpeed } from '../../calc/driveline/speed.js';
import { threeJoints } from '../../calc/driveline/three-joints.js';
import { twoJoints } from '../../calc/driveline/two-joints.js';
import { expanded, type Value } from '../../calc/value.js';
import { choice, list, quantity, slope, text } from '../../project/fields.js';
import { showQuantity } from '../../units/show.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { bothMissing, given, negated } from './parts/maybe.js';

const inclinometer = 'inclinometer on a machined face or along the tube, zeroed on the level floor; read three times';
const shape = {
  datum: text('what the inclinometer was zeroed on', 'workshop floor, levelled to 0.1 deg'),
  shafts: choice({ one: 'one-piece shaft, two joints', two: 'two-piece shaft, three joints' }, 'shafts'),
  length: quantity('mm', 'length between joint centres (one-piece), or of the rear shaft', {
    how: 'tape along the shaft between the centres of the caps',
    typical: '1240 mm',
    usual: [250, 2600],
  }),
  'front-length': quantity('mm', 'length of the front shaft between joint centres, two-piece only', {
    typical: '640 mm',
    usual: [250, 2600],
  }),
  offset: quantity('mm', 'how far the rear joint lies to the left of the front joint (negative: right)', {
    measuredAs: 'length',
    range: 'signed',
    how: 'plumb lines to the floor from both joints',
    typical: '12 mm',
    usual: 'any',
  }),
  twist: quantity('deg', 'turn of the rear yoke against the front yoke; 0 where both lie in one plane', {
    measuredAs: 'angle',
    range: 'signed',
    typical: '0 deg',
  }),
  'tube-diameter': quantity('mm', 'outside diameter of the tube', {
    measuredAs: 'thickness',
    how: 'caliper in the middle and at both ends',
    typical: '76.2 mm',
    usual: [38, 150],
  }),
  'tube-wall': quantity('mm', 'wall of the tube', {
    how: "maker's data, or ultrasonic gauge",
    typical: '1.65 mm',
    usual: [1, 8],
  }),
  'overdrive-ratio': quantity('1', 'ratio of a separate overdrive', { measuredAs: 'paper', typical: '0.78' }),
  stations: list(
    {
      gearbox: slope('slope of the gearbox output', { how: inclinometer, typical: '3.0 deg down to the rear' }),
      shaft: slope('slope of the shaft, or of the rear shaft of two', {
        how: inclinometer,
        typical: '5.5 deg down to the rear',
      }),
      'front-shaft': slope('slope of the front shaft, two-piece only', {
        how: inclinometer,
        typical: '3.5 deg down to the rear',
      }),
      pinion: slope('slope of the pinion', { how: `${inclinometer}, on the flange`, typical: '3.0 deg nose up' }),
    },
    'readings at `ride` height, full `bump` and full `droop`, each an item with that id',
  ),
  'spline-engaged': quantity('mm', 'spline left engaged where the shaft is longest, mostly full droop', {
    how: 'mark the spline at full droop, draw it out and measure',
    typical: '85 mm',
  }),
  'spline-left': quantity('mm', 'travel left to the slip yoke where the shaft is shortest, mostly full bump', {
    measuredAs: 'length',
    how: 'tape between seal and yoke at full bump',
    typical: '22 mm',
  }),
};
type Driveline = Data<typeof shape>;

/** The shaft between gearbox and rear axle. */
export const driveline = kind({
  id: 'driveline',
  title: 'Driveline',
  covers:
    'The shaft between gearbox and rear axle: slopes as read, joint angles in three dimensions, speed, tube and spline.',
  shape,
  holdPoints: [
    {
      id: 'slopes-as-received',
      shows: 'Inclinometer on gearbox, shaft and pinion before anything was taken apart',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'slopes-fitted',
      shows: 'Inclinometer on gearbox, shaft and pinion at ride height',
      level: 'record',
      during: 'assembled',
      before: 'finished',
    },
  ],
  cautions: ['stands', 'spinning'],
  evaluate: ({ data }, work) => {
    const overdrive = data['overdrive-ratio'];
    const speed = work
      .sheet(highestShaftSpeed, '', {
        engineSpeed: work.fact('engine_speed'),
        gearRatio: work.fact('top_gear'),
        ...(overdrive ? { overdriveRatio: work.take(overdrive, 'overdrive-ratio') } : {}),
      })
      .get('speed');
    for (const id of stationsOf(data)) station(id, speed, data, work);
    ride(data, work);

    const critical = work.sheet(tubeCriticalSpeed, '', {
      length: work.take(data.length, 'length'),
      diameter: work.take(data['tube-diameter'], 'tube-diameter'),
      wall: work.take(data['tube-wall'], 'tube-wall'),
      share: given(0.7, '%', 'the share that item driveline.critical-speed names'),
    });
    work.publish('critical_speed', critical.get('critical'));
    work.compare(
      'driveline.critical-speed',
      '',
      'missing' in critical.get('critical') ? critical.get('critical') : speed,
    );
    work.compare('driveline.spline', '', splineLeft(data, work));
  },
});

/** What is left engaged where the shaft is longest decides, once it neither comes apart nor bottoms within the uncertainty. */
function splineLeft(data: Driveline, work: Work): Maybe {
  const engaged = work.take(data['spline-engaged'], 'spline-engaged');
  const left = work.take(data['spline-left'], 'spline-left');
  if (isMissing(engaged) || isMissing(left)) return bothMissing(engaged, left);
  const none = (value: Value) => value.si - expanded(value) <= 0;
  const shown = (value: Value) => showQuantity(value.si, 'mm', expanded(value));
  if (none(engaged))
    return {
      missing: [],
      reason: `the slip joint comes apart: ${shown(engaged)} left engaged where the shaft is longest`,
    };
  if (none(left))
    return { missing: [], reason: `the slip joint bottoms: ${shown(left)} of travel left where the shaft is shortest` };
  return engaged;
}

/** Ride height is always asked for; the other positions as far as they were read. */
const stationsOf = (data: Driveline): string[] => [...new Set(['ride', ...(data.stations ?? []).map((s) => s.id)])];

/** Joint angles at one position of the axle. Limits hold at ride height; bump and droop are shown. */
function station(id: string, speed: Maybe, data: Driveline, work: Work): void {
  const row = data.stations?.find((s) => s.id === id);
  const at = (name: 'gearbox' | 'shaft' | 'front-shaft' | 'pinion') => work.take(row?.[name], 'stations', id, name);
  const offset = data.offset ? work.take(data.offset, 'offset') : undefined;
  const twist = data.twist ? work.take(data.twist, 'twist') : undefined;
  const two = data.shafts === 'two';
  const worked = two
    ? work.sheet(threeJoints, id, {
        gearboxSlope: at('gearbox'),
        frontSlope: at('front-shaft'),
        frontLength: work.take(data['front-length'], 'front-length'),
        rearSlope: at('shaft'),
        rearLength: work.take(data.length, 'length'),
        pinionSlope: at('pinion'),
        speed,
        ...(offset ? { rearOffset: offset } : {}),
        ...(twist ? { rearTwist: twist } : {}),
      })
    : work.sheet(twoJoints, id, {
        gearboxSlope: at('gearbox'),
        shaftSlope: at('shaft'),
        shaftLength: work.take(data.length, 'length'),
        pinionSlope: at('pinion'),
        speed,
        ...(offset ? { shaftOffset: offset } : {}),
        ...(twist ? { shaftTwist: twist } : {}),
      });
  if (id !== 'ride') return;
  const get = worked.get as (name: string) => Maybe;
  const joints = two ? ['joint1', 'joint2', 'joint3'] : ['joint1', 'joint2'];
  joints.forEach((joint, i) => {
    work.compare('driveline.angle-least', `ride-joint-${i + 1}`, get(joint));
    work.compare('driveline.angle-preferred', `ride-joint-${i + 1}`, get(joint));
  });
  if (!two) work.compare('driveline.angle-equal', 'ride', get('difference'));
  work.compare('driveline.torsional', 'ride', get('torsional'));
  for (const name of two ? ['driveFront', 'driveRear', 'coastRear', 'coastFront'] : ['inertiaDrive', 'inertiaCoast']) {
    work.compare('driveline.inertial', `ride-${name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`)}`, get(name));
  }
}

function ride(data: Driveline, work: Work): void {
  const row = data.stations?.find((s) => s.id === 'ride');
  work.compare('driveline.pinion', 'ride', negated(work.take(row?.pinion, 'stations', 'ride', 'pinion')));
}
