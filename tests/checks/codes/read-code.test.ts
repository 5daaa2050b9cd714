import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { assemble, CodeError, readFiles, sha256 } from '../../../src/checks/codes/codes.js';
import { readCode } from '../../../src/checks/codes/read-code.js';

const head = `code: own
title: An invented code
country: XX
documents:
  rule: { title: An invented rule, edition: '3', status: not-known }
facts:
  thickness: { unit: mm, says: thickness of the sheet }
sections:
  A: { title: Sheet }
items:
`;
const item = (lines: string) => `${head}  - id: sheet.gap
    title: Gap of the sheet
    asks: The gap of the sheet.
    section: A
    rests: { document: rule, clause: '7', basis: published }
    raised-by: [general]
    kind: limit
    unit: mm
${lines}`;
const cases = (bound: string) =>
  item(`    cases:
      - ${bound}
`);
const problems = (text: string) =>
  readCode(text, 'codes/own.yaml').problems.map((p) => `${p.file}:${p.line}:${p.column} ${p.found} | ${p.expected}`);

test('a code in the right form is read, with the names of documents put in full', () => {
  const { code, problems: none } = readCode(cases('max: 2.5 * thickness'), 'codes/own.yaml');
  expect(none).toEqual([]);
  expect(code!.items[0]!.rests).toEqual({
    document: 'An invented rule',
    edition: '3',
    status: 'not-known',
    clause: '7',
    basis: 'published',
  });
});

describe('what is wrong is named with file, line and column', () => {
  test.each([
    [
      'a key misspelt',
      item('    cases: []\n    figures: which one\n'),
      'codes/own.yaml:20:5 the key `figures` | one of the keys known here',
    ],
    ['an unknown kind of note', item('    cases: []\n').replace('[general]', '[engines]'), 'codes/own.yaml:16:17'],
    [
      'an unknown basis',
      item('    cases: []\n').replace('basis: published', 'basis: hearsay'),
      'codes/own.yaml:15:50 `hearsay`',
    ],
    ['an unreadable expression', cases('max: 2.5 * (thickness'), 'codes/own.yaml:20:30'],
    [
      'a name that no fact has',
      cases('max: 2.5 * width'),
      'codes/own.yaml:20:20 the name `width` | a fact that is listed under `facts`',
    ],
    ['a name borrowed from the language', cases('max: 2.5 * valueof'), 'codes/own.yaml:20:20 the name `valueof`'],
    ['a sum of two dimensions', cases('max: thickness + 2 kg'), 'codes/own.yaml:20:26 two dimensions joined by `+`'],
    ['a bound of another dimension', cases('max: 2.5 kg'), 'codes/own.yaml:20:14 a mass in `2.5 kg` | a length in mm'],
    [
      'a bound without a unit',
      cases("max: '2.5'"),
      'codes/own.yaml:20:14 a ratio or a number in `2.5` | a length in mm',
    ],
    [
      'a comparison as a bound',
      cases('max: thickness < 2 mm'),
      'codes/own.yaml:20:14 `thickness < 2 mm` | a number with its unit',
    ],
    [
      'a number as a condition',
      cases('{ applies: { when: thickness }, max: 2 mm }'),
      'codes/own.yaml:20:28 `thickness` | a comparison',
    ],
    [
      'a unit that is none',
      cases('max: 2 mm').replace('unit: mm\n    cases', 'unit: mn\n    cases'),
      'codes/own.yaml:18:11 the unit `mn` | a unit that is known here',
    ],
    [
      'a section that is not listed',
      cases('max: 2 mm').replace('section: A', 'section: B'),
      'codes/own.yaml:14:14 section `B` | one of A',
    ],
    ['bounds beside a reason not to apply', cases('{ max: 2 mm, not-applicable: never }'), 'codes/own.yaml:20:9'],
    ['a case with nothing in it', cases('{ applies: { categories: [MA] } }'), 'codes/own.yaml:20:9'],
    ['YAML that is none', `${head}  - id: [\n`, 'codes/own.yaml:1'],
  ])('%s', (_, text, expected) => {
    expect(problems(text).join('\n')).toContain(expected);
  });
});

describe('several files', () => {
  const files = (...texts: string[]) =>
    texts.map((text, i) => ({ file: `${i}.yaml`, ...readCode(text, `${i}.yaml`) }) as never);
  const message = (...texts: string[]) => {
    try {
      assemble(files(...texts));
      return 'no problem';
    } catch (error) {
      if (!(error instanceof CodeError)) throw error;
      return error.message;
    }
  };
  const good = cases('max: 2 mm');

  test('an id that two files use', () => {
    expect(message(good, good)).toContain('1.yaml:11:9 found a second `sheet.gap`');
  });
  test('a link that lands nowhere', () => {
    expect(
      message(
        good.replace(
          '    kind: limit',
          '    leads-to: [{ item: sheet.other, because: it follows, basis: practice }]\n    kind: limit',
        ),
      ),
    ).toContain('0.yaml:17:24 found a link to `sheet.other`');
  });
  test('one name with two meanings', () => {
    expect(message(good, good.replace('sheet.gap', 'sheet.two').replace('unit: mm, says', 'unit: m, says'))).toContain(
      '1.yaml:7:14 found a second meaning of `thickness`',
    );
  });
  test('a state sets where its items apply', () => {
    const codes = assemble(files(good.replace('country: XX', 'country: XX\njurisdiction: XA')));
    expect(codes.items.get('sheet.gap')?.applies).toEqual({ jurisdictions: ['XA'] });
  });
});

test('a folder is read in the order of its files, and a fault in one stops it with its place', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'codes-'));
  try {
    await writeFile(join(folder, 'b.yaml'), cases('max: 2 mm'));
    await writeFile(join(folder, 'a.yaml'), cases('max: 2 mm').replace('sheet.gap', 'sheet.first'));
    await writeFile(join(folder, 'notes.txt'), 'not a code');
    expect((await readFiles(folder)).map((f) => f.file)).toEqual(['a.yaml', 'b.yaml']);
    await writeFile(join(folder, 'a.yaml'), cases('max: 2 kg'));
    await expect(readFiles(folder)).rejects.toThrow('src/checks/codes/a.yaml:20:14 found a mass');
  } finally {
    await rm(folder, { recursive: true });
  }
});

test('a file is taken from the compiled form as long as its text is the same', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'codes-'));
  try {
    const text = cases('max: 2 mm');
    const compiled = pathToFileURL(join(folder, 'codes.json'));
    const { code } = readCode(text, 'a.yaml');
    await writeFile(join(folder, 'a.yaml'), text);
    await writeFile(
      compiled,
      JSON.stringify({ 'a.yaml': { sha256: sha256(text), code: { ...code!, title: 'As compiled' } } }),
    );
    expect((await readFiles(folder, compiled))[0]!.code.title).toBe('As compiled');
    await writeFile(join(folder, 'a.yaml'), text.replace('2 mm', '3 mm'));
    const [changed] = await readFiles(folder, compiled);
    expect([changed!.code.title, changed!.code.items[0]]).toMatchObject([
      'An invented code',
      { cases: [{ max: '3 mm' }] },
    ]);
  } finally {
    await rm(folder, { recursive: true });
  }
});
