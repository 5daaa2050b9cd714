import type { Finding } from '../checks/finding.js';
import { basisSays, type Limit } from '../checks/limit.js';
import { showQuantity } from '../units/show.js';

/** `at most 2.5` with where it stands and what it rests on. */
export function limitText(finding: Pick<Finding, 'limit' | 'basis'>): string {
  const { limit } = finding;
  if (!limit) return `— (${basisSays[finding.basis]})`;
  return `${boundText(limit)}${limit.from ? ` (${limit.from.replaceAll('_', ' ')})` : ''}. ${restsText(limit)}`;
}

export function boundText(limit: Limit): string {
  const low = limit.min === undefined ? '' : `${limit.open ? 'more than' : 'at least'} ${showQuantity(limit.min, limit.unit)}`;
  const high = limit.max === undefined ? '' : `${limit.open ? 'less than' : 'at most'} ${showQuantity(limit.max, limit.unit)}`;
  const both = [low, high].filter(Boolean).join(' and ');
  return limit.recommended ? `${both} (recommended)` : both;
}

export function restsText(limit: Omit<Limit, 'unit'>): string {
  const where = [limit.document, limit.edition, limit.clause].filter(Boolean).join(', ');
  const status = limit.basis === 'published' && limit.status ? `, ${{ 'in-force': 'in force', superseded: 'superseded', 'not-known': 'currency not known' }[limit.status]}` : '';
  const by = limit.readBy ? `, read by ${limit.readBy} on ${limit.on}` : '';
  return `${where} (${basisSays[limit.basis]}${status}${by})`;
}
