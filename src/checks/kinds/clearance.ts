import { z } from 'zod';
import { choice, list, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { hasNote } from './parts/against.js';
import { clearanceNow, examineGroundClearance } from './parts/ground-clearance.js';
import { difference } from './parts/maybe.js';

const positions = ['droop', 'ride', 'bump'] as const;
const steerings = ['straight', 'left-lock', 'right-lock'] as const;
const how = 'feeler, stepped gauge or plasticine pressed in the gap; the least along the whole part, twice';

const gapsAt = (steered: string) =>
  z
    .strictObject({
      droop: quantity('mm', `gap at full droop, ${steered}`, {
        places: 'smallest',
        measuredAs: 'rule',
        how,
        typical: '34 mm',
        usual: [4, 250],
      }),
      ride: quantity('mm', `gap at ride height, ${steered}`, {
        places: 'smallest',
        measuredAs: 'rule',
        how,
        typical: '38 mm',
        usual: [4, 250],
      }),
      bump: quantity('mm', `gap at full bump, ${steered}`, {
        places: 'smallest',
        measuredAs: 'rule',
        how,
        typical: '27 mm',
        usual: [4, 250],
      }),
    })
    .optional()
    .meta({ form: 'block', says: `gaps with the wheels ${steered}` });

const shape = {
  places: list(
    {
      place: text('where it is', 'left front tyre at the inner guard, ahead of the strut').meta({
        recordedFor: 'whoever looks for the place on the car',
      }),
      moves: choice(
        {
          tyre: 'a tyre or rim',
          member: 'a suspension or steering member, or the shaft',
          engine: 'engine, gearbox or exhaust',
          line: 'a brake pipe or hose at a wheel',
        },
        'what moves',
      ),
      near: text('what it comes near to', 'seam of the inner guard').meta({
        recordedFor: 'whoever looks for the place on the car',
      }),
      was: quantity('mm', 'the least gap there as it came', {
        places: 'smallest',
        measuredAs: 'rule',
        how,
        typical: '40 mm',
        usual: [4.2, 250],
      }).meta({ recordedFor: 'the certifier, who sees what the work took' }),
      straight: gapsAt('straight ahead'),
      'left-lock': gapsAt('at full left lock'),
      'right-lock': gapsAt('at full right lock'),
      engine: choice(
        {
          included: 'the engine was levered towards it when the gap was taken',
          'taken-off': 'the movement of the engine is taken off the gap',
          none: 'the engine is on neither side',
        },
        'how the movement of the engine on its mounts is allowed for',
      ),
    },
    'places where something that moves comes near to something else, each an item of its own',
  ),
  tyres: text('tyres and rims with which it was swept', '205/65R15 on 6Jx15 ET25, front and rear'),
  'bump-front': quantity('mm', 'travel up from ride height in the sweep, front', {
    how: 'spring out, jack under the hub until the stop is pressed as far as it goes',
    typical: '78 mm',
  }),
  'droop-front': quantity('mm', 'travel down from ride height in the sweep, front', {
    how: 'wheel hanging on damper or strap',
    typical: '85 mm',
  }),
  'bump-rear': quantity('mm', 'travel up from ride height in the sweep, rear', {
    how: 'as at the front, both wheels together and one at a time',
    typical: '82 mm',
  }),
  'droop-rear': quantity('mm', 'travel down from ride height in the sweep, rear', {
    how: 'as at the front',
    typical: '90 mm',
  }),
  'lock-left': quantity('deg', 'lock of the left wheel outwards', {
    how: 'turn plates, or chalk lines along a straightedge on the rim',
    typical: '34 deg',
    usual: [8, 55],
  }),
  'lock-right': quantity('deg', 'lock of the right wheel outwards', {
    how: 'the same way',
    typical: '34 deg',
    usual: [8, 55],
  }),
  swept: yesNo('were the gaps taken without springs, from full droop to full bump, at both locks and in between'),
  'flat-tyre': yesNo('does nothing but the rim touch the road when a tyre is flat'),
  ground: clearanceNow,
};
type Clearance = Data<typeof shape>;
/** How far the sweep went; without these nobody can say that it was the whole of it. */
const sweep = ['bump-front', 'droop-front', 'bump-rear', 'droop-rear', 'lock-left', 'lock-right'] as const;
type Place = NonNullable<Clearance['places']>[number];

/** The sweep of wheels, steering and engine through travel and lock. */
export const clearance = kind({
  id: 'clearance',
  title: 'Clearances',
  covers:
    'The sweep of wheels, suspension, steering and engine through travel and lock without springs: where the gaps are least, what moves and what is near.',
  shape,
  holdPoints: [
    {
      id: 'gaps-as-received',
      shows: 'Gaps of tyres, links and steering as it came, with a gauge in each',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['tyres', 'links', 'steering'],
    },
    {
      id: 'sweep',
      shows:
        'Wheels swept from droop to bump and lock to lock without springs, with all parts that will be there fitted or stood in for',
      level: 'witness',
      during: 'assembled',
      before: 'finished',
      parts: ['droop', 'bump', 'left-lock', 'right-lock'],
    },
    {
      id: 'gauge-in-gap',
      shows: 'Gauge in the least gap of each place',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: (d) => (d.places ?? []).map((p) => p.id),
      serves: 'clearance.least-shown',
    },
  ],
  cautions: ['stands', 'springs', 'steering'],
  answers: (d) => ({
    'clearance.envelope':
      d.swept && (d.swept === 'no' || sweep.every((end) => d[end])) ? { answer: d.swept, from: ['swept'] } : undefined,
    'clearance.flat-tyre': d['flat-tyre'] && { answer: d['flat-tyre'], from: ['flat-tyre'] },
    'clearance.engine-movement': all(d, (p) => p.moves === 'line' || p.engine !== undefined)
      ? { answer: 'yes', from: ['places'] }
      : undefined,
    'clearance.load-state':
      d['load-state'] && d.tyres ? { answer: `${d['load-state']}; ${d.tyres}`, shown: 'note' } : undefined,
  }),
  evaluate: ({ data }, work) => {
    const places = data.places ?? [];
    for (const [moves, item] of Object.entries(items)) {
      const found = places.filter((p) => p.moves === moves);
      if (found.length === 0 && !(moves === 'line' && hasNote(work, 'brakes')))
        work.compare(item, '', work.lacks('places'));
      for (const place of found) work.compare(item, place.id, leastGap(place, work));
    }
    for (const place of places.filter((p) => p.moves === undefined))
      work.compare('clearance.members', place.id, work.lacks('places', place.id, 'moves'));
    if (data.ground || !hasNote(work, 'suspension')) examineGroundClearance('ground', data.ground, work);
  },
});

const items = {
  tyre: 'clearance.tyres',
  member: 'clearance.members',
  engine: 'clearance.engine',
  line: 'brakes.line-wheel',
} as const;
const all = (data: Clearance, holds: (place: Place) => boolean): boolean =>
  data.places !== undefined && data.places.length > 0 && data.places.every(holds);

/** The gaps of all stations, of which the least decides, less the movement of the engine where that was not in them. */
function leastGap(place: Place, work: Work): Maybe {
  const gaps = steerings.flatMap((s) =>
    positions.flatMap((at) => {
      const gap = place[s]?.[at] ? work.take(place[s][at], 'places', place.id, s, at) : undefined;
      return gap && !isMissing(gap) ? (gap.places ?? [gap]) : [];
    }),
  );
  if (gaps.length === 0) return work.lacks('places', place.id, 'straight');
  const smallest = gaps.reduce((a, b) => (b.si < a.si ? b : a));
  const least: Maybe = gaps.length > 1 ? { ...smallest, places: gaps } : smallest;
  if (place.moves === 'line' || place.engine === 'none' || place.engine === 'included') return least;
  return place.engine === 'taken-off'
    ? difference(least, work.fact('engine_movement'))
    : work.lacks('places', place.id, 'engine');
}
