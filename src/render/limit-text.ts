import { boundWords } from '../checks/codes/bound-words.js';
import { type Basis, type Limit, type Rests, ruleOf } from '../checks/codes/limit.js';

/** What a limit rests on, in two words; the page on how to read the document explains each. */
export const basisShort: Readonly<Record<Basis, string>> = {
  'own-copy': 'own copy',
  published: 'published',
  maker: 'maker',
  quoted: 'quoted',
  practice: 'common practice',
  memory: 'recalled',
};

const ruleWord = { 'as-read': 'as read', exact: 'exact' } as const;

const statusSays = { 'in-force': 'in force', superseded: 'superseded', 'not-known': 'currency not known' } as const;

/** `at least 25 mm and at most 30 mm (as read)`: what is no requirement, and a decision rule other than the guarded one. */
export function boundText(limit: Limit): string {
  const rule = ruleOf(limit);
  const more = [...(limit.recommended ? ['recommended'] : []), ...(rule === 'guarded' ? [] : [ruleWord[rule]])];
  return more.length > 0 ? `${boundWords(limit)} (${more.join(', ')})` : boundWords(limit);
}

/** The basis with all that weakens it: status, where it was read, by whom. */
export function howRead(rests: Omit<Rests, 'document'>): string {
  const status = rests.basis === 'published' ? statusSays[rests.status ?? 'not-known'] : undefined;
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
