import type { Source } from '../../calc/sheet.js';

/** What a source of a formula is worth, in words. */
export const basisWords: Readonly<Record<Source['basis'], string>> = {
  published: 'read in the published text',
  quoted: 'read in another publication that quotes it',
  practice: 'common practice, no source',
  memory: 'recalled, not read again for this project',
  derived: 'follows from mechanics or geometry',
};
