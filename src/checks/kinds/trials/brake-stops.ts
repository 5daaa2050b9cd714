import type { z } from 'zod';
import { meanDeceleration } from '../../../calc/brakes/test-run.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import { difference } from '../parts/maybe.js';
import type { shape } from '../test-fields.js';

export type BrakeTest = NonNullable<z.output<typeof shape.brakes>>;
type Stop = NonNullable<BrakeTest['stops']>[number];

/** The item that holds the deceleration of each stop of a test. */
const deceleration: Readonly<Record<string, string>> = {
  'pre-test': 'brakes.pretest-average',
  service: 'brakes.service-deceleration',
  'circuit-failed-laden': 'brakes.half-system-laden',
  'circuit-failed-light': 'brakes.half-system-light',
  'proportioning-failed': 'brakes.proportioning-failed',
  'antilock-failed': 'brakes.antilock-failed',
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
  const stops = madeNow(test).map((stop) => ({ ...stop, subject: stop.id, value: average(stop, work) }));
  for (const [name, item] of Object.entries(deceleration)) {
    const made = stops.filter((s) => s.test === name);
    const counted = test['split-system'] === 'yes' && name.startsWith('circuit-failed') ? bestTries(made) : made;
    compareStops(item, counted, work);
    if (name.startsWith('circuit-failed') && test['split-system'] === 'no') enough(item, made.length, work);
  }
  compareStops(
    'brakes.secondary-deceleration',
    stops.filter((s) => s.test === 'circuit-failed-laden'),
    work,
  );
  pretest(stops, work);
  work.publish(
    'unoccupied_seats',
    difference(work.fact('seats'), work.take(test['seats-occupied'], 'brakes', 'seats-occupied')),
  );
  for (const [field, item] of Object.entries(single) as [keyof typeof single, string][])
    work.compare(item, '', work.take(test[field], 'brakes', field));
  for (const way of ['up', 'down'] as const)
    work.compare('brakes.parking', way, work.take(test[`parking-${way}`], 'brakes', `parking-${way}`));
}

type Made = Stop & { subject: string; value: Maybe };

function compareStops(item: string, stops: readonly Made[], work: Work): void {
  if (stops.length === 0) work.compare(item, '', work.lacks('brakes', 'stops'));
  for (const { subject, value } of stops) work.compare(item, subject, value);
}

function bestTries(stops: readonly Made[]): Made[] {
  const failures = [...new Set(stops.map((s) => s.failure))];
  return failures.map((failure) => {
    const tried = stops.filter((s) => s.failure === failure).slice(0, tries);
    return tried.reduce((best, one) =>
      isMissing(best.value) || (!isMissing(one.value) && one.value.si > best.value.si) ? one : best,
    );
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

function pretest(all: readonly Stop[], work: Work): void {
  const stops = all.filter((s) => s.test === 'pre-test');
  for (const [field, item] of [
    ['pedal-force', 'brakes.pretest-pedal'],
    ['peak', 'brakes.pretest-peak'],
  ] as const) {
    if (stops.length === 0) work.compare(item, '', work.lacks('brakes', 'stops'));
    for (const stop of stops) work.compare(item, stop.id, work.take(stop[field], 'brakes', 'stops', stop.id, field));
  }
}

/** Whether the car pulled in the pre-test. */
export function pulled(test: BrakeTest | undefined) {
  const stops = test ? madeNow(test).filter((s) => s.test === 'pre-test') : [];
  if (stops.length === 0 || stops.some((s) => !s.pulled)) return undefined;
  const to = stops.filter((s) => s.pulled === 'yes').map((s) => s.id);
  return to.length > 0 ? { answer: 'yes', because: to.join(', ') } : { answer: 'no' };
}

/** The speeds of the tests, as read from the instruments. */
export function testSpeeds(test: BrakeTest | undefined) {
  const stops = test ? madeNow(test) : [];
  return stops.length > 0 && stops.every((s) => s.speed)
    ? { answer: stops.map((s) => `${s.test ?? 'stop'} ${s.id}: ${s.speed!.quantity.text}`).join('; ') }
    : undefined;
}
