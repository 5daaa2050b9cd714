import type { Basis, Limit, Rests } from '../checks/codes/limit.js';
import { showQuantity } from '../units/show.js';

/** What a limit rests on, in two words; the page on how to read the document explains each. */
export const basisShort: Readonly<Record<Basis, string>> = {
  'own-copy': 'own copy',
  published: 'published',
  maker: 'maker',
  quoted: 'quoted',
  practice: 'common practice',
  memory: 'recalled',
};

const statusSays = { 'in-force': 'in force', superseded: 'superseded', 'not-known': 'currency not known' } as const;

/** `at least 25 mm and at most 30 mm`. */
export function boundText(limit: Limit): string {
  const low =
    limit.min === undefined ? '' : `${limit.open ? 'more than' : 'at least'} ${showQuantity(limit.min, limit.unit)}`;
  const high =
    limit.max === undefined ? '' : `${limit.open ? 'less than' : 'at most'} ${showQuantity(limit.max, limit.unit)}`;
  const both = [low, high].filter(Boolean).join(' and ');
  return limit.recommended ? `${both} (recommended)` : both;
}

/** The basis with all that weakens it: status, where it was read, by whom. */
export function howRead(rests: Omit<Rests, 'document'>): string {
  const status = rests.basis === 'published' ? statusSays[rests.status ?? 'not-known'] : undefined;
  if (rests.agreedWith !== undefined) return `agreed with ${rests.agreedWith} on ${rests.on}`;
  return [
    basisShort[rests.basis],
    status,
    rests.readIn && `read in ${rests.readIn}`,
    rests.readBy && `read by ${rests.readBy} on ${rests.on}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** Document, edition and clause, and what they are worth. */
export const restsText = (rests: Rests): string =>
  `${[rests.document, rests.edition, rests.clause].filter(Boolean).join(', ')} (${howRead(rests)})`;
