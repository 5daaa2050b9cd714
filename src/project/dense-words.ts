import type { Problem } from './problem.js';

/**
 * What keeps the words of a note from being read in reasonable time, looked for before they are read: readers of Markdown
 * take time with the square of the marks in a paragraph, and room with the depth of what is nested. All bounds lie far
 * above what a note needs; a count that is too high only refuses more.
 */
const most = {
  /** Brackets and marks of emphasis and code in a paragraph. */
  marks: 2_000,
  /** The same of all paragraphs, squared and summed. */
  squares: 12_000_000,
  /** Columns taken by spaces and marks of quotes and lists before the text of a line begins. */
  columns: 160,
  /** Levels of quotes and lists of all lines, squared and summed. */
  levels: 1_000_000,
  /** HTML elements that hold something. */
  elements: 500,
};

const blank = /^[ \t]*$/;
const line = /^[ \t]*([-*_])(?:[ \t]*\1){2,}[ \t]*$/;
const before = /^(?:[ \t>]|[-+*](?=[ \t]|$)|\d{1,9}[.)](?=[ \t]|$))*/;
const marks = /[[\]*_~`]/g;
const element = /<(?!(?:br|hr|wbr|img|input|col)\b)[a-z][a-z0-9-]*(?=[\s/>]|$)/gi;

/** The first place at which the words go beyond a bound. `firstLine` is that of the words in their file. */
export function denseWords(words: string, file: string, firstLine: number): Problem | undefined {
  let [squares, inParagraph, levels, elements, begins] = [0, 0, 0, 0, 0];
  const lines = words.split('\n');
  const problem = (at: number, found: string, expected: string, hint: string): Problem => ({
    code: 'file-too-large',
    file,
    line: firstLine + at,
    column: 1,
    found,
    expected,
    hint,
    source: lines[at]!.slice(0, 200),
  });
  for (const [at, text] of lines.entries()) {
    if (blank.test(text)) {
      squares += inParagraph ** 2;
      inParagraph = 0;
      continue;
    }
    if (inParagraph === 0) begins = at;
    const start = line.test(text) ? '' : before.exec(text)![0];
    const columns = start.length + 3 * countOf(/\t/g, start);
    if (columns > most.columns)
      return problem(
        at,
        `${columns} columns of spaces and marks of quotes or lists before the text`,
        `at most ${most.columns}`,
        'nest quotes and lists less deeply',
      );
    levels += levelsOf(start, columns) ** 2;
    if (levels > most.levels)
      return problem(
        at,
        'too many lines that are deep in quotes or lists up to here',
        'fewer of them, or fewer levels',
        'nest quotes and lists less deeply',
      );
    elements += countOf(element, text);
    if (elements > most.elements)
      return problem(
        at,
        `more than ${most.elements} HTML elements up to here`,
        `at most ${most.elements} in one note`,
        'write it as Markdown, or keep it as a paper',
      );
    inParagraph += countOf(marks, text);
    if (inParagraph > most.marks)
      return problem(
        begins,
        `more than ${most.marks} brackets and marks of emphasis or code in one paragraph`,
        `at most ${most.marks} between empty lines`,
        'leave lines empty between its parts, or keep long series in a CSV file',
      );
    if (squares + inParagraph ** 2 > most.squares)
      return problem(
        begins,
        `too many brackets and marks of emphasis or code in the paragraphs up to here`,
        `paragraphs with fewer of them`,
        'leave more lines empty, or divide the note',
      );
  }
  return undefined;
}

const countOf = (what: RegExp, text: string): number => text.match(what)?.length ?? 0;

/** How many quotes and lists a line can be in: code may stand some way in, and is in none. */
function levelsOf(start: string, columns: number): number {
  const written = countOf(/[^ \t]+/g, start) + countOf(/>(?=>)/g, start);
  return written === 0 && columns <= 40 ? 0 : Math.max(written, columns / 2);
}
