import { unsafe } from './visible.js';

/**
 * JSON for people and programs: what a terminal would obey, or what turns the direction of writing or cannot be seen, is
 * written by its number (`\u202e`), which reads back as what it was.
 */
export const jsonText = (data: unknown): string =>
  JSON.stringify(data, null, 2).replace(unsafe, (found) =>
    found === '\n'
      ? found
      : [...Array(found.length).keys()].map((i) => `\\u${found.charCodeAt(i).toString(16).padStart(4, '0')}`).join(''),
  );
