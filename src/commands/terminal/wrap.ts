import columnsOf from 'string-width';

/** The words of a text in lines of at most so many columns, each after the indent; no line has less room than 20. Hard spaces hold. */
export function wrap(text: string, width: number, indent: string): string[] {
  const room = Math.max(20, width - columnsOf(indent));
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/[^\S\u00a0]+/)) {
    if (line !== '' && columnsOf(line) + 1 + columnsOf(word) > room) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, indent + line];
}

/** The columns that the widest of some texts takes on a terminal: some characters take two, and marks over letters none. */
export const widestOf = (texts: readonly string[]): number => Math.max(0, ...texts.map((text) => columnsOf(text)));

/** A text filled up with spaces to so many columns. */
export const padTo = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - columnsOf(text)));
