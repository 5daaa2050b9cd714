/** Control and format characters, line separators and lone surrogates; not the two joiners that some scripts need. */
export const unsafe = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]|(?![\u200c\u200d])\p{Cf}/gu;

/**
 * The text with control characters and characters that change the direction of writing or cannot be seen made visible
 * (`‹U+202E›`), so that a terminal or a page shows them and does not obey them. Characters of `keep` stay.
 */
export function visible(text: string, keep = '\n'): string {
  return text.replace(unsafe, (c) =>
    keep.includes(c) ? c : `‹U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}›`,
  );
}
