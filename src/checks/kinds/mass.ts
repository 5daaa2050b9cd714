import { axleMasses, cornerMasses } from '../../calc/mass/centre.js';
import { centreOfMassHeight } from '../../calc/mass/height.js';
import { axleLoadChange, axleLoads, massAdded } from '../../calc/mass/loads.js';
import { ladenMass, unladenMass } from '../../calc/mass/states.js';
import { expanded } from '../../calc/value.js';
import { yesNo } from '../../project/fields.js';
import { exactBound, type Limit } from '../codes/limit.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { shape as fields } from './mass-fields.js';
import { difference, sum } from './parts/maybe.js';

const shape = {
  ...fields,
  'centre-of-mass-moved': yesNo(
    'has the centre of mass moved so much, in height or lengthwise, that the certifier asks for a lane change',
  ),
};
type Mass = Data<typeof shape>;
type State = 'was' | 'now' | 'laden';
interface Axles {
  front: Maybe;
  rear: Maybe;
  total: Maybe;
}

/** Weighings before and after the work. */
export const mass = kind({
  id: 'mass',
  title: 'Mass',
  covers:
    'Weighings by axle or wheel as received, as built and laden; centre of mass along, across and in height; loads against the ratings of axles and the gross vehicle mass.',
  shape,
  holdPoints: [
    {
      id: 'weighed-as-received',
      shows: 'Scales or weighbridge display with the car on it as it came',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'weighed-as-built',
      shows: 'Weighbridge ticket, or scales under each wheel with their displays, car finished',
      level: 'record',
      during: 'tested',
      before: 'finished',
      parts: ['front-left', 'front-right', 'rear-left', 'rear-right'],
      serves: 'mass.ticket',
    },
  ],
  cautions: ['stands', 'lifting'],
  reckons: [
    'mass_front',
    'mass_rear',
    'original_mass_front',
    'original_mass_rear',
    'laden_mass_front',
    'laden_mass_rear',
    'cg_height',
    'original_cg_height',
    'unladen_mass',
  ],
  facts: (d) => ({
    mass_front: d.now?.front,
    mass_rear: d.now?.rear,
    original_mass_front: d.was?.front,
    original_mass_rear: d.was?.rear,
    laden_mass_front: d.laden?.front,
    laden_mass_rear: d.laden?.rear,
    cg_height: d['cg-height'],
    oil_coolant_mass: d['oil-coolant'],
    full_fuel_mass: d['full-fuel'],
  }),
  answers: (d) => ({
    'mass.cg-moved': d['centre-of-mass-moved'] && {
      answer: d['centre-of-mass-moved'],
      from: ['centre-of-mass-moved'],
    },
    'mass.state-of-load':
      d.was?.load && d.now?.load ? { answer: `before: ${d.was.load}; after: ${d.now.load}` } : undefined,
    'mass.as-received':
      d.was && (d.was.front ?? d.was['front-left']) ? { answer: 'weighed', shown: 'note' } : undefined,
    'mass.scales-checked': d['scales-checked'] ? { answer: d['scales-checked'], shown: 'note' } : undefined,
  }),
  states: (d) => ({ 'centre-of-mass-moved': d['centre-of-mass-moved'] }),
  evaluate: ({ data }, work) => {
    const was = weigh('was', data, work);
    const now = weigh('now', data, work);
    publishAxles('', data.now, now, work);
    publishAxles('original_', data.was, was, work);
    const wheelbase = work.fact('wheelbase');
    if (data.was && data.now)
      work.sheet(axleLoadChange, '', {
        frontBefore: was.front,
        rearBefore: was.rear,
        frontAfter: now.front,
        rearAfter: now.rear,
        wheelbase,
      });
    if (data.parts)
      work.sheet(massAdded, 'planned', {
        front: was.front,
        rear: was.rear,
        wheelbase,
        parts: placed('parts', data, work),
      });
    for (const height of heights('was', was, data, work)) work.publish('original_cg_height', height);
    for (const height of heights('now', now, data, work)) work.publish('cg_height', height);
    work.publish('unladen_mass', unladen(now, data, work));
    const full = laden(now, data, work);
    publishAxles('laden_', data.laden, full, work);
    againstRatings(full, data, work);
  },
});

/** An axle that was weighed is stated by its field; what is summed up or reckoned is published. */
function publishAxles(
  state: '' | 'original_' | 'laden_',
  read: { front?: unknown; rear?: unknown } | undefined,
  loads: Axles,
  work: Work,
): void {
  for (const axle of ['front', 'rear'] as const) if (!read?.[axle]) work.publish(`${state}mass_${axle}`, loads[axle]);
}

/** Axle loads as read, or summed up from the wheels, with the place of the centre of mass. */
function weigh(state: State, data: Mass, work: Work): Axles {
  const read = data[state];
  const take = (name: 'front' | 'rear' | 'front-left' | 'front-right' | 'rear-left' | 'rear-right') =>
    work.take(read?.[name], state, name);
  const wheelbase = work.fact('wheelbase');
  for (const axle of ['front', 'rear'] as const)
    if (read?.[axle])
      work.agree(
        `${state}-${axle}`,
        { says: `mass on the ${axle} axle`, unit: 'kg' },
        take(axle),
        sum(take(`${axle}-left`), take(`${axle}-right`)),
      );
  if (
    !read?.front &&
    !read?.rear &&
    (read?.['front-left'] ?? read?.['front-right'] ?? read?.['rear-left'] ?? read?.['rear-right'])
  ) {
    const { get } = work.sheet(cornerMasses, state, {
      frontLeft: take('front-left'),
      frontRight: take('front-right'),
      rearLeft: take('rear-left'),
      rearRight: take('rear-right'),
      wheelbase,
      trackFront: track('front', state, work),
      trackRear: track('rear', state, work),
    });
    return { front: get('front'), rear: get('rear'), total: get('total') };
  }
  const [front, rear] = [take('front'), take('rear')];
  return { front, rear, total: work.sheet(axleMasses, state, { front, rear, wheelbase }).get('total') };
}

/** The track in that state; the original one where no note states another. */
function track(axle: 'front' | 'rear', state: State, work: Work): Maybe {
  const original = work.fact(`track_${axle}`, 'as-received');
  if (state === 'was') return original;
  const now = work.fact(`track_${axle}`);
  return isMissing(now) && !isMissing(original) ? original : now;
}

/** Height of the centre of mass at each raise, the one that is known best last; that they agree is checked with all facts. */
function heights(state: 'was' | 'now', level: Axles, data: Mass, work: Work): Maybe[] {
  const found = (data[state]?.raises ?? []).map((one) =>
    work
      .sheet(centreOfMassHeight, `${state}-${one.id}`, {
        mass: level.total,
        rearLevel: level.rear,
        frontLevel: level.front,
        frontRaised: work.take(one.front, state, 'raises', one.id, 'front'),
        wheelbase: work.fact('wheelbase'),
        raise: work.take(one.raise, state, 'raises', one.id, 'raise'),
        radiusFront: work.take(data['wheel-centre-front'], 'wheel-centre-front'),
        radiusRear: work.take(data['wheel-centre-rear'], 'wheel-centre-rear'),
      })
      .get('height'),
  );
  const vague = (one: Maybe) => (isMissing(one) ? Number.POSITIVE_INFINITY : expanded(one));
  return found.toSorted((a, b) => vague(b) - vague(a));
}

const inIt = (data: Mass, work: Work) => ({
  fuel: work.take(data.now?.fuel, 'now', 'fuel'),
  ...(data.now?.persons ? { persons: work.take(data.now.persons, 'now', 'persons') } : {}),
});

function unladen(now: Axles, data: Mass, work: Work): Maybe {
  return work
    .sheet(unladenMass, '', {
      weighed: now.total,
      ...inIt(data, work),
      fluids: work.take(data['oil-coolant'], 'oil-coolant'),
    })
    .get('unladen');
}

/** The laden car as weighed, else reckoned from the weighing as built. */
function laden(now: Axles, data: Mass, work: Work): Axles {
  if (data.laden) return weigh('laden', data, work);
  const total = work
    .sheet(ladenMass, '', {
      weighed: now.total,
      ...inIt(data, work),
      fullFuel: work.take(data['full-fuel'], 'full-fuel'),
      seats: work.fact('seats'),
      ...(data.luggage ? { luggage: work.take(data.luggage, 'luggage') } : {}),
    })
    .get('laden');
  if (!data.places) return { front: work.lacks('laden', 'front'), rear: work.lacks('laden', 'rear'), total };
  const { get } = work.sheet(massAdded, 'laden', {
    front: now.front,
    rear: now.rear,
    wheelbase: work.fact('wheelbase'),
    parts: [...placed('places', data, work), ...fuelAdded(data, work)],
  });
  const loads = { front: get('frontAfter'), rear: get('rearAfter') };
  work.agree('laden', { says: 'laden mass by seats and by places', unit: 'kg' }, total, sum(loads.front, loads.rear));
  return { ...loads, total };
}

/** What the tank takes from the weighing to full, at its place; nothing where it was full. */
function fuelAdded(data: Mass, work: Work) {
  const added = difference(work.take(data['full-fuel'], 'full-fuel'), work.take(data.now?.fuel, 'now', 'fuel'));
  return !isMissing(added) && added.si === 0
    ? []
    : [{ mass: added, place: work.take(data['fuel-place'], 'fuel-place') }];
}

const placed = (name: 'parts' | 'places', data: Mass, work: Work) =>
  (data[name] ?? []).map((one) => ({
    mass: work.take(one.mass, name, one.id, 'mass'),
    place: work.take(one.place, name, one.id, 'place'),
  }));

/** What was counted for the seats, and by which rule. */
const seatRule = (data: Mass): string =>
  data.laden
    ? `laden as weighed: ${data.laden.load ?? 'with what is not stated'}`
    : '68 kg counted for each seat, as the guide MR810 of South Australia does';

function againstRatings(loads: Axles, data: Mass, work: Work): void {
  work.compare('mass.laden', '', loads.total, { marks: [seatRule(data)] });
  for (const axle of ['front', 'rear'] as const) {
    const rating = data.ratings?.[axle];
    const from = data.ratings?.from;
    const limit: Limit | undefined =
      rating && from ? { max: exactBound(rating.quantity.si), unit: 'kg', document: from, basis: 'maker' } : undefined;
    work.compare(`mass.axle-${axle}`, '', loads[axle], {
      limit,
      ...(rating && !from ? { todo: 'state under `ratings: { from: … }` where the rating stands' } : {}),
    });
    const [left, right] = [data.laden?.[`${axle}-left`], data.laden?.[`${axle}-right`]];
    if (!left || !right) continue;
    work.sheet(axleLoads, axle, {
      left: work.take(left, 'laden', `${axle}-left`),
      right: work.take(right, 'laden', `${axle}-right`),
      axleRating: work.take(rating, 'ratings', axle),
      tyreRating: work.take(data.ratings?.[`${axle}-tyre`], 'ratings', `${axle}-tyre`),
    });
  }
}
