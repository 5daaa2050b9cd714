import type { Frontmatter } from './frontmatter.js';
import type { Problem } from './problem.js';

/**
 * The number of the form in which notes are written and results are given as JSON. It rises when a field, a word or a key
 * gets another name or goes. `build.md` states it once for the whole build: notes of one build are read and brought up to
 * date together. A build that states none is of format 1.
 */
export const format = 2;

/** What a JSON result is, with the format that it is written in: `gusset-findings/2`. */
export const jsonForm = (what: string): string => `gusset-${what}/${format}`;

/** A build of a later format may use words that this program takes for others, so nothing of it is read. */
export function ofLaterFormat({ data, locate, sourceLine }: Frontmatter, file: string): Problem | undefined {
  const stated = data['format'];
  if (typeof stated !== 'string' || !/^\d+$/.test(stated) || Number(stated) <= format) return undefined;
  const range = locate(['format']);
  return {
    code: 'format',
    file,
    ...range,
    source: sourceLine(range.line),
    found: `format ${stated.slice(0, 20)}`,
    expected: `at most ${format}, which is what this version reads`,
    hint: 'the build was written for a later version of Gusset: install that',
  };
}
