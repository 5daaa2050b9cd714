import { Decimal } from '../units/decimal.js';
import type { Quantity } from '../units/quantity.js';

/**
 * Which of several places a calculation takes, where a list is not readings of one place: the least favourable. A limit is
 * held against each. Of `each` neither end is the worse before the limit is known; there the mean stands for them.
 */
export type Places = 'smallest' | 'largest' | 'each';

/** The values of a list, each by itself with what was stated behind its ±; undefined of a single value. */
export function eachPlace(quantity: Quantity): readonly Quantity[] | undefined {
  const { readings, eachStated, spread: _, expanded: __, ...one } = quantity;
  return readings?.map((si, i) => {
    const stated = eachStated?.[i];
    return { ...one, si, exact: new Decimal(si), ...(stated === undefined ? {} : { expanded: stated }) };
  });
}

/** The least favourable of several places, as far out as its ± reaches. */
export function worstPlace(places: readonly Quantity[], which: 'smallest' | 'largest'): Quantity {
  const reach = ({ si, expanded = 0 }: Quantity) => (which === 'smallest' ? expanded - si : expanded + si);
  return places.reduce((worst, one) => (reach(one) > reach(worst) ? one : worst));
}

/** A measured value at one of its places alone. */
export function placeOf<M extends { quantity: Quantity; places?: readonly Quantity[] }>(
  measured: M,
  which: 'smallest' | 'largest',
): Omit<M, 'places'> {
  const { places, ...rest } = measured;
  return places ? { ...rest, quantity: worstPlace(places, which) } : measured;
}
