/** A name and an address as git recorded them; anybody can write anything here. */
export interface Person {
  name: string;
  email: string;
}

/** Control and format characters, except the two joiners that some scripts need. */
const unsafe = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]|(?![\u200c\u200d])\p{Cf}/gu;

/**
 * The text with control characters and characters that change the direction of writing or cannot be seen made
 * visible (`‹U+202E›`), so that a terminal or a page shows them and does not obey them.
 */
export function shown(text: string): string {
  return text.replace(unsafe, (character) => {
    const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
    return `‹U+${code}›`;
  });
}

/** `Name <address>`, safe to display; the part that is missing is left out. */
export function who(person: Person): string {
  const name = shown(person.name.trim());
  const email = shown(person.email.trim());
  if (name === '') return email === '' ? 'nobody named' : email;
  return email === '' ? name : `${name} <${email}>`;
}
