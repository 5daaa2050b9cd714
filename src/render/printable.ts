import { unprintable } from '../platform/fonts.js';
import { visible } from '../platform/visible.js';

/** Text that git holds, fit for the page: what cannot be seen, and what no shipped font has, is told by its code. */
export function printable(text: string): string {
  const shown = visible(text, '');
  const lacking = new Set(unprintable(shown));
  if (lacking.size === 0) return shown;
  return [...shown]
    .map((c) => (lacking.has(c) ? `‹U+${c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}›` : c))
    .join('');
}
