/** True for `A` to `Z`, `AA` and so on. */
export function isLetter(text: string): boolean {
  return /^[A-Z]{1,4}$/.test(text);
}

/** A is 1, Z is 26, AA is 27. Throws on anything but letters. */
export function letterNumber(letter: string): number {
  if (!isLetter(letter)) throw new Error(`Expected an issue letter such as A or AB, found "${letter}".`);
  return [...letter].reduce((sum, character) => sum * 26 + character.charCodeAt(0) - 64, 0);
}

/** The letter after the highest of those given; A if there is none. A gap is never filled: that letter was used once. */
export function nextLetter(letters: Iterable<string>): string {
  let left = Math.max(0, ...[...letters].map(letterNumber)) + 1;
  let next = '';
  for (; left > 0; left = Math.floor((left - 1) / 26)) next = String.fromCharCode(65 + ((left - 1) % 26)) + next;
  return next;
}
