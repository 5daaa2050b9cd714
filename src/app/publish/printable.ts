import { unprintable } from '../../platform/fonts.js';
import type { Build } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';

/** Characters of the notes that no shipped font holds, each where it stands first. */
export function unprintableCharacters(build: Build): Problem[] {
  const files = [{ file: build.file, text: build.text }, ...build.notes];
  return files.flatMap(({ file, text }) => {
    const bad = unprintable(text.replace(/\r\n?/g, '\n'));
    if (bad.length === 0) return [];
    return text
      .replace(/\r\n?/g, '\n')
      .split('\n')
      .flatMap((source, i): Problem[] => {
        const first = bad
          .filter((c) => source.includes(c))
          .map((c) => ({ c, at: source.indexOf(c) }))
          .sort((a, b) => a.at - b.at)[0];
        if (!first) return [];
        const code = first.c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
        return [
          {
            code: 'character',
            file,
            line: i + 1,
            column: first.at + 1,
            source,
            found: `the character U+${code}, which no shipped font has`,
            expected: 'text in Latin, Greek or Cyrillic letters, with the usual signs',
            hint: 'write it in another way',
          },
        ];
      });
  });
}
