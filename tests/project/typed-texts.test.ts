import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { keepsAPlace, latestDay, leavesOpen } from '../../src/project/typed-texts.js';
import { buildFile, folderWith } from './scratch.js';

/** What was typed and cannot stand: texts that keep a place, days to come, people whom nobody knows. */

const people = 'people: [{ id: JO, name: J. Okoro (invented), role: builder }]\ncertifier: { name: R. Ansell }\n';
const problems = async (note: string, build = people, more: Record<string, string> = {}) => {
  const folder = folderWith({
    'b/build.md': buildFile.replace(/---\n$/, `${build}---\n`),
    'b/papers/a.pdf': 'x',
    'b/notes/010-a.md': `---\nkind: general\ntitle: A note\n${note}\n---\n\nWords.\n`,
    ...more,
  });
  const loaded = await load(`${folder}/b`, `${folder}/b`);
  return loaded.problems.map((p) => `${p.file}:${p.line}:${p.column} ${p.found}`);
};

describe('a text that keeps a place', () => {
  it.each([
    '?',
    '-',
    '–',
    '...',
    '\u200b',
    '\u2060',
    '   ',
    'TBD',
    'tba.',
    'TBC?',
    'todo',
    'to-do',
    'xxx',
    'to be measured',
    'To be confirmed.',
  ])('%j says nothing yet', (text) => expect(keepsAPlace(text)).toBe(true));
  it.each(['0', 'x', 'none', 'no', '%', '4', 'unknown', 'to be welded by M. Brandt', 'todos os santos', 'tbd-4'])(
    '%j is one that says something',
    (text) => expect(keepsAPlace(text)).toBe(false),
  );

  it('is an error at its place, wherever it was typed', async () => {
    expect(await problems('load-state: TBD')).toEqual(['notes/010-a.md:4:13 `TBD`, which says nothing yet']);
    expect(await problems('measurements: [{ id: a, what: "\u200b" }]')).toEqual([
      expect.stringMatching(/^notes\/010-a\.md:4:31 /),
    ]);
    expect(await problems('', `${people}workshop: '-'\n`)).toEqual([expect.stringMatching(/^build\.md:.* `-`/)]);
    const query = '---\nfrom: R. Ansell\ndate: 2026-03-01\nabout: 010-a\nquestion: ???\nstate: open\n---\n';
    expect(await problems('', people, { 'b/queries/1.md': query })).toEqual([
      'queries/1.md:5:11 `???`, which says nothing yet',
    ]);
  });
});

it.each([
  ['not yet', true],
  ['unknown', true],
  ['Pending, see the letter', true],
  ["don't know", true],
  ['nothing', false],
  ['openings are sealed', false],
  ['later model, 1986', true],
  ['latest edition', false],
])('%j leaves it open: %s', (text, expected) => expect(leavesOpen(text)).toBe(expected));

describe('a day', () => {
  it('is to come where it is nowhere yet', () => {
    // 10:00 UTC on 13 March is midnight at UTC+14 (Line Islands).
    expect(latestDay(Date.UTC(2026, 2, 13, 9, 59))).toBe('2026-03-13');
    expect(latestDay(Date.UTC(2026, 2, 13, 10))).toBe('2026-03-14');
  });
  const day = (ahead: number) => new Date(Date.parse(latestDay()) + ahead * 86_400_000).toISOString().slice(0, 10);
  it.each([
    ['a value', (d: string) => `measurements: [{ id: a, what: it, value: { value: 2 mm, on: ${d} } }]`],
    ['a stage', (d: string) => `stages: { welded: ${d} }`],
    ['the beginning', (d: string) => `started: ${d}`],
    ['a document', (d: string) => `papers: [{ file: a.pdf, shows: it is, dated: ${d} }]`],
  ])('of %s is an error where it is to come, and none today', async (_, note) => {
    expect(await problems(note(day(1)))).toEqual([expect.stringContaining(`${day(1)}, which is still to come`)]);
    expect(await problems(note(day(0)))).toEqual([]);
  });
  it('on which something was agreed, too', async () => {
    const agreed = (d: string) =>
      `${people}load-cases: [{ id: t, says: made up, force: 4 kN, agreed-with: R. Ansell, agreed-on: ${d} }]\n`;
    expect(await problems('', agreed(day(1)))).toEqual([expect.stringContaining('still to come')]);
    expect(await problems('', agreed(day(0)))).toEqual([]);
  });
});

describe('a person', () => {
  const by = (name: string) => `measurements: [{ id: a, what: it, value: { value: 2 mm, by: ${name} } }]`;
  it.each(['JO', 'J. Okoro', 'J. Okoro (invented)', 'R. Ansell'])('of build.md is known: %s', async (name) => {
    expect(await problems(by(name))).toEqual([]);
    expect(await problems(`by: ${name}`)).toEqual([]);
  });
  it.each(['JX', 'j. okoro', 'Ansell'])('that it does not name is an error: %s', async (name) => {
    expect(await problems(by(name))).toEqual([`notes/010-a.md:4:61 \`${name}\``]);
    expect(await problems(`by: ${name}`)).toEqual([`notes/010-a.md:4:5 \`${name}\``]);
  });
  it('is not asked for where it names nobody', async () => {
    expect(await problems(by('JX'), '')).toEqual([]);
  });
});
