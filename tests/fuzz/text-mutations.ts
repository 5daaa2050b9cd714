import { type Files, papers, photos } from './bases.js';
import type { Mutation } from './mutations.js';
import type { Random } from './random.js';
import { said } from './values.js';

/** Changes of files as a whole and of their text, which know nothing of fields. */

export const noteNames = (files: Files) => [...files.keys()].filter((path) => path.startsWith('notes/'));
export const aNote = (r: Random, files: Files) => r.one(noteNames(files));
export const anyFile = (r: Random, files: Files) => (r.chance(0.75) ? aNote(r, files) : r.one([...files.keys()]));

export const rename: Mutation = (r, files) => {
  const names = noteNames(files);
  const [one, other] = [r.one(names), r.one(names)];
  const [a, b] = [files.get(one)!, files.get(other)!];
  const way = r.below(3);
  if (way === 0) {
    files.set(one, b);
    files.set(other, a);
  } else if (way === 1) files.set(one.replace(/\/\d+/, `/${900 + r.below(99)}`), a);
  else if (names.length > 1) files.delete(one);
};

export const query: Mutation = (r, files) => {
  const note = r.one(noteNames(files)).slice(6, -3);
  const answered = r.chance(0.6);
  files.set(
    `queries/${r.one(['003', '004'])}-more.md`,
    `---\nfrom: R. Ansell\ndate: 2025-06-${10 + r.below(15)}\nabout: ${note}\nquestion: How is it held?\n${answered ? `answer: By bolts.\nanswered-by: ${r.one(['JO', 'nobody'])}\nanswered-on: 2025-06-${10 + r.below(19)}\n` : ''}state: ${r.one(['open', 'answered', 'closed'])}\n---\n`,
  );
};

const pieces = [
  '',
  ' ',
  '\n',
  '-',
  ':',
  '{',
  '}',
  '[',
  ']',
  '"',
  "'",
  '#',
  '&a',
  '*a',
  '|',
  '1e999',
  '-0',
  'NaN mm',
  '± 5 %',
  '<script>',
  '](',
  '`',
  '\u202e',
  '\u0000',
  '𝒳',
  '../..',
  '\ufeff',
  '\r\n',
  '\t',
];

export const bytes: Mutation = (r, files) => {
  const path = anyFile(r, files);
  const text = files.get(path)!;
  if (text === '') return;
  const from = r.below(Math.min(text.length, 6000));
  files.set(path, text.slice(0, from) + r.one(pieces) + text.slice(from + r.below(6)));
};

export const lines: Mutation = (r, files) => {
  const path = anyFile(r, files);
  const all = files.get(path)!.split('\n');
  const from = r.below(all.length);
  if (r.chance(0.4)) all.splice(from, 1);
  else if (r.chance(0.5)) all.splice(from, 0, all[from]!);
  else all.push(...all.splice(from, 1));
  files.set(path, all.join('\n'));
};

export const words: Mutation = (r, files) => {
  const path = aNote(r, files);
  const text = files.get(path)!;
  const markdown = r.one([
    '\n\n> quoted\n> > twice\n',
    '\n\n| a | b |\n|---|---|\n| 1 | 2 |\n',
    '\n\n## A heading\n\n1. one\n2. two\n',
    '\n\n```\ncode\n```\n',
    `\n\n${'['.repeat(60)}`,
    `\n\n${'*a '.repeat(60)}`,
    '\n\n<details><summary>x</summary>y</details>\n',
    `\n\n![a photo](../photos/${r.one(photos)})\n`,
    `\n\n[a paper](../papers/${r.one(papers)})\n`,
    '\n\n[nothing](nowhere.md)\n',
    `\n\n${r.one(said)}\n`,
  ]);
  files.set(path, text + markdown);
};
