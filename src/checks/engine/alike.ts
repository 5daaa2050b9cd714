import { expanded, type Value } from '../../calc/value.js';
import { exactBound } from '../codes/limit.js';
import { decide } from './verdict.js';

/**
 * Whether two readings of one thing are alike, by a tolerance that does not grow with what they are uncertain by. They are
 * where their difference lies within it, uncertainty and all (JCGM 106:2012, 8.3.2); they are not where it is greater than
 * its uncertainty and not within; in between nothing is decided.
 *
 * @param apart the difference of both
 * @param tolerance SI
 */
export function alike(apart: Value, tolerance: number): 'met' | 'against' | 'unclear' {
  // The decimals of two bounds may differ in the last of their digits.
  const end = tolerance * (1 + 1e-9);
  const { result } = decide(apart, {
    min: exactBound(-end),
    max: exactBound(end),
    unit: apart.unit,
    document: 'tolerance of two readings',
    basis: 'own-copy',
    rule: 'guarded',
  });
  if (result === 'met') return 'met';
  return result === 'against' || Math.abs(apart.si) > expanded(apart) * (1 + 1e-9) ? 'against' : 'unclear';
}
