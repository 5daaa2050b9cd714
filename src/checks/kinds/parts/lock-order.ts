import { expanded, spread, type Value } from '../../../calc/value.js';
import type { Note } from '../../../project/model.js';
import { showQuantity } from '../../../units/show.js';
import type { Settled } from '../../engine/work.js';
import { isMissing, type Work } from '../../engine/work.js';
import type { BrakeTest, LockOrder } from '../test-fields.js';
import { byInstruments, bySurface } from '../trials/stop-conditions.js';

const g = 9.80665;
/** Common practice: how near to the rate of a valve's knee a lock-order stop has to be. */
const nearKnee = 0.1;

export type Load = 'unladen' | 'laden';

interface Seen {
  locked: 'front' | 'rear' | 'both' | 'none' | undefined;
  /** Braking rate at which it locked, with its ends. */
  rate: { low: number; high: number };
  says: string;
  /** Why it does not count. */
  invalid: string[];
}

/** The lock-order tests of the build with the car so laden. */
export function lockOrders(load: Load, work: Work): Seen[] {
  return work.build.notes
    .filter((note) => note.kind === 'test')
    .flatMap((note) => {
      const test = note.data['brakes'] as BrakeTest | undefined;
      return (test?.['lock-order'] ?? []).filter((s) => s.load === load).map((s) => seen(s, test!, note, work));
    });
}

function seen(stop: LockOrder, test: BrakeTest, note: Note, work: Work): Seen {
  const value = work.take(stop.deceleration, 'brakes', 'lock-order', stop.id, 'deceleration');
  const known = isMissing(value) ? undefined : value;
  return {
    locked: stop.locked,
    rate: rateOf(known),
    says: `stop ${stop.id} of ${note.name}${known ? ` at ${showQuantity(known.si, 'm/s2', spread(known))}` : ''}`,
    invalid: [
      ...(stop.locked === undefined ? ['it is not stated which axle locked first'] : []),
      ...(stop.locked === 'none' ? ['no wheel locked, so it shows no order'] : []),
      ...(stop.deceleration ? byInstruments([stop.deceleration], work, note) : ['the deceleration is not stated']),
      ...(stop.shown ? [] : ['it is not stated by what it was seen']),
      ...(stop.antilock === 'works' ? ['the antilock system was at work'] : []),
      ...(stop.antilock === undefined ? ['it is not stated whether an antilock system was at work'] : []),
      ...bySurface(test, work),
    ],
  };
}

function rateOf(value: Value | undefined): Seen['rate'] {
  if (!value) return { low: Number.NaN, high: Number.NaN };
  const [z, u] = [value.si / g, expanded(value) / g];
  return { low: z - u, high: z + u };
}

/** What the tests say of a requirement that the front locks first up to a rate. */
interface Asked {
  required: number;
  /** Rate of a valve's knee, at which the rear is nearest to locking first beside the required rate. */
  knee: number | undefined;
}

/**
 * A test in which the rear locked first below the required rate is against it, whatever was calculated. One in which the front
 * locked first at that rate or beyond settles what the calculation leaves open; it makes no calculated value conform.
 */
export function settledByTest(
  tests: readonly Seen[],
  { required, knee }: Asked,
  compared: 'met' | 'against' | 'unclear',
): Settled | undefined {
  const valid = tests.filter((t) => t.invalid.length === 0);
  const rear = valid.find((t) => t.locked !== 'front' && t.rate.high < required);
  if (rear) {
    const what = rear.locked === 'both' ? 'both axles locked together' : 'the rear locked first';
    return {
      of: 'requirement',
      result: 'against',
      says: `in the lock-order test ${what}, ${rear.says}`,
      todo: 'give the rear less of the force, and test again',
    };
  }
  const front = valid.find((t) => t.locked !== 'rear' && t.rate.low >= required);
  const doubt = compared === 'against' ? undefined : doubtOf(tests, required);
  if (!front) return compared === 'met' ? doubt : undefined;
  if (compared === 'against')
    return {
      result: 'against',
      says: `the lock-order test saw the front lock first, ${front.says}: test and calculation disagree`,
      todo: 'find out which is wrong, the fields of the brakes or the test',
    };
  if (doubt) return doubt;
  if (compared === 'met') return undefined;
  const atKnee = valid.find((t) => t.locked === 'front' && knee !== undefined && near(t.rate, knee));
  if (knee !== undefined && knee < required && !atKnee) return undefined;
  const also = knee !== undefined && atKnee && atKnee !== front ? `, and ${atKnee.says}` : '';
  return {
    of: 'proof',
    result: 'met',
    says: `seen in the lock-order test: the front locked first, ${front.says}${also}`,
  };
}

/** A test that shows the rear first, and does not count or does not decide: what was calculated does not go over it. */
function doubtOf(tests: readonly Seen[], required: number): Settled | undefined {
  const doubt = tests.find((t) => (t.locked === 'rear' || t.locked === 'both') && !(t.rate.low >= required));
  return (
    doubt && {
      result: 'unclear',
      says: `the rear locked first or together with the front in the lock-order test, ${doubt.says}${doubt.invalid.length > 0 ? `, which does not count: ${doubt.invalid.join(', ')}` : ''}`,
      by: 'the lock-order test, repeated with its conditions met',
      todo: 'repeat the lock-order test with its conditions met',
    }
  );
}

const near = ({ low, high }: Seen['rate'], knee: number) => Math.abs((low + high) / 2 - knee) <= nearKnee;

/** Why tests that were made do not settle it. */
export function unsettled(tests: readonly Seen[], { required }: Asked): string[] {
  return tests.map((t) => {
    const low = t.locked === 'front' || t.locked === 'both' ? t.rate.low < required : false;
    const reasons = [...t.invalid, ...(t.invalid.length === 0 && low ? ['it stayed below the required rate'] : [])];
    return `the lock-order test, ${t.says}, does not settle it${reasons.length > 0 ? `: ${reasons.join(', ')}` : ''}`;
  });
}

/** The test to make, with the deceleration that it needs. */
export function testToMake(load: Load, { required, knee }: Asked): string {
  const also = knee !== undefined && knee < required ? `, and once at about ${decelerationOf(knee, Math.round)}` : '';
  return `record a lock-order test, ${load === 'laden' ? 'laden' : 'lightly laden'}, with a lock at ${decelerationOf(required, Math.ceil)} or more${also} (\`lock-order:\` of a brake test note)`;
}

/** One decimal, rounded as told. */
const decelerationOf = (rate: number, round: (x: number) => number) =>
  `${(round(rate * g * 10 - 1e-9) / 10).toFixed(1)} m/s²`;
