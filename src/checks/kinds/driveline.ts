import { tubeCriticalSpeed } from '../../calc/driveline/critical-speed.js';
import { highestShaftSpeed } from '../../calc/driveline/speed.js';
import { threeJoints } from '../../calc/driveline/three-joints.js';
import { twoJoints } from '../../calc/driveline/two-joints.js';
import { threeJointAngles, twoJointAngles } from '../../calc/driveline/without-speed.js';
import { expanded, spread } from '../../calc/value.js';
import { choice, list, quantity, slope, text } from '../../project/fields.js';
import { showQuantity } from '../../units/show.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { jointAngleLimit } from './parts/joint-table.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';
import { bothMissing, given } from './parts/maybe.js';

const inclinometer = 'inclinometer on a machined face or along the tube, zeroed on the level floor; read three times';
const shape = {
  datum: text('what the inclinometer was zeroed on', 'workshop floor, levelled to 0.1 deg').meta({
    recordedFor: 'whoever measures the slopes again',
  }),
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
    how: 'plumb lines to the floor from both joints',
    typical: '12 mm',
    usual: [0, 115],
  }),
  twist: quantity('deg', 'turn of the rear yoke against the front yoke; 0 where both lie in one plane', {
    measuredAs: 'angle',
    range: 'signed',
    typical: '0 deg',
    usual: [0, 45],
  }),
  'tube-diameter': quantity('mm', 'outside diameter of the tube', {
    measuredAs: 'thickness',
    how: 'caliper in the middle and at both ends',
    typical: '76.2 mm',
    usual: [38, 150],
  }),
  'tube-wall': quantity('mm', 'wall of the tube', {
    places: 'smallest',
    how: "maker's data, or ultrasonic gauge",
    typical: '1.65 mm',
    usual: [1, 8],
  }),
  'overdrive-ratio': quantity('1', 'ratio of a separate overdrive', {
    measuredAs: 'paper',
    typical: '0.78',
    usual: [0.5, 1.3],
  }),
  stations: list(
    {
      gearbox: slope('slope of the gearbox output', { how: inclinometer, typical: '3.4 deg down to the rear' }),
      shaft: slope('slope of the shaft, or of the rear shaft of two', {
        how: inclinometer,
        typical: '5.8 deg down to the rear',
      }),
      'front-shaft': slope('slope of the front shaft, two-piece only', {
        how: inclinometer,
        typical: '4.2 deg down to the rear',
      }),
      pinion: slope('slope of the pinion', { how: `${inclinometer}, on the flange`, typical: '3.6 deg nose up' }),
    },
    'readings at `ride` height unladen, `laden` to the gross mass, at full `bump` and at full `droop`, each an item with that id',
  ),
  'maker-angle': makerFigures('deg', 'angle of the joints', [0.2, 45]),
  'spline-engaged': quantity('mm', 'spline left engaged where the shaft is longest, mostly full droop', {
    how: 'mark the spline at full droop, draw it out and measure',
    typical: '85 mm',
    usual: [9, 300],
  }),
  'maker-engaged': makerFigures('mm', 'spline left engaged', [9, 300]),
  'spline-left': quantity('mm', 'travel left to the slip yoke where the shaft is shortest, mostly full bump', {
    measuredAs: 'length',
    how: 'tape between seal and yoke at full bump',
    typical: '22 mm',
    usual: [2.5, 150],
  }),
  'maker-left': makerFigures('mm', 'travel left to the slip yoke', [2.5, 150]),
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
      parts: ['gearbox', 'shaft', 'pinion'],
    },
    {
      id: 'slopes-fitted',
      shows: 'Inclinometer on gearbox, shaft and pinion at ride height',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: ['gearbox', 'shaft', 'pinion'],
      serves: 'driveline.angles-shown',
    },
  ],
  cautions: ['stands', 'spinning'],
  states: (d) => ({ shafts: d.shafts }),
  evaluate: ({ data }, work) => {
    const overdrive = data['overdrive-ratio'];
    const speed = work
      .sheet(highestShaftSpeed, '', {
        engineSpeed: work.fact('engine_speed'),
        gearRatio: work.fact('top_gear'),
        ...(overdrive ? { overdriveRatio: work.take(overdrive, 'overdrive-ratio') } : {}),
      })
      .get('speed');
    const lines = stationsOf(data).map((id) => lineAt(id, speed, data, work));
    for (const line of lines.filter(({ id }) => loaded.has(id))) examineLine(line, speed, work);
    examineLargest(lines, data, work);

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
    examineLeft('driveline.spline', 'spline-engaged', 'maker-engaged', data, work);
    examineLeft('driveline.spline-room', 'spline-left', 'maker-left', data, work);
  },
});

/** The states of load at ride height: speed counts there, and only there. */
const loaded: ReadonlySet<string> = new Set(['ride', 'laden']);

/** These positions are always asked for; others as far as they were read. */
const stationsOf = (data: Driveline): string[] => [
  ...new Set(['ride', 'laden', 'bump', 'droop', ...(data.stations ?? []).map((s) => s.id)]),
];

/** What the joints do at one position of the axle. */
interface Line {
  id: string;
  /** From front to rear. */
  joints: readonly Maybe[];
  /** Of the two angles of a one-piece shaft. */
  difference?: Maybe;
  fluctuation: Maybe;
}

/** Angles need geometry alone; once the speed is known, the accelerations that follow are shown beside them. */
function lineAt(id: string, speed: Maybe, data: Driveline, work: Work): Line {
  const row = data.stations?.find((s) => s.id === id);
  const at = (name: 'gearbox' | 'shaft' | 'front-shaft' | 'pinion') => work.take(row?.[name], 'stations', id, name);
  const offset = data.offset ? work.take(data.offset, 'offset') : undefined;
  const twist = data.twist ? work.take(data.twist, 'twist') : undefined;
  const turning = loaded.has(id) && !isMissing(speed);
  if (data.shafts === 'two') {
    const geometry = {
      gearboxSlope: at('gearbox'),
      frontSlope: at('front-shaft'),
      frontLength: work.take(data['front-length'], 'front-length'),
      rearSlope: at('shaft'),
      rearLength: work.take(data.length, 'length'),
      pinionSlope: at('pinion'),
      ...(offset ? { rearOffset: offset } : {}),
      ...(twist ? { rearTwist: twist } : {}),
    };
    const { get } = turning
      ? work.sheet(threeJoints, id, { ...geometry, speed })
      : work.sheet(threeJointAngles, id, geometry);
    return { id, joints: [get('joint1'), get('joint2'), get('joint3')], fluctuation: get('fluctuation') };
  }
  const geometry = {
    gearboxSlope: at('gearbox'),
    shaftSlope: at('shaft'),
    shaftLength: work.take(data.length, 'length'),
    pinionSlope: at('pinion'),
    ...(offset ? { shaftOffset: offset } : {}),
    ...(twist ? { shaftTwist: twist } : {}),
  };
  const { get } = turning
    ? work.sheet(twoJoints, id, { ...geometry, speed })
    : work.sheet(twoJointAngles, id, geometry);
  return {
    id,
    joints: [get('joint1'), get('joint2')],
    difference: get('difference'),
    fluctuation: get('fluctuation'),
  };
}

/** The joints at ride height in one state of load. What a whole position lacks is told once. */
function examineLine({ id, joints, difference, fluctuation }: Line, speed: Maybe, work: Work): void {
  const limit = jointAngleLimit(speed);
  const [first] = joints as [Maybe, ...Maybe[]];
  if (isMissing(first) || isMissing(speed)) {
    work.compare('driveline.angle-speed', id, bothMissing(first, speed));
  } else
    joints.forEach((joint, i) => {
      work.compare('driveline.angle-speed', `${id}-joint-${i + 1}`, joint, { limit });
    });
  if (isMissing(first)) {
    if (id === 'ride')
      for (const item of [
        'driveline.angle-least',
        ...(difference ? ['driveline.angle-equal'] : []),
        'driveline.uniformity',
      ])
        work.compare(item, id, first);
    return;
  }
  joints.forEach((joint, i) => {
    work.compare('driveline.angle-least', `${id}-joint-${i + 1}`, joint);
  });
  if (difference) work.compare('driveline.angle-equal', id, difference);
  work.compare('driveline.uniformity', id, fluctuation);
}

/** The largest angle of any joint at any position, against what the joint can do. */
function examineLargest(lines: readonly Line[], data: Driveline, work: Work): void {
  const angles = lines
    .filter(({ id }) => id !== 'laden' || data.stations?.some((s) => s.id === 'laden'))
    .flatMap(({ id, joints }) => joints.map((angle, i) => ({ angle, says: `largest at ${id}, joint ${i + 1}` })));
  const lacking = angles.map(({ angle }) => angle).filter(isMissing);
  const window = data['maker-angle'];
  const options = { limit: window?.greatest && makerLimit(window, 'deg') };
  if (lacking.length > 0) return work.compare('driveline.angle-largest', '', bothMissing(...lacking), options);
  const reach = ({ angle }: (typeof angles)[number]) => (isMissing(angle) ? 0 : angle.si + expanded(angle));
  const { angle, says } = angles.reduce((most, one) => (reach(one) > reach(most) ? one : most));
  work.compare('driveline.angle-largest', '', angle, { ...options, marks: [says] });
}

/**
 * What is left to the slip joint at one end of its travel. Nothing left is against it whatever figure it is compared with:
 * the joint comes apart, or bottoms.
 */
function examineLeft(
  item: 'driveline.spline' | 'driveline.spline-room',
  field: 'spline-engaged' | 'spline-left',
  maker: 'maker-engaged' | 'maker-left',
  data: Driveline,
  work: Work,
): void {
  const left = work.take(data[field], field);
  const window = data[maker];
  const limit = window?.least && makerLimit(window, 'mm');
  if (isMissing(left) || left.si - expanded(left) > 0) return work.compare(item, '', left, { limit });
  const gone = left.si <= 0;
  work.state(
    item,
    '',
    gone ? 'against' : 'unclear',
    `measured ${showQuantity(left.si, 'mm', spread(left))}, expected more than 0 mm by mechanics alone: ${consequence[item]}`,
    {
      of: 'requirement',
      measured: left,
      margin: left.si,
      todo: gone ? 'change the length of the shaft or the travel' : 'measure again with a smaller uncertainty',
      path: [field],
    },
  );
}

const consequence = {
  'driveline.spline': 'with nothing engaged the slip joint comes apart',
  'driveline.spline-room': 'with no travel left the slip joint bottoms',
} as const;
