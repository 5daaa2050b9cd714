import { brakeFade } from '../../../calc/brakes/fade.js';
import { meanDeceleration } from '../../../calc/brakes/test-run.js';
import { isMissing, type Maybe, type Missing, type Work } from '../../engine/work.js';
import { difference } from '../parts/maybe.js';
import type { BrakeTest, Stop } from '../test-fields.js';
import { stopConditions, unmetByStop } from './stop-conditions.js';

/** The item that holds the deceleration of each stop of a test. */
const deceleration: Readonly<Record<string, string>> = {
  'pre-test': 'brakes.pretest-average',
  service: 'brakes.service-deceleration',
  'circuit-failed-laden': 'brakes.half-system-laden',
  'circuit-failed-light': 'brakes.half-system-light',
  'proportioning-failed': 'brakes.proportioning-failed',
  'antilock-failed': 'brakes.antilock-failed',
  'high-speed': 'brakes.high-speed',
};
const single = {
  'plate-front-off': 'brakes.plate-front-off',
  'plate-rear-off': 'brakes.plate-rear-off',
  'plate-booster-off': 'brakes.plate-booster-off',
  'surface-friction': 'brakes.surface-friction',
  'test-mass': 'brakes.test-mass',
} as const;
/** New South Wales: a split system counts the best of up to so many tries for each failure; another system every one of ten stops. */
const tries = 4;
const runs = 10;

const madeNow = (test: BrakeTest) => (test.stops ?? []).filter((s) => s.state !== 'was');

export function examineBrakeTest(test: BrakeTest, work: Work): void {
  conditions(test, work);
  const stops = madeNow(test).map(
    (stop): Made => ({ ...stop, value: average(stop, work), invalid: unmetByStop(stop, test, work) }),
  );
  for (const [name, item] of Object.entries(deceleration)) {
    const made = stops.filter((s) => s.test === name);
    const counted = test['split-system'] === 'yes' && name.startsWith('circuit-failed') ? bestTries(made) : made;
    compareStops(item, name, counted, work);
    if (name.startsWith('circuit-failed') && test['split-system'] === 'no') enough(item, made.length, work);
  }
  const failed = stops.filter((s) => s.test === 'circuit-failed-laden');
  compareStops('brakes.secondary-deceleration', 'circuit-failed-laden', failed, work);
  fade(
    stops.filter((s) => s.test === 'fade'),
    work,
  );
  pretestPeak(stops, work);
  for (const way of ['up', 'down'] as const)
    work.compare('brakes.parking', way, work.take(test[`parking-${way}`], 'brakes', `parking-${way}`));
}

/** What the stops rest on is compared before them. */
function conditions(test: BrakeTest, work: Work): void {
  work.publish(
    'unoccupied_seats',
    difference(work.fact('seats'), work.take(test['seats-occupied'], 'brakes', 'seats-occupied')),
  );
  for (const [field, item] of Object.entries(single) as [keyof typeof single, string][])
    work.compare(item, '', work.take(test[field], 'brakes', field));
  const [pretest, others] = [true, false].map((is) => madeNow(test).filter((s) => (s.test === 'pre-test') === is));
  pedalForces('brakes.pretest-pedal', 'pre-test', pretest!, work);
  greatestForce(others!, work);
}

const forceOf = (stop: Stop, work: Work) => work.take(stop['pedal-force'], 'brakes', 'stops', stop.id, 'pedal-force');

function pedalForces(item: string, name: string, stops: readonly Stop[], work: Work): void {
  if (stops.length === 0) work.compare(item, '', lacking(name));
  for (const stop of stops) work.compare(item, stop.id, forceOf(stop, work));
}

/** The greatest pedal force stands for all stops; each that is beyond the figure is told, down to one that is not. */
function greatestForce(stops: readonly Stop[], work: Work): void {
  const item = 'brakes.pedal-force';
  const stated = stops
    .flatMap((stop) =>
      stop['pedal-force'] ? [{ id: stop.id, force: forceOf(stop, work), of: stop['pedal-force'] }] : [],
    )
    .sort((a, b) => b.of.quantity.si - a.of.quantity.si);
  if (stated.length === 0) work.compare(item, '', lacking('service'));
  for (const { id, force } of stated) {
    work.compare(item, id, force);
    if (work.cameOut(item, id) !== 'against') return;
  }
}

interface Made extends Stop {
  value: Maybe;
  /** Why it does not count. */
  invalid: readonly string[];
}

/** What to record where a test was not made. */
const lacking = (name: string): Missing => ({
  missing: [
    {
      says: `a stop of the test \`${name}\``,
      where: 'brakes.stops',
      how: `record it with \`test: ${name}\``,
      path: ['brakes', 'stops'],
    },
  ],
});

function compareStops(item: string, name: string, stops: readonly Made[], work: Work): void {
  if (stops.length === 0) work.compare(item, '', lacking(name));
  for (const { id, value, invalid } of stops) work.compare(item, id, value, { invalid });
}

/** Of the tries with each failure the best of those that count. */
function bestTries(stops: readonly Made[]): Made[] {
  const failures = [...new Set(stops.map((s) => s.failure))];
  return failures.map((failure) => {
    const tried = stops.filter((s) => s.failure === failure).slice(0, tries);
    const valid = tried.filter((s) => s.invalid.length === 0);
    return (valid.length > 0 ? valid : tried).reduce((best, one) =>
      isMissing(best.value) || (!isMissing(one.value) && one.value.si > best.value.si) ? one : best,
    );
  });
}

/** The last of the repeated stops against the first, which is made cold. */
function fade(stops: readonly Made[], work: Work): void {
  const [cold, hot] = [stops[0], stops.at(-1)];
  if (!cold || !hot || cold === hot)
    return work.compare('brakes.fade', '', {
      missing: [
        {
          says: 'repeated stops, the first one cold',
          where: 'brakes.stops',
          how: 'record each with `test: fade`, in the order in which they were made',
          path: ['brakes', 'stops'],
        },
      ],
    });
  const { get } = work.sheet(brakeFade, '', { cold: cold.value, hot: hot.value });
  const [first, last] = [cold['pedal-force'], hot['pedal-force']].map((f) => f?.quantity.si);
  const [from, again] = [cold.speed, hot.speed].map((v) => v?.quantity.si);
  const within = 1 + stopConditions.within.figure;
  const ofBoth = [cold, hot].flatMap(({ id, invalid }) => invalid.map((reason) => `stop ${id}: ${reason}`));
  work.compare('brakes.fade', '', get('share'), {
    invalid: [
      ...ofBoth,
      ...(first !== undefined && last !== undefined && last > first * within
        ? [`stop ${hot.id} was made with more pedal force than stop ${cold.id}`]
        : []),
      ...(from !== undefined && again !== undefined && again < from / within
        ? [`stop ${hot.id} was made from a lower speed than stop ${cold.id}`]
        : []),
    ],
  });
}

/** As the instrument gave it, or reckoned from distances at 80 % and 10 % of the speed. */
function average(stop: Stop, work: Work): Maybe {
  const take = (name: 'speed' | 'deceleration' | 'to-high' | 'to-low') =>
    work.take(stop[name], 'brakes', 'stops', stop.id, name);
  if (stop.deceleration || (!stop['to-high'] && !stop['to-low'])) return take('deceleration');
  return work
    .sheet(meanDeceleration, stop.id, { speed: take('speed'), toHigh: take('to-high'), toLow: take('to-low') })
    .get('deceleration');
}

function enough(item: string, made: number, work: Work): void {
  if (work.build.data.vehicle.registration === 'NSW' && made > 0 && made < runs)
    work.state(item, 'stops', 'missing', `${made} stop(s); a system that is not split makes ${runs}`, {
      todo: `make the other ${runs - made}, each of them is held against the figure`,
      path: ['brakes', 'stops'],
    });
}

function pretestPeak(all: readonly Made[], work: Work): void {
  const item = 'brakes.pretest-peak';
  const stops = all.filter((s) => s.test === 'pre-test');
  if (stops.length === 0) work.compare(item, '', lacking('pre-test'));
  for (const { id, peak, invalid } of stops)
    work.compare(item, id, work.take(peak, 'brakes', 'stops', id, 'peak'), { invalid });
}

/** Stops of this note that no figure and no other stop is held against. */
export function recordedOnly(test: BrakeTest | undefined): string | undefined {
  const idle = (test?.stops ?? []).filter((s) => s.state === 'was' || s.test === undefined || s.test === 'other');
  if (idle.length === 0) return undefined;
  return `recorded only, compared with nothing: stop ${idle.map((s) => s.id).join(', ')}`;
}

/** Whether the car pulled in the pre-test. */
export function pulled(test: BrakeTest | undefined) {
  const stops = test ? madeNow(test).filter((s) => s.test === 'pre-test') : [];
  const to = stops.filter((s) => s.pulled === 'yes').map((s) => s.id);
  if (to.length > 0) return { answer: 'yes', because: to.join(', ') };
  return stops.length > 0 && stops.every((s) => s.pulled) ? { answer: 'no' } : undefined;
}

/** The speeds of the tests, as read from the instruments. */
export function testSpeeds(test: BrakeTest | undefined) {
  const stops = test ? madeNow(test) : [];
  return stops.length > 0 && stops.every((s) => s.speed)
    ? { answer: stops.map((s) => `${s.test ?? 'stop'} ${s.id}: ${s.speed!.quantity.text}`).join('; ') }
    : undefined;
}
