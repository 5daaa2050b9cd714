import { isLetter } from './issue-letter.js';

/** What git does not take in the name of a tag, and `%`, which marks what was replaced. */
const forbidden = /[\p{Cc} ~^:?*[\\/%{]|^[.-]|\.(?=$|\.|lock$)/gu;

/** `demo/issue-A`. Characters that git does not take in a tag are written `%20`. */
export function tagName(build: string, letter: string): string {
  if (build === '') throw new Error('Expected the name of a build, found an empty one.');
  if (!isLetter(letter)) throw new Error(`Expected an issue letter such as A or AB, found "${letter}".`);
  const name = build
    .normalize('NFC')
    .replace(
      forbidden,
      (character) => `%${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(2, '0')}`,
    );
  return `${name}/issue-${letter}`;
}

/** The letter in the name of an issue's tag; nothing if it is no such name. */
export function letterOf(tag: string): string | undefined {
  const letter = /\/issue-([A-Z]+)$/.exec(tag)?.[1];
  return letter !== undefined && isLetter(letter) ? letter : undefined;
}
