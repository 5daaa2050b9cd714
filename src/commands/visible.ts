/** Control and bidirectional characters are shown as their code points, so that a text cannot rearrange the terminal. */
export function visible(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, (c) => (c === '\n' ? '\n' : `<U+${c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}>`));
}
