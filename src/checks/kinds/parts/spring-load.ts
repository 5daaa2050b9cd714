import { combine } from '../../../calc/propagate.js';
import { coilRate } from '../../../calc/suspension/coil-rate.js';
import { expanded, spread, type Value } from '../../../calc/value.js';
import { showQuantity } from '../../../units/show.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import type { Suspension } from '../suspension-fields.js';

/** The rate of a spring and what it carries, by its paper and by its wire. */

type Axle = 'front' | 'rear';
type State = 'was' | 'planned' | 'now';

/** Common practice: coils that lie on the seats are told from those that move to a quarter of a coil. */
const countedCoils = 0.25;

/** The rate as stated and the rate by the wire, which are held against each other. */
export function ratesOf(axle: Axle, state: State, data: Suspension, work: Work): Value[] {
  const spring = data[axle]?.[state];
  const take = (name: 'rate' | 'wire' | 'outside' | 'active') => work.take(spring?.[name], axle, state, name);
  const stated = take('rate');
  const known = isMissing(stated) ? [] : [stated];
  if (!spring?.wire || !spring.outside || !spring.active) return known;
  const rate = work
    .sheet(coilRate, `${axle}-${state}`, { wire: take('wire'), outside: take('outside'), active: take('active') })
    .get('rate');
  if (isMissing(rate)) return known;
  work.agree(
    `${axle}-${state}-rate`,
    {
      says: `rate of the ${axle} spring`,
      unit: 'N/mm',
      method: {
        expanded: (rate.si * countedCoils) / spring.active.quantity.si,
        because: 'the coils that count as active',
      },
    },
    stated,
    rate,
  );
  return [...known, rate];
}

/** What a spring is pressed together from and to at full bump. */
interface Standing {
  free: Maybe;
  ride: Maybe;
  motion: Maybe;
  bump: Maybe;
}

/** Force of the spring at full bump, of the lesser rate where two are known. */
function carried(rates: readonly Value[], { free, ride, motion, bump }: Standing): Value | undefined {
  if (rates.length === 0 || isMissing(free) || isMissing(ride) || isMissing(motion) || isMissing(bump))
    return undefined;
  const rate = rates.reduce((least, one) => (one.si < least.si ? one : least));
  return {
    ...combine([rate, free, ride, motion, bump], (k, f, r, m, b) => k! * (f! - r! + m! * b!)),
    unit: 'kN',
    origin: { kind: 'given', text: 'rate times the way from free length to full bump' },
  };
}

/** A spring that surely carries less at full bump than the original one speaks against the answer that it carries as much. */
export function examineSpringLoad(
  id: string,
  was: { rates: readonly Value[] } & Standing,
  now: { rates: readonly Value[] } & Standing,
  work: Work,
): void {
  const [before, after] = [carried(was.rates.slice(0, 1), was), carried(now.rates, now)];
  if (!before || !after || after.si + expanded(after) >= before.si - expanded(before)) return;
  const shown = (load: Value) => showQuantity(load.si, 'kN', spread(load));
  work.derive('suspension.spring-load', {
    answer: 'no',
    because: `${id}: the spring carries ${shown(after)} at full bump, the original one carried ${shown(before)}`,
    from: ['corners', id],
  });
}
