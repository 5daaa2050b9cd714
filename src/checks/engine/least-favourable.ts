import type { Value } from '../../calc/value.js';
import { showQuantity } from '../../units/show.js';
import type { Limit } from '../codes/limit.js';
import type { Resolved } from '../codes/limits.js';
import type { Result } from './finding.js';
import { decide } from './verdict.js';

/** Results from the least favourable on; those alike are ordered by their margin. */
const ranked: readonly Result[] = ['against', 'unclear', 'unconfirmed', 'met'];

/** Of a measurement at several places the one that decides against this limit, on whichever side it has bounds. */
export function leastFavourable(value: Value, limit: Limit): Value {
  if (!value.places) return value;
  const each = value.places.map((one) => ({ one, ...decide(one, limit) }));
  const rank = ({ result }: (typeof each)[number]) => ranked.indexOf(result);
  return each.reduce((worst, next) =>
    rank(next) < rank(worst) ||
    (rank(next) === rank(worst) && next.margin - next.expanded < worst.margin - worst.expanded)
      ? next
      : worst,
  ).one;
}

/** How far the places lie apart, of which one decided. */
export function placesMark({ places }: Pick<Value, 'places'>, unit: string): string[] {
  if (!places) return [];
  const each = places.map(({ si }) => si);
  const [from, to] = [Math.min(...each), Math.max(...each)].map((si) => showQuantity(si, unit));
  return [`least favourable of ${places.length} places, ${from} to ${to}`];
}

/** How a value comes out with a limit that may hold. */
export const outcomeWith = (resolved: Resolved, value: Value): Result =>
  resolved.is === 'limit'
    ? decide(leastFavourable(value, resolved.limit), resolved.limit).result
    : resolved.is === 'not-applicable'
      ? 'out'
      : 'unconfirmed';
