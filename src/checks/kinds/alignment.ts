import { axleToe } from '../../calc/suspension/axle-toe.js';
import { toeChange } from '../../calc/suspension/toe-change.js';
import { kind } from '../engine/kind.js';
import type { Maybe, Work } from '../engine/work.js';
import { type Alignment, shape } from './alignment-fields.js';
import { hasNote } from './parts/against.js';
import { makerLimit } from './parts/maker-window.js';
import { magnitude } from './parts/maybe.js';
import { examineStops, quietAnswers, stopStates } from './parts/stop.js';

const axles = ['front', 'rear'] as const;
const sides = ['left', 'right'] as const;
type Axle = (typeof axles)[number];
type State = 'was' | 'planned' | 'now';
type Angle = 'toe' | 'camber' | 'caster';

/** Toe, camber and caster before and after, and toe through travel. */
export const alignment = kind({
  id: 'alignment',
  title: 'Alignment',
  covers:
    'Toe, camber and caster of each wheel before and after, the direction of the rear axle, and the change of toe through travel, with the gauge and its check.',
  shape,
  holdPoints: [
    {
      id: 'alignment-as-received',
      shows: 'Alignment as it came, with ride heights and load',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'bump-steer-measured',
      shows: 'Wheel at droop, ride height and bump with the gauge for toe in place, springs out',
      level: 'witness',
      during: 'assembled',
      before: 'tested',
      parts: ['droop', 'ride-height', 'bump'],
    },
    {
      id: 'alignment-after',
      shows: 'Steering wheel centred and lock nuts tightened and marked, after the work',
      level: 'record',
      during: 'tested',
      before: 'finished',
      parts: ['steering-wheel', 'lock-nuts'],
    },
  ],
  cautions: ['stands', 'steering', 'springs'],
  answers: (d) => ({
    ...quietAnswers(d),
    'alignment.before': asItCame(d),
    'alignment.printout':
      d['load-state'] && whole(d) ? { answer: `four wheels, ${d['load-state']}`, shown: 'note' } : undefined,
    'alignment.equipment':
      d.equipment && d['equipment-checked'] && d['equipment-check']
        ? {
            answer: `${d.equipment}, checked on ${d['equipment-checked']}: ${d['equipment-check']}`,
            shown: 'note',
          }
        : undefined,
  }),
  states: stopStates,
  evaluate: ({ data }, work) => {
    for (const axle of axles) examineAxle(axle, data, work);
    examineBumpSteer(data, work);
    if (data['joint-play'] || !hasNote(work, 'steering'))
      work.compare('steering.free-play', '', work.take(data['joint-play'], 'joint-play'));
    examineStops(data, work);
  },
});

const wheelOf = (data: Alignment, id: string) => data.wheels?.find((w) => w.id === id);
const ids = axles.flatMap((axle) => sides.map((side) => `${axle}-${side}`));
const stateOf = (data: Alignment, id: string): State =>
  wheelOf(data, id)?.now || !wheelOf(data, id)?.planned ? 'now' : 'planned';

/** Toe of both wheels together, camber and caster of each, against the maker's windows; of the rear axle, its direction. */
function examineAxle(axle: Axle, data: Alignment, work: Work): void {
  const at = (side: string, angle: Angle): Maybe => {
    const id = `${axle}-${side}`;
    const state = stateOf(data, id);
    return work.take(wheelOf(data, id)?.[state]?.[angle], 'wheels', id, state, angle);
  };
  const window = (angle: 'toe' | 'camber') => makerLimit(data.maker?.[axle]?.[angle], 'deg');
  const toe = work.sheet(axleToe, axle, { left: at('left', 'toe'), right: at('right', 'toe') });
  work.compare('alignment.toe', axle, toe.get('total'), { limit: window('toe') });
  if (axle === 'rear') {
    const [read, follows] = [magnitude(work.take(data.thrust, 'thrust')), toe.get('turned')];
    work.agree('thrust', { says: 'direction of the rear axle', unit: 'deg' }, read, follows);
    const thrust = data.thrust ? read : follows;
    work.compare('alignment.thrust', '', thrust, { limit: makerLimit(data['maker-thrust'], 'deg') });
  }
  for (const side of sides) {
    work.compare('alignment.camber', `${axle}-${side}`, at(side, 'camber'), { limit: window('camber') });
    if (axle === 'front')
      work.compare('alignment.caster', `${axle}-${side}`, at(side, 'caster'), {
        limit: makerLimit(data.maker?.front?.caster, 'deg'),
      });
  }
}

function examineBumpSteer(data: Alignment, work: Work): void {
  const wheels = data['bump-steer'] ?? [];
  if (wheels.length === 0) work.compare('alignment.bump-steer', '', work.lacks('bump-steer'));
  for (const { id, stations = [], maker } of wheels) {
    const rows = stations.map((s) => ({
      travel: work.take(s.travel, 'bump-steer', id, 'stations', s.id, 'travel'),
      toe: work.take(s.toe, 'bump-steer', id, 'stations', s.id, 'toe'),
    }));
    const change =
      rows.length === 0
        ? work.lacks('bump-steer', id, 'stations')
        : work.sheet(toeChange, id, { stations: rows }).get('change');
    work.compare('alignment.bump-steer', id, change, { limit: makerLimit(maker, 'deg') });
  }
}

/** Every wheel with toe and camber, at a ride height that is stated. */
function whole(data: Alignment): boolean {
  return ids.every((id) => {
    const wheel = wheelOf(data, id)?.now;
    return wheel?.toe !== undefined && wheel.camber !== undefined && wheel.height !== undefined;
  });
}

function asItCame(data: Alignment) {
  if (data['not-taken-before']) return { answer: `not taken: ${data['not-taken-before']}` };
  const taken = ids.flatMap((id) => {
    const was = wheelOf(data, id)?.was;
    const angles = [was?.toe, was?.camber, was?.caster].flatMap((a) => (a ? [a.quantity.text] : []));
    return angles.length > 0 ? [`${id.replace('-', ' ')}: ${angles.join(', ')}`] : [];
  });
  return taken.length > 0 ? { answer: taken.join('; ') } : undefined;
}
