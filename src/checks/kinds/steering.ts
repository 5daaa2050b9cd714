import { jointsInSeries } from '../../calc/driveline/joints-in-series.js';
import { spread } from '../../calc/value.js';
import { choice, list, quantity, text, yesNo } from '../../project/fields.js';
import { showQuantity } from '../../units/show.js';
import { type Data, kind } from '../engine/kind.js';
import { saysNo } from '../engine/told.js';
import { isMissing, type Work } from '../engine/work.js';
import { compareAgainst, hasNote } from './parts/against.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';
import { given } from './parts/maybe.js';
import { airbagField, examineStops, quietAnswers, singleShearField, stopStates, workedField } from './parts/stop.js';
import { tellMissing } from './parts/tell-missing.js';
import { examineTorques, torqueAnswers, torquesField } from './parts/torques.js';

const shape = {
  parts: text(
    'what was changed, and out of what it comes',
    'rack of a later model, intermediate shaft with two joints made new',
  ).meta({ recordedFor: 'whoever assesses the parts' }),
  side: choice({ kept: 'kept on its side', moved: 'moved from left to right' }, 'side of the steering'),
  joints: list(
    {
      angle: quantity('deg', 'angle at which the joint works', {
        how: 'inclinometer along both shafts in the plane of the joint, or a template and protractor; straight ahead, three times',
        typical: '18.5 deg',
        usual: [0, 50],
      }),
      'maker-angle': makerFigures('deg', 'working angle', [0, 50]),
      plane: quantity(
        'deg',
        'from the second joint on: turn of the plane in which it bends against that of the joint before, clockwise as seen from the wheel; 0 where all shafts lie in one plane',
        {
          how: 'look along the shaft: protractor between the directions in which both joints bend',
          typical: '0 deg',
          usual: [0, 180],
        },
      ),
      forks: quantity(
        'deg',
        'from the second joint on: turn of its fork against the fork at the other end of the shaft before it, clockwise as seen from the wheel; 0 where both lie in one plane',
        {
          how: 'straightedges across the eyes of both forks, protractor between them',
          typical: '0 deg',
          usual: [0, 180],
        },
      ),
      engaged: quantity('mm', 'length of spline or flats that stands in the joint', {
        how: 'mark the shaft at the joint, draw it out, caliper',
        typical: '22.0 mm',
      }),
      'maker-engaged': makerFigures('mm', 'length in the joint', [3, 130]),
      held: text('how the shaft is held and locked in it', 'clamp bolt in the groove of the shaft, self-locking nut'),
    },
    'joints of the steering shaft, from the wheel on: `column-to-shaft`',
  ),
  'original-collapse': quantity('mm', 'way by which column and shaft could shorten as it came', {
    how: 'sliding length of column and shaft, less what stands in its way; before dismantling',
    typical: '95 mm',
  }),
  collapse: quantity('mm', 'way by which column and shaft can shorten now', {
    how: 'the same way, measured as before',
    typical: '110 mm',
  }),
  'wheel-diameter': quantity('mm', 'diameter of the steering wheel now', {
    how: 'tape over the rim, outside to outside, two directions',
    typical: '365 mm',
  }),
  'wheel-alike': yesNo('is the hub as padded or recessed as the original, and does the wheel meet the design rules'),
  airbag: airbagField,
  'rim-play': quantity('mm', 'free play at the rim now', {
    measuredAs: 'rule',
    how: 'rule at the rim, straight ahead, engine running where it is assisted, to the point where the road wheels begin to move; three times',
    typical: '8 mm',
    usual: [0, 75],
  }),
  'maker-rim-play': makerFigures('mm', 'free play at the rim', [0, 75]),
  ends: list(
    {
      play: quantity('mm', 'free play of the joint along its pin and across it, the greater', {
        places: 'largest',
        measuredAs: 'dial',
        how: 'dial gauge across the joint, wheel rocked by hand, weight on the wheels',
        typical: '0.3 mm',
        usual: [0, 2.9],
      }),
      'maker-play': makerFigures('mm', 'free play of the joint', [0, 2.9]),
      locked: choice(
        { pin: 'split pin', wire: 'wire', tab: 'tab', nut: 'self-locking nut', none: 'not locked' },
        'how it is locked',
      ),
      engaged: quantity('mm', 'thread of the end in its rod', {
        how: 'thread length less what stands out',
        typical: '24 mm',
      }),
    },
    'tie rod ends, drag link ends, idler and ball joints: `outer-left`',
  ),
  'least-gap': quantity('mm', 'least gap of steering parts to anything, over travel and lock, engine moved', {
    places: 'smallest',
    measuredAs: 'rule',
    how: 'springs out, wheel at both locks at droop, ride height and bump; engine levered on its mounts towards the shaft',
    typical: '14 mm',
    usual: [2, 135],
  }),
  'free-travel': yesNo('does it move freely from lock to lock at droop, ride height and bump, and come back by itself'),
  worked: workedField,
  'single-shear': singleShearField,
  torques: torquesField,
};
type Steering = Data<typeof shape>;

/** Rack or box, column, shaft and linkage. */
export const steering = kind({
  id: 'steering',
  title: 'Steering',
  covers:
    'Rack or box, column, shaft, joints and linkage that were changed or moved: working angles and engagement of the joints, collapse of the column, play, turns, locking.',
  shape,
  holdPoints: [
    {
      id: 'steering-as-received',
      shows:
        'Column, shaft and linkage in place with the sliding length of the column, before anything was taken apart',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['column', 'shaft', 'linkage'],
    },
    {
      id: 'joints-marked',
      shows: 'Shaft in each joint with the depth marked, yokes in line, bolts locked and paint-marked',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: (d) => (d.joints ?? []).map((j) => j.id),
      serves: 'steering.shown',
    },
    {
      id: 'lock-to-lock',
      shows: 'Steering swung from lock to lock at droop, ride height and bump, engine levered over',
      level: 'witness',
      during: 'assembled',
      before: 'tested',
      parts: ['droop', 'ride-height', 'bump', 'left-lock', 'right-lock'],
    },
  ],
  cautions: ['stands', 'steering', 'restraints', 'structure', 'driving'],
  answers: (d) => ({
    ...quietAnswers(d),
    ...torqueAnswers(d.torques),
    'steering.conversion': d.side === 'kept' ? { answer: 'no: the steering stays on its side' } : undefined,
    'steering.lock-to-lock': d['free-travel'] && { answer: d['free-travel'], from: ['free-travel'] },
    'steering.wheel-hub': d['wheel-alike'] && { answer: d['wheel-alike'], from: ['wheel-alike'] },
    'steering.ends-locked': locked(d.ends),
  }),
  states: (d) => stopStates(d),
  evaluate: ({ data }, work) => {
    if (data.side === 'moved')
      work.derive('steering.conversion', {
        because: 'the steering was moved, and the answer names no code for it',
        excludes: (said) => !/\bLS[12]\b/.test(said),
        todo: 'agree the code with the certifier, LS1 or LS2, and name it in the answer',
        from: ['side'],
      });
    examineJoints(data.joints, work);
    const was = work.take(data['original-collapse'], 'original-collapse');
    compareAgainst('steering.collapse-way', '', work.take(data.collapse, 'collapse'), ['original_collapse', was], work);
    work.compare('steering.wheel-diameter', '', work.take(data['wheel-diameter'], 'wheel-diameter'));
    work.compare('steering.rim-play', '', work.take(data['rim-play'], 'rim-play'), {
      limit: makerLimit(data['maker-rim-play'], 'mm'),
    });
    examineEnds(data.ends, work);
    if (data['least-gap'] || !hasNote(work, 'clearance'))
      work.compare('clearance.members', 'steering', work.take(data['least-gap'], 'least-gap'));
    examineTorques(data.torques, work);
    examineStops(data, work);
  },
});

function examineJoints(joints: Steering['joints'], work: Work): void {
  if (!joints?.length) {
    for (const item of ['steering.shaft-angles', 'steering.shaft-engagement'])
      work.compare(item, '', work.lacks('joints'));
    return;
  }
  for (const joint of joints) {
    const take = (name: 'angle' | 'engaged') => work.take(joint[name], 'joints', joint.id, name);
    const [angle, engaged] = [joint['maker-angle'], joint['maker-engaged']];
    work.compare('steering.shaft-angles', joint.id, take('angle'), {
      limit: angle?.greatest && makerLimit(angle, 'deg'),
    });
    work.compare('steering.shaft-engagement', joint.id, take('engaged'), {
      limit: engaged?.least && makerLimit(engaged, 'mm'),
    });
    if (joint.held && saysNo(joint.held))
      work.derive('fasteners.locking', {
        answer: 'no',
        because: `joint ${joint.id} of the steering shaft is held by \`${joint.held}\``,
        from: ['joints', joint.id, 'held'],
      });
  }
  examineUniformity(joints, work);
}

/**
 * How unevenly the box turns while the wheel turns evenly: told, and left to the maker's angles to judge. Joints that together
 * are worse than the worst of them alone add to each other, as where a fork stands wrong: that is put to the certifier.
 */
function examineUniformity(joints: NonNullable<Steering['joints']>, work: Work): void {
  const rows = joints.map((joint, i) => {
    const turn = (name: 'plane' | 'forks') => (i === 0 ? nothing : work.take(joint[name], 'joints', joint.id, name));
    return {
      angle: work.take(joint.angle, 'joints', joint.id, 'angle'),
      plane: turn('plane'),
      forks: turn('forks'),
    };
  });
  const { get } = work.sheet(jointsInSeries, '', { joints: rows });
  const [variation, angle] = [get('fluctuation'), get('equivalent')];
  if (isMissing(variation)) return tellMissing('steering.uniformity', '', variation, work);
  if (isMissing(angle)) return tellMissing('steering.uniformity', '', angle, work);
  const run = variation.origin.kind === 'sheet' ? variation.origin.run : undefined;
  const shown = showQuantity(variation.si, '%', spread(variation));
  const alike = showQuantity(angle.si, 'deg', spread(angle));
  const says = `speed varies by ${shown} over a turn of the wheel, as one joint of ${alike} would make it`;
  const steepest = Math.max(...joints.map((joint) => joint.angle?.quantity.si ?? 0));
  if (angle.si > steepest * (1 + HAIR))
    return work.state(
      'steering.uniformity',
      '',
      'unclear',
      `${says}: the joints add to each other instead of cancelling`,
      {
        run,
        answer: 'reckoned',
        todo: 'set the forks by the planes in which the joints bend, or put it to the certifier',
        path: ['joints'],
      },
    );
  work.state('steering.uniformity', '', 'met', `${says}; recorded, not judged`, { run, answer: 'reckoned' });
}

/** What the arithmetic of one joint, or of joints in a right angle, leaves. */
const HAIR = 1e-6;

/** The first joint has nothing before it to be turned against. */
const nothing = given(0, 'deg', 'first joint');

function examineEnds(ends: Steering['ends'], work: Work): void {
  if (!ends?.length) return work.compare('steering.free-play', '', work.lacks('ends'));
  for (const end of ends)
    work.compare('steering.free-play', end.id, work.take(end.play, 'ends', end.id, 'play'), {
      limit: makerLimit(end['maker-play'], 'mm'),
    });
  for (const { id, engaged } of ends)
    if (engaged) work.compare('links.engagement', id, work.take(engaged, 'ends', id, 'engaged'));
}

/** Yes once every end says how it is locked; one that is not says no. */
function locked(ends: Steering['ends']) {
  const loose = ends?.filter((end) => end.locked === 'none').map((end) => end.id) ?? [];
  if (loose.length > 0)
    return { answer: 'no', because: `not locked: ${loose.join(', ')}`, from: ['ends', loose[0]!, 'locked'] };
  return ends?.length && ends.every((end) => end.locked) ? { answer: 'yes', from: ['ends'] } : undefined;
}
