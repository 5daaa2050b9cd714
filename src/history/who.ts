import { visible } from '../platform/visible.js';

/** A name and an address as git recorded them; anybody can write anything here. */
export interface Person {
  name: string;
  email: string;
}

/** On one line, with everything that cannot be seen made visible. */
export const shown = (text: string): string => visible(text, '');

/** `Name <address>`, safe to display; the part that is missing is left out. */
export function who(person: Person): string {
  const name = shown(person.name.trim());
  const email = shown(person.email.trim());
  if (name === '') return email === '' ? 'nobody named' : email;
  return email === '' ? name : `${name} <${email}>`;
}
