import fc from 'fast-check';
import { expect, it } from 'vitest';
import { shown, who } from '../../src/history/who.js';

it('leaves names of all scripts as they are', () => {
  for (const name of ['Jo Ashdown', 'Mika Sørby', '山田 花子', 'می‌خواهم', 'O’Brien-Łódź', '👩‍🔧'])
    expect(shown(name)).toBe(name);
});

it('shows what a terminal or a page would obey or hide', () => {
  expect(shown('a\u001b[31mb')).toBe('a‹U+001B›[31mb');
  expect(shown('gpj\u202e.exe')).toBe('gpj‹U+202E›.exe');
  expect(shown('a\r\nb\u2066\u200b\ufeff\u0085\u2028\u{e0041}')).toBe(
    'a‹U+000D›‹U+000A›b‹U+2066›‹U+200B›‹U+FEFF›‹U+0085›‹U+2028›‹U+E0041›',
  );
  expect(shown('\ud800')).toBe('‹U+D800›');
});

it('lets no control or direction character through, and changes nothing on a second pass', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(0x2fff)), (codes) => {
      const text = String.fromCodePoint(...codes);
      const safe = shown(text);
      expect(safe).not.toMatch(/[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}]/u);
      expect(shown(safe)).toBe(safe);
    }),
  );
});

it('leaves out the part that is missing', () => {
  expect(who({ name: 'Jo', email: 'jo@workshop.example' })).toBe('Jo <jo@workshop.example>');
  expect(who({ name: ' ', email: 'jo@workshop.example' })).toBe('jo@workshop.example');
  expect(who({ name: 'Jo', email: '' })).toBe('Jo');
  expect(who({ name: '', email: '' })).toBe('nobody named');
});
