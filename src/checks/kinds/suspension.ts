import { coilTravel } from '../../calc/suspension/coil-travel.js';
import { lengthDifference } from '../../calc/uncertainty/difference.js';
import { kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { examineLift } from './lift.js';
import { compareAgainst, hasNote } from './parts/against.js';
import { examineGroundClearance } from './parts/ground-clearance.js';
import { difference } from './parts/maybe.js';
import { examineSpringLoad, ratesOf } from './parts/spring-load.js';
import { examineStops, quietAnswers, stopStates } from './parts/stop.js';
import { examineTorques, torqueAnswers } from './parts/torques.js';
import { type Suspension, shape } from './suspension-fields.js';

const cornerIds = ['front-left', 'front-right', 'rear-left', 'rear-right'] as const;
type Axle = 'front' | 'rear';

const eachSpring = (d: Suspension) =>
  (['front', 'rear'] as const).flatMap((end) => (d[end] ? [end, `${end}-wire`] : []));

/** Springs, dampers, travel and ride height. */
export const suspension = kind({
  id: 'suspension',
  title: 'Suspension',
  covers:
    'Springs, dampers, ride height and travel: what the car stood at and how far its wheels moved before and after, springs at both ends of travel, ground clearance.',
  shape,
  holdPoints: [
    {
      id: 'heights-as-received',
      shows: 'Ride height, bump and droop of each wheel with a tape in view, before anything was taken apart',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: [...cornerIds, 'bump', 'droop'],
    },
    {
      id: 'springs-beside',
      shows: 'Old and new springs of each axle beside each other with a rule, caliper on the wire',
      level: 'record',
      during: 'dismantled',
      before: 'assembled',
      parts: eachSpring,
    },
    {
      id: 'springs-at-ends',
      shows: 'Spring seats, joints and brake hoses at full droop and full bump',
      level: 'witness',
      during: 'assembled',
      before: 'tested',
      parts: ['droop', 'bump'],
      serves: 'suspension.droop-shown',
    },
  ],
  cautions: ['stands', 'springs', 'steering', 'structure', 'driving'],
  answers: (d) => ({
    ...quietAnswers(d),
    ...torqueAnswers(d.torques),
    'links.altered': d['suspension-exchanged'] && { answer: d['suspension-exchanged'], from: ['suspension-exchanged'] },
    'suspension.coils-cut': d['coils-cut'] && { answer: d['coils-cut'], from: ['coils-cut'] },
    'suspension.spring-seat': d['springs-seated'] && { answer: d['springs-seated'], from: ['springs-seated'] },
    'suspension.spring-load': d['springs-carry'] && { answer: d['springs-carry'], from: ['springs-carry'] },
    'suspension.lowering-blocks':
      d['lowering-blocks'] &&
      {
        none: { answer: 'not applicable', because: 'no blocks are fitted', from: ['lowering-blocks'] },
        located: { answer: 'yes', from: ['lowering-blocks'] },
        other: { answer: 'no', from: ['lowering-blocks'] },
      }[d['lowering-blocks']],
    'clearance.flat-tyre': d['flat-tyre'] && { answer: d['flat-tyre'], from: ['flat-tyre'] },
    'suspension.lift-kit': d['commercial-kit'] && { answer: d['commercial-kit'], from: ['commercial-kit'] },
    'mass.cg-moved': d['centre-of-mass-moved'] && { answer: d['centre-of-mass-moved'], from: ['centre-of-mass-moved'] },
    'suspension.as-received': cornerIds.every((id) => whole(d, id))
      ? { answer: 'four corners', shown: 'note' }
      : undefined,
    'suspension.springs-paper': springsTold(d),
  }),
  states: (d) => ({
    ...stopStates(d),
    'suspension-exchanged': d['suspension-exchanged'],
    'centre-of-mass-moved': d['centre-of-mass-moved'],
  }),
  evaluate: ({ data }, work) => {
    for (const id of cornerIds) examineCorner(id, data, work);
    for (const axle of ['front', 'rear'] as const) examineAxle(axle, data, work);
    examineGroundClearance('clearance', data.clearance, work);
    examineTorques(data.torques, work);
    examineStops(data, work);
  },
});

const cornerOf = (data: Suspension, id: string) => data.corners?.find((c) => c.id === id);
const whole = (data: Suspension, id: string) => {
  const was = cornerOf(data, id)?.was;
  return was?.height !== undefined && was.bump !== undefined && was.rebound !== undefined;
};
const axleOf = (id: string): Axle => (id.startsWith('front') ? 'front' : 'rear');

/** Ride height and travel of one wheel against what they were, and the spring at the ends of that travel. */
function examineCorner(id: string, data: Suspension, work: Work): void {
  const corner = cornerOf(data, id);
  const state = corner?.now || !corner?.planned ? 'now' : 'planned';
  const take = (when: 'was' | 'now' | 'planned', name: 'height' | 'bump' | 'rebound' | 'spring-length') =>
    work.take(corner?.[when]?.[name], 'corners', id, when, name);
  const heights = { before: take('was', 'height'), after: take(state, 'height') };
  work.compare('suspension.height', id, work.sheet(lengthDifference, id, heights).get('apart'));

  const [bump, rebound] = [take(state, 'bump'), take(state, 'rebound')];
  for (const item of ['suspension.bump-travel', 'suspension.bump-travel-sa'])
    compareAgainst(item, id, bump, ['original_bump_travel', take('was', 'bump')], work);
  compareAgainst('suspension.rebound-travel', id, rebound, ['original_rebound_travel', take('was', 'rebound')], work);

  const before = work.fact('original_tyre_diameter');
  const after = hasNote(work, 'wheels-tyres') ? work.fact(`tyre_diameter_${axleOf(id)}`) : before;
  const place = data.clearance?.find((p) => p.was && p.region === `${axleOf(id)}-axle`);
  const lift = examineLift(
    id,
    {
      heights,
      diameters: { before, after },
      clearance: place ? work.take(place.was, 'clearance', place.id, 'was') : work.lacks('clearance'),
    },
    work,
  ).get('total');
  if (!isMissing(lift) && lift.si <= 0)
    work.state('suspension.lift-certified', id, 'out', 'the car stands no higher here than it came', {
      path: ['corners', id],
    });
  else work.compare('suspension.lift-certified', id, lift);
  coilAtEnds(id, { bump, rebound, length: take(state, 'spring-length') }, data, work);
}

function coilAtEnds(
  id: string,
  at: { bump: Maybe; rebound: Maybe; length: Maybe },
  data: Suspension,
  work: Work,
): void {
  const axle = axleOf(id);
  const type = data[axle]?.type;
  if (type !== undefined && type !== 'coil') {
    for (const item of ['suspension.coil-bind', 'suspension.seated'])
      work.state(item, id, 'out', `the ${axle} axle has no coil springs`, { path: [axle, 'type'] });
    return;
  }
  const state = stateOf(axle, data);
  const spring = data[axle]?.[state];
  const take = (name: 'free-length' | 'wire' | 'coils') => work.take(spring?.[name], axle, state, name);
  const worked = work.sheet(coilTravel, id, {
    free: take('free-length'),
    ride: at.length,
    motion: work.take(data[axle]?.motion, axle, 'motion'),
    bump: at.bump,
    droop: at.rebound,
    wire: take('wire'),
    coils: take('coils'),
    ends: spring?.ends ?? work.lacks(axle, state, 'ends'),
  });
  work.compare('suspension.coil-bind', id, worked.get('open'));
  work.compare('suspension.seated', id, worked.get('seated'));
}

const stateOf = (axle: Axle, data: Suspension) => (data[axle]?.now || !data[axle]?.planned ? 'now' : 'planned');

/** Springs fitted whose figures and paper the note gives, all of them. */
function springsTold(d: Suspension) {
  const fitted = [d.front?.now, d.rear?.now].filter((spring) => spring !== undefined);
  const whole = fitted.every((s) => s.part && s.rate && s['free-length'] && s.wire && s.from);
  return fitted.length > 0 && whole
    ? { answer: fitted.map((s) => `${s.part}, ${s.from}`).join('; '), shown: 'note' }
    : undefined;
}

/** What the springs carry, before and now, and the stroke that is left to the damper. */
function examineAxle(axle: Axle, data: Suspension, work: Work): void {
  const state = stateOf(axle, data);
  const [was, now] = [ratesOf(axle, 'was', data, work), ratesOf(axle, state, data, work)];
  for (const id of cornerIds.filter((one) => axleOf(one) === axle)) {
    const corner = cornerOf(data, id);
    const at = corner?.now || !corner?.planned ? 'now' : 'planned';
    const standing = (spring: 'was' | typeof state, when: 'was' | typeof at) => ({
      free: work.take(data[axle]?.[spring]?.['free-length'], axle, spring, 'free-length'),
      ride: work.take(corner?.[when]?.['spring-length'], 'corners', id, when, 'spring-length'),
      motion: work.take(data[axle]?.motion, axle, 'motion'),
      bump: work.take(corner?.[when]?.bump, 'corners', id, when, 'bump'),
    });
    examineSpringLoad(id, { rates: was, ...standing('was', 'was') }, { rates: now, ...standing(state, at) }, work);
  }
  const take = (name: 'closed' | 'open' | 'at-bump' | 'at-droop') =>
    work.take(data[axle]?.damper?.[name], axle, 'damper', name);
  work.compare('suspension.damper-stroke', `${axle}-bump`, difference(take('at-bump'), take('closed')));
  work.compare('suspension.damper-stroke', `${axle}-droop`, difference(take('open'), take('at-droop')));
}
