/** Milliseconds of work of this process, whatever else the machine does meanwhile. */
const spent = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { readFrontmatter } from '../../src/project/frontmatter.js';
import { renderMarkdown } from '../../src/render/markdown.js';
import { htmlOf } from '../../src/render/page.js';
import { buildFile, folderWith } from '../project/scratch.js';

/** Words that are read in seconds, or refused at once with their place. Bounds of our own: regression only. */

const size = 250_000;
const upTo = (piece: string, length = size) => piece.repeat(Math.ceil(length / piece.length));
const note = (words: string) => `---\nkind: general\ntitle: A note\n---\n${words}\n`;
const read = (words: string) => readFrontmatter(note(words), 'notes/010-a.md');
const render = (words: string) =>
  htmlOf(
    renderMarkdown(words, { resolve: () => 'outside', pointer: (id) => h('a', id), name: 'x', under: 2 }) as never,
  );

/** Pieces that readers of Markdown are known to be slow with, or to nest without end. */
const pieces: Record<string, (length: number) => string> = {
  brackets: (n) => upTo('[', n),
  'open links': (n) => upTo('[a](', n),
  'open links, apart': (n) => upTo('[a]( ', n),
  emphasis: (n) => upTo('*a ', n),
  'emphasis of two sorts': (n) => upTo('*_', n),
  'emphasis that never closes': (n) => upTo('*a**', n),
  'strong in strong': (n) => upTo('**', n / 2) + upTo('a**', n / 2),
  'struck out': (n) => upTo('~a ', n / 2) + upTo(' a~', n / 2),
  'closed brackets': (n) => upTo('[', n / 2) + upTo(']', n / 2),
  pictures: (n) => upTo('![', n / 3) + upTo('](a)', (2 * n) / 3),
  footnotes: (n) => upTo('[^a]', n),
  definitions: (n) => upTo('[a]: /u\n', n),
  quotes: (n) => `${upTo('>', n)}a`,
  'lists in a line': (n) => `${upTo('- ', n)}a`,
  numbers: (n) => `${upTo('1. ', n)}a`,
  'lists, line by line': (n) => Array.from({ length: Math.sqrt(n) }, (_, i) => `${' '.repeat(2 * i)}- a`).join('\n'),
  divisions: (n) => upTo('<div>', n),
  'inline elements': (n) => `x ${upTo('<b>', n)}`,
  tables: (n) => upTo('<table><tr><td>', n),
  'angles, code, entities': (n) => upTo('<`&#x', n),
  'cells of a table': (n) => `|a|b|\n|-|-|\n${upTo('|', n)}`,
  'spans of code': (n) => upTo('`a` ', n),
  'long runs before code': (n) => Array.from({ length: Math.sqrt(2 * n) }, (_, i) => '`'.repeat(i + 1)).join('a'),
  addresses: (n) => upTo('www.a@b.', n),
};

describe.each(Object.entries(pieces))('%s', (_, words) => {
  it('250 kB of it are looked at in two seconds, and read in ten or refused with a place', () => {
    const from = spent();
    const { value, problems } = read(words(size));
    expect(spent() - from).toBeLessThan(2000);
    if (value) render(value.body);
    else
      expect(problems[0]).toMatchObject({ code: 'file-too-large', line: expect.any(Number), hint: expect.any(String) });
    expect(spent() - from).toBeLessThan(10_000);
  });

  it('as much of it as is read, in one paragraph and in 64 kB of them, is read in ten seconds', () => {
    let length = 16_000;
    while (length > 100 && !read(words(length)).value) length = Math.floor(length * 0.8);
    const many = Array.from({ length: Math.ceil(64_000 / length) }, () => words(length));
    while (many.length > 1 && !read(many.join('\n\n')).value) many.length = Math.floor(many.length * 0.8);
    const from = spent();
    render(many.join('\n\n'));
    expect(spent() - from).toBeLessThan(10_000);
  });
});

it('what a note needs is far below the bounds', () => {
  const row = '| [a photo](../photos/a.jpg) | **12.5 mm** | `x_1` |\n';
  const words = [
    `| what | value | name |\n| --- | --- | --- |\n${row.repeat(180)}`,
    `${'- '.repeat(80)}`,
    `${' '.repeat(100)}far to the right`,
    '* * *',
    '> > > quoted',
    'a<br>'.repeat(1000),
  ].join('\n\n');
  expect(read(words).problems).toEqual([]);
});

it('marks, columns and elements at the bound, and one more', () => {
  expect(read('[x]'.repeat(1000)).problems).toEqual([]);
  expect(read(`Words.\n\n${'[x]'.repeat(1000)}*`).problems).toMatchObject([{ line: 7, column: 1 }]);
  expect(read(`${'>'.repeat(160)}a`).problems).toEqual([]);
  expect(read(`${'>'.repeat(161)}a`).problems).toMatchObject([{ line: 5 }]);
  expect(read(`${'\t'.repeat(40)}a`).problems).toEqual([]);
  expect(read(`${'\t'.repeat(40)} a`).problems).toMatchObject([{ line: 5 }]);
  expect(read('<b>x</b>'.repeat(500)).problems).toEqual([]);
  expect(read('<b>x</b>'.repeat(501)).problems).toMatchObject([{ line: 5 }]);
  expect(read(`${'> > > > > a\n'.repeat(5000)}`).problems).toEqual([]);
  expect(read(`${`${'>'.repeat(100)}a\n`.repeat(100)}`).problems).toEqual([]);
  expect(read(`${`${'>'.repeat(100)}a\n`.repeat(101)}`).problems).toMatchObject([{ line: 105 }]);
  const paragraphs = (n: number) => Array.from({ length: n }, () => '*'.repeat(2000)).join('\n\n');
  expect(read(paragraphs(3)).problems).toEqual([]);
  expect(read(paragraphs(4)).problems).toMatchObject([{ line: 11 }]);
});

it('notes of 10 MB, lines of 1 MB and bombs of anchors are refused with their place', async () => {
  const problemsOf = async (text: string) => {
    const loaded = await load(folderWith({ 'build.md': buildFile, 'notes/010-a.md': text }));
    return loaded.problems.map(({ code, line }) => ({ code, line }));
  };
  expect(await problemsOf(note('a '.repeat(5_000_000)))).toEqual([{ code: 'file-too-large', line: 0 }]);
  expect(await problemsOf(`---\nkind: general\ntitle: ${'a'.repeat(1_000_000)}\n---\n`)).toEqual([
    { code: 'file-too-large', line: 1 },
  ]);
  const bomb = 'a: &a [x]\n'.concat(
    ...'bcdefgh'.split('').map((k, i) => `${k}: &${k} [*${'abcdefg'[i]}, *${'abcdefg'[i]}]\n`),
  );
  const found = await problemsOf(`---\nkind: general\ntitle: Bomb\n${bomb}---\n`);
  expect(found.filter((p) => p.code === 'yaml-alias')).toHaveLength(14);
});

it('an item of the own copy in a unit that is none is refused with its place', async () => {
  const own = (unit: string, measured = '') =>
    `items:\n  - id: own.gap\n    kind: limit\n    title: A gap\n    asks: a gap of our own\n    section: LS\n    unit: ${unit}\n${measured}    raised-by: [general]\n    rests: { document: own copy, edition: third, clause: '1', basis: own-copy, read-by: JO, on: 2026-02-02 }\n    cases: [{ min: 10 ${unit} }]\n`;
  const found = async (limits: string) => {
    const loaded = await load(
      folderWith({ 'build.md': buildFile, 'notes/010-a.md': note('Words.'), 'limits.yaml': limits }),
    );
    return loaded.problems;
  };
  expect(await found(own('mm'))).toEqual([]);
  for (const limits of [own('furlong'), own("'mm/mm2/'"), own('furlong', '    measured: original_mass\n')]) {
    const problems = await found(limits);
    expect(problems.length).toBeGreaterThan(0);
    for (const p of problems) expect([p.line > 0, p.found !== '', p.expected !== '']).toEqual([true, true, true]);
  }
});
