import { describe, expect, it } from 'vitest';
import { load } from '../../../src/app/load.js';
import type { Problem } from '../../../src/project/problem.js';
import { buildFile, folderWith } from '../../project/scratch.js';

/** A made-up gap of the workshop that no kind of note has a field for; notes of cooling and exhaust raise it. */
const limits = (bound = 'min: 10 mm') => `items:
  - id: own.gap
    kind: limit
    title: Gap at the loom
    asks: How near the loom is.
    section: own
    rests: { document: workshop sheet (invented), basis: own-copy }
    raised-by: [cooling, exhaust]
    unit: mm
    cases: [{ ${bound} }]
`;
const note = (kind: string, fields: string) => `---\nkind: ${kind}\ntitle: Tried\n${fields}\n---\n\nWords.\n`;

async function loaded(notes: Readonly<Record<string, string>>, bound?: string) {
  const folder = folderWith({
    'build.md': buildFile,
    'limits.yaml': limits(bound),
    ...Object.fromEntries(Object.entries(notes).map(([name, text]) => [`notes/${name}.md`, text])),
  });
  return load(folder, folder);
}

async function gaps(...typed: string[]) {
  const kinds = ['cooling', 'exhaust'];
  const read = await loaded(
    Object.fromEntries(
      typed.map((text, i) => [`0${i + 1}0-a`, note(kinds[i]!, text && `measured: { own.gap: ${text} }`)]),
    ),
  );
  if (!('build' in read)) throw new Error(JSON.stringify(read.problems));
  return read.evaluation.findings.filter((f) => f.item === 'own.gap').map((f) => [f.note, f.outcome]);
}

async function problems(kind: string, fields: string): Promise<Problem[]> {
  return (await loaded({ '010-a': note(kind, fields) })).problems;
}

describe('values of several notes for one item', () => {
  it('are each judged: 12 and 2 mm against at least 10 mm', async () => {
    expect(await gaps('12.0 mm', '2.0 mm')).toEqual([
      ['010-a', 'conforms'],
      ['020-a', 'does-not-conform'],
    ]);
    expect(await gaps('2.0 mm', '12.0 mm')).toEqual([
      ['010-a', 'does-not-conform'],
      ['020-a', 'conforms'],
    ]);
  });

  it('of which one has none: what is there is judged, in whichever note it stands', async () => {
    expect(await gaps('', '2.0 mm')).toEqual([['020-a', 'does-not-conform']]);
    expect(await gaps('', '')).toEqual([['010-a', 'not-measured']]);
  });

  it('at the limit exactly, and one each side, with the uncertainty of a stated ±', async () => {
    const one = async (text: string) => (await gaps(text))[0]![1];
    expect(await one('10.1 ± 0.1 mm')).toBe('conforms');
    expect(await one('10.0 ± 0.1 mm')).toBe('inconclusive');
    expect(await one('9.8 ± 0.1 mm')).toBe('does-not-conform');
  });
});

it('a key left empty states nothing yet', async () => {
  expect(await gaps('')).toEqual([['010-a', 'not-measured']]);
  for (const empty of ['measured:\n  own.gap:', 'measured:', 'answers:\n  own.gap:'])
    expect(await problems('cooling', empty)).toEqual([]);
});

describe('a value that nothing would read is an error at its place', () => {
  it('for an item that the kind has a field for', async () => {
    expect(await problems('engine', 'capacity: 3136 cm3\nmeasured: { engine.capacity: 2000 cm3 }')).toMatchObject([
      {
        file: 'notes/010-a.md',
        line: 5,
        column: 13,
        found: expect.stringContaining('a note of this kind has fields of its own for'),
        expected: expect.stringContaining('`capacity`'),
      },
    ]);
  });

  it('for one whose field is still empty, too', async () => {
    expect(await problems('driveline', 'measured: { driveline.critical-speed: 7000 rpm }')).toMatchObject([
      { line: 4, column: 13, found: expect.stringContaining('`driveline.critical-speed`') },
    ]);
  });

  it('for one that the note does not raise', async () => {
    expect(await problems('seating', 'measured: { own.gap: 12 mm }')).toMatchObject([
      {
        line: 4,
        column: 13,
        found: 'a value for `own.gap` (Gap at the loom), which this note does not ask for',
        expected: 'it in a note of kind cooling, exhaust',
      },
    ]);
  });

  it('of another dimension: a mass, a bare number', async () => {
    expect(await problems('cooling', 'measured: { own.gap: 12 kg }')).toMatchObject([
      { line: 4, column: 22, found: 'a mass in `12 kg` for `own.gap`', expected: 'a length in mm' },
    ]);
    expect(await problems('cooling', 'measured: { own.gap: 12 }')).toMatchObject([
      { found: 'a ratio or a number in `12` for `own.gap`', expected: 'a length in mm' },
    ]);
  });

  it('for a question or a proof', async () => {
    expect(await problems('engine', 'measured: { engine.brakes: 3 mm }')).toMatchObject([
      { line: 4, column: 13, found: 'a value for `engine.brakes`, which asks for an answer' },
    ]);
  });

  it('for an item that nobody has', async () => {
    expect(await problems('cooling', 'measured: { own.gpa: 12 mm }')).toMatchObject([
      { line: 4, column: 13, hint: 'did you mean `own.gap`?' },
    ]);
  });
});

it.each([
  ['max: 25 mm', '2.0 mm'],
  ['below: 25 mm', '2.0 mm'],
])('a place of %s judges %s the other way round', async (bound, text) => {
  const read = await loaded({ '010-a': note('cooling', `measured: { own.gap: ${text} }`) }, bound);
  expect('build' in read && read.evaluation.findings.find((f) => f.item === 'own.gap')?.outcome).toBe('conforms');
});
