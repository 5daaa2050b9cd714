import { centreOfMass } from '../../../calc/brakes/vehicle.js';
import type { Value } from '../../../calc/value.js';
import { showNumber } from '../../../units/show.js';
import type { Limit } from '../../codes/limit.js';
import type { Result } from '../../engine/finding.js';
import { isMissing, type Maybe, type Settled, type Work } from '../../engine/work.js';
import { type Load, lockOrders, settledByTest, testToMake, unsettled } from './lock-order.js';

export interface Balance {
  load: Load;
  vehicle: { frontMass: Maybe; rearMass: Maybe; wheelbase: Maybe; massHeight: Maybe };
  /** Front share of the braking force, as calculated. */
  share: Maybe;
  /** What friction each axle's force follows from: the friction of pads, or the factor of drums. */
  friction: Readonly<Record<'front' | 'rear', { says: string; value: Maybe }>>;
  /** Braking rate at the knee of a valve. */
  knee: Maybe | undefined;
}

/** What settles the comparison of the rate up to which the front locks first, or says what would. */
export function settleFrontFirst(balance: Balance, work: Work) {
  return (limit: Limit, compared: Result): Settled | undefined => {
    const required = limit.min?.si;
    if (required === undefined || (compared !== 'met' && compared !== 'against' && compared !== 'unclear'))
      return undefined;
    const knee = balance.knee && !isMissing(balance.knee) ? balance.knee.si : undefined;
    const asked = { required, knee };
    const tests = lockOrders(balance.load, work);
    const settled = settledByTest(tests, asked, compared);
    if (settled || compared !== 'unclear') return settled;
    return {
      result: 'unclear',
      says: ['the uncertainty reaches across the limit', onlyIf(balance, required), ...unsettled(tests, asked)]
        .filter(Boolean)
        .join('; '),
      by: `a lock-order test, ${balance.load === 'laden' ? 'laden' : 'lightly laden'}`,
      todo: `${testToMake(balance.load, asked)}, or measure what is uncertain, such as friction by line pressure and force`,
    };
  };
}

/** The share of the front from which it would conform, and what that asks of friction, with all else as calculated. */
function onlyIf({ vehicle, share, friction, knee }: Balance, required: number): string {
  const known = numbers(vehicle);
  if (!known || isMissing(share)) return '';
  // With a valve the share that counts is that of another pressure, so that no one figure can be named.
  if (knee) return '';
  const { toRear } = centreOfMass(known);
  const least = (required * known.massHeight + toRear) / known.wheelbase;
  if (least <= 0 || least >= 1) return '';
  const percent = (x: number, round: 'up' | 'down' | 'near') => `${rounded(x * 100, round)} %`;
  const front = `conforms only if the front takes at least ${percent(least, 'up')} of the force (calculated ${percent(share.si, 'near')})`;
  const [f, r] = [friction.front.value, friction.rear.value];
  if (isMissing(f) || isMissing(r)) return front;
  if (alike(f, r)) return `${front}; like pads at both axles change alike, which leaves it as it is`;
  const more = (least / (1 - least)) * ((1 - share.si) / share.si);
  return `${front}: ${friction.front.says} at least ${rounded(f.si * more, 'up')}, or ${friction.rear.says} at most ${rounded(r.si / more, 'down')}, all else as calculated`;
}

const alike = (a: Value, b: Value) => [...a.parts.keys()].some((source) => b.parts.has(source));

function numbers(vehicle: Balance['vehicle']) {
  const { frontMass, rearMass, wheelbase, massHeight } = vehicle;
  if (isMissing(frontMass) || isMissing(rearMass) || isMissing(wheelbase) || isMissing(massHeight)) return undefined;
  return { frontMass: frontMass.si, rearMass: rearMass.si, wheelbase: wheelbase.si, massHeight: massHeight.si };
}

/** To three digits, towards the side on which it still holds. */
function rounded(x: number, how: 'up' | 'down' | 'near'): string {
  const step = 10 ** (Math.floor(Math.log10(Math.abs(x))) - 2);
  const round = { up: Math.ceil, down: Math.floor, near: Math.round }[how];
  return showNumber(round(x / step) * step, { digits: 3 });
}
