import { linkLengthChange } from '../../../calc/axle/adjust.js';
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

  const change = (name: 'lower-change' | 'upper-change') => (data[name] ? work.take(data[name], name) : undefined);
  if (data['per-turn'])
    work.sheet(linkLengthChange, '', {
      ...links,
      ...centre,
      perTurn: work.take(data['per-turn'], 'per-turn'),
      lowerChange: change('lower-change'),
      upperChange: change('upper-change'),
    });
  const joint = (name: 'gearbox-joint' | 'pinion-joint', axis: 'forward' | 'height') =>
    work.take(data[name]?.[axis], name, axis);
  if (!data['gearbox-joint'] && !data['pinion-joint']) return;
  work.sheet(shaftTravel, '', {
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
