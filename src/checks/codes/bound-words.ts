import { showQuantity } from '../../units/show.js';
import type { Bound, Limit } from './limit.js';

/** `at least 25 mm and less than 30 mm`. */
export function boundWords({ min, max, unit }: Pick<Limit, 'min' | 'max' | 'unit'>): string {
  const words = (bound: Bound | undefined, inclusive: string, strict: string) =>
    bound ? [`${bound.strict ? strict : inclusive} ${showQuantity(bound.si, unit)}`] : [];
  return [...words(min, 'at least', 'more than'), ...words(max, 'at most', 'less than')].join(' and ');
}
