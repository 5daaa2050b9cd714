import { shaftTravel } from '../../../calc/axle/shaft-travel.js';
import { axleSideView } from '../../../calc/axle/side-view.js';
import { axleTravel } from '../../../calc/axle/travel.js';
import type { Value } from '../../../calc/value.js';
import { expanded } from '../../../calc/value.js';
import { showQuantity } from '../../../units/show.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import type { RearAxle } from '../rear-axle-fields.js';
import { tellMissing } from './tell-missing.js';

/** The axle on its links in side view: instant centre, pinion and path through travel, and what the adjusters do. */
export function examineSideView(data: RearAxle, pinion: Maybe, work: Work): void {
  const at = (arm: 'lower' | 'upper', end: 'axle' | 'body', axis: 'forward' | 'height') =>
    work.take(data[arm]?.[end]?.[axis], arm, end, axis);
  const links = {
    lowerAxleX: at('lower', 'axle', 'forward'),
    lowerAxleZ: at('lower', 'axle', 'height'),
    lowerBodyX: at('lower', 'body', 'forward'),
    lowerBodyZ: at('lower', 'body', 'height'),
    upperAxleX: at('upper', 'axle', 'forward'),
    upperAxleZ: at('upper', 'axle', 'height'),
    upperBodyX: at('upper', 'body', 'forward'),
    upperBodyZ: at('upper', 'body', 'height'),
  };
  const centre = { centreZ: work.take(data['centre-height'], 'centre-height') };
  const travel = { bump: work.take(data.bump, 'bump'), droop: work.take(data.droop, 'droop') };
  work.sheet(axleSideView, '', { ...links, wheelbase: work.fact('wheelbase'), massHeight: work.fact('cg_height') });
  tellPath(work.sheet(axleTravel, '', { ...links, ...centre, ...travel, pinionSlope: pinion }), work);

  const joint = (name: 'gearbox-joint' | 'pinion-joint', axis: 'forward' | 'height') =>
    work.take(data[name]?.[axis], name, axis);
  if (!data['gearbox-joint'] && !data['pinion-joint']) return;
  const { get } = work.sheet(shaftTravel, '', {
    ...links,
    ...centre,
    ...travel,
    frontX: joint('gearbox-joint', 'forward'),
    frontZ: joint('gearbox-joint', 'height'),
    rearX: joint('pinion-joint', 'forward'),
    rearZ: joint('pinion-joint', 'height'),
    gearboxSlope: work.take(data.gearbox, 'gearbox'),
    pinionSlope: pinion,
  });
  // A note on the driveline has its angles measured, with the figure of the joints' maker.
  if (!work.hasNote('driveline')) examineLargest(get, work);
}

const angles = {
  joint1Ride: 'at ride height, joint at the gearbox',
  joint1Bump: 'at full bump, joint at the gearbox',
  joint1Droop: 'at full droop, joint at the gearbox',
  joint2Ride: 'at ride height, joint at the pinion',
  joint2Bump: 'at full bump, joint at the pinion',
  joint2Droop: 'at full droop, joint at the pinion',
} as const;
type Angle = keyof typeof angles;

/** The largest angle of both joints of the shaft through travel. */
function examineLargest(get: (result: Angle) => Maybe, work: Work): void {
  const item = 'driveline.angle-largest';
  const found = (Object.keys(angles) as Angle[]).map((name) => ({ name, angle: get(name) }));
  const lacking = found.map(({ angle }) => angle).find(isMissing);
  if (lacking) return work.compare(item, '', lacking);
  const reach = (angle: Maybe) => (isMissing(angle) ? 0 : angle.si + expanded(angle));
  const { name, angle } = found.reduce((most, one) => (reach(one.angle) > reach(most.angle) ? one : most));
  work.compare(item, '', angle, { marks: [`largest ${angles[name]}`] });
}

/** The slope of the pinion is recorded: the angles of the joints decide what it has to be. */
export function tellPinion(pinion: Maybe, state: 'now' | 'planned', work: Work): void {
  if (isMissing(pinion)) return tellMissing('driveline.pinion', 'ride', pinion, work);
  const says = `pinion ${slopeOf(pinion)} at ride height${state === 'planned' ? ', as planned' : ''}; recorded, not judged`;
  work.state('driveline.pinion', 'ride', 'met', says, { answer: 'measured', path: [state, 'pinion'] });
}

const slopeOf = (v: Value) => `${showQuantity(Math.abs(v.si), 'deg', expanded(v))} nose ${v.si < 0 ? 'down' : 'up'}`;

function tellPath(
  { get }: { get: (result: 'bumpPinion' | 'droopPinion' | 'bumpShift' | 'droopShift') => Maybe },
  work: Work,
): void {
  const results = {
    bumpPinion: get('bumpPinion'),
    droopPinion: get('droopPinion'),
    bumpShift: get('bumpShift'),
    droopShift: get('droopShift'),
  };
  const lacking = Object.values(results).find(isMissing);
  if (lacking) return tellMissing('axle.path', '', lacking, work);
  const { bumpPinion, droopPinion, bumpShift, droopShift } = results as Record<keyof typeof results, Value>;
  const shift = (v: Value) =>
    `${showQuantity(Math.abs(v.si), 'mm', expanded(v))} to the ${v.si < 0 ? 'rear' : 'front'}`;
  const run = bumpPinion.origin.kind === 'sheet' ? bumpPinion.origin.run : undefined;
  work.state(
    'axle.path',
    '',
    'met',
    `pinion ${slopeOf(bumpPinion)} at full bump and ${slopeOf(droopPinion)} at full droop; axle ${shift(bumpShift)} and ${shift(droopShift)}; recorded, not judged`,
    { run, answer: 'reckoned' },
  );
}
