/** The words of a text in lines of at most so many characters, each after the indent; no line has less room than 20. Hard spaces hold. */
export function wrap(text: string, width: number, indent: string): string[] {
  const room = Math.max(20, width - indent.length);
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/[^\S\u00a0]+/)) {
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, indent + line];
}
