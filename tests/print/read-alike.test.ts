import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { activeContent } from '../../src/print/active-pdf.js';
import { pagesOnly } from '../../src/print/pages-only.js';
import { readPdfBytes, textOfPages } from './read-pdf.js';
import { ending, good, stream, updated, words, written, writtenInStreams } from './written-pdf.js';

/**
 * PDF papers that one viewer reads otherwise than another. What files, tables, objects and pages have to be: ISO 32000-1:2008,
 * 7.3, 7.5, 7.7.3.
 */
const script = '<< /S /JavaScript /JS (app.alert\\(1\\)) >>';
const link = (action: string): string =>
  `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 99 99] /Annots [<< /Type /Annot /Subtype /Link /Rect [0 0 9 9] /A ${action} >>] >>`;
const broken = /^is no whole PDF/;
/** The words of the copy, which are those that an independent viewer finds in the paper itself. */
async function textOf(paper: Uint8Array): Promise<string[]> {
  const [before, after] = await Promise.all([paper, await pagesOnly(paper)].map(readPdfBytes));
  const text = await textOfPages(after!);
  expect(text).toEqual(await textOfPages(before!));
  return text;
}

describe('a PDF paper that is laid out as it should be', () => {
  it('is taken, and so is its later version', async () => {
    expect(await activeContent(written(good))).toBeUndefined();
    expect(await activeContent(updated(written(good), { 4: stream('', words('later')) }))).toBeUndefined();
  });
  it('is taken with its objects and its table in streams, as they are or predicted', async () => {
    expect(await activeContent(writtenInStreams(good))).toBeUndefined();
    for (const filter of [0, 1, 2, 3, 4])
      expect(
        await activeContent(
          writtenInStreams(good, {
            entries: '/Filter /FlateDecode /DecodeParms << /Predictor 12 /Columns 4 >>',
            pack: (rows) => deflateSync(pngRows(rows, 4, filter)),
          }),
        ),
      ).toBeUndefined();
  });
  it('is taken where a program of the trade wrote it: two tables of one version, one for older viewers', async () => {
    // As word processors write it (7.5.8.4): a table of no objects, with the stream and the full table behind it.
    const first = written(good).toString('latin1');
    const full = first.lastIndexOf('xref\n0 6');
    const place = first.length;
    const rows = Buffer.alloc(4 * 6);
    for (let n = 1; n < 6; n++) {
      const at = first.indexOf(`\n${n} 0 obj`) + 1;
      rows.set([1, at >> 8, at & 255, 0], 4 * n);
    }
    const both = `${first}6 0 obj\n${stream('/Type /XRef /W [1 2 1] /Size 6 /Root 1 0 R', rows)}\nendobj\n`;
    const tail = `xref\n0 0\ntrailer\n<< /Size 7 /Root 1 0 R /Prev ${full} /XRefStm ${place} >>\n${ending(both.length)}`;
    expect(await activeContent(Buffer.from(both + tail, 'latin1'))).toBeUndefined();
  });
  it('is taken where the length of a stream is an object of its own, whatever stands in the stream', async () => {
    const content = `${words('355 MPa')} % endstream endobj stream`;
    const paper = written({
      ...good,
      4: `<< /Length 6 0 R >>\nstream\n${content}\nendstream`,
      6: String(content.length),
    });
    expect(await activeContent(paper)).toBeUndefined();
    expect(await textOf(paper)).toEqual(['355 MPa']);
  });
});

describe('a PDF paper is refused', () => {
  it.each<[string, Buffer]>([
    ['with a word that is none in an object', written({ ...good, 6: '<< /S /Other /X foo >>' })],
    [
      'with a word that is none in an object its table does not lead to',
      written({ ...good, 6: '<< /X foo >>' }, { at: { 6: 'free' } }),
    ],
    ['with an object that goes on after its end', written({ ...good, 6: '<< /X [1 2' })],
    ['with an object without an end', swap(written(good), /endobj/, 'endob ')],
    ['with something behind the end of an object', swap(written(good), /endobj\n/, 'endobj)')],
    ['with something ahead of the end of an object', swap(written(good), />>\nendobj/, '>>-endobj')],
    ['with something ahead of a stream', swap(written(good), />>\nstream/, '>>+stream')],
    ['with a stream that begins on its line', swap(written(good), />>\nstream\n/, '>>\nstream ')],
    ['with a stream behind half an end of line', swap(written(good), />>\nstream\n/, '>>\nstream\r')],
    ['with words without a space', written({ ...good, 6: '[5null15 0 0]' })],
    ['with a space that is none', swap(written(good), /4 0 obj/, '4\x0b0 obj')],
    ['with a name of a zero byte', written({ ...good, 6: '<< /X /Launch#00x >>' })],
    ['with a hexadecimal text of other than digits', written({ ...good, 6: '<< /X <68zz> >>' })],
    ['with a reference to no whole number', written({ ...good, 6: '<< /X 5.5 0 R >>' })],
    ['with a reference to another version of an object', written({ ...good, 6: '<< /X 5 1 R >>' })],
    ['with a reference in the place of an object', written({ ...good, 6: '5 0 R' })],
    ['with floods of brackets', written({ ...good, 6: '['.repeat(50_000) + ']'.repeat(50_000) })],
    ['with many levels', written({ ...good, 6: '['.repeat(2_000) + ']'.repeat(2_000) })],
    ['with a stream that is damaged', written({ ...good, 4: stream('/Filter /FlateDecode', 'no deflate') })],
    [
      'with a stream that is longer than it says',
      written({ ...good, 4: `<< /Length 3 >>\nstream\n${words('355 MPa')}\nendstream` }),
    ],
    [
      'with a stream that is shorter than it says',
      written({ ...good, 4: '<< /Length 9999 >>\nstream\nq Q\nendstream' }),
    ],
    ['with a stream of no length', written({ ...good, 4: '<< >>\nstream\nq Q\nendstream' })],
  ])('%s', async (_, paper) => expect(await activeContent(paper)).toMatch(broken));

  it.each([
    ['what an action is', link('<< /S /Launch /F (calc.exe) /S /GoTo /D [3 0 R /Fit] >>')],
    ['what an action is, spelled otherwise', link('<< /S /Launch /F (calc.exe) /#53 /GoTo /D [3 0 R /Fit] >>')],
    ['where a link leads', link('<< /S /URI /URI (file:///calc.exe) /URI (https://a.example/) >>')],
    ['an action', link('<< /S /GoTo /D [3 0 R /Fit] >> /A << /S /GoTo /D [3 0 R /XYZ 0 0 0] >>')],
    ['its size', '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 99 99] /MediaBox [0 0 9 9] >>'],
  ])('that says twice %s', async (_, page) =>
    expect(await activeContent(written({ ...good, 3: page }))).toMatch(broken),
  );

  it('where what opens it stands twice, in a dictionary or in the trailer', async () => {
    const catalog = `<< /Type /Catalog /Pages 2 0 R /OpenAction ${script} /OpenAction [3 0 R /Fit] >>`;
    expect(await activeContent(written({ ...good, 1: catalog }))).toMatch(broken);
    expect(await activeContent(written(good, { trailer: '/Root 3 0 R' }))).toMatch(broken);
  });

  it.each<[string, (table: number) => string]>([
    ['does not say where its table is', (table) => `${ending(table)}startxref %c\n99999\n%%EOF\n`],
    ['says a word in its place', (table) => `${ending(table)}startxref x\n%%EOF\n`],
    ['says it in other digits', (table) => `startxref\n0x${table.toString(16)}\n%%EOF\n`],
    ['is not marked', (table) => `startxref\n${table}\n`],
    ['lies far ahead of its last byte', (table) => ending(table) + 'PK\x03\x04'.padEnd(1100, 'A')],
  ])('whose end %s', async (_, end) => expect(await activeContent(written(good, { end }))).toMatch(broken));

  it('whose object hides behind a comment, for who repairs the file', async () => {
    const before = `9 0%x\nobj << /Type /Catalog /Pages 2 0 R /OpenAction ${script} >> endobj\n`;
    expect(await activeContent(written(good, { before }))).toBe('runs a script');
    const long = `${'0'.repeat(12)}9 000000000 obj << /OpenAction ${script} >> endobj\n`;
    expect(await activeContent(written(good, { before: long }))).toBe('runs a script');
  });

  it.each<[string, Buffer]>([
    ['whose table leads back to itself', written(good, { trailer: `/Prev ${written(good).lastIndexOf('xref\n0')}` })],
    ['whose table has places in other digits', swap(written(good), /\n0000000009 00000 n/, '\n0x00000009 00000 n')],
    ['whose table has a place with an exponent', swap(written(good), /\n0000000009 00000 n/, '\n00000009e0 00000 n')],
    ['whose table names another version of an object', swap(written(good), / 00000 n/, ' 00007 n')],
    ['whose table stands beside one that tells otherwise', hybrid()],
    [
      'whose packed table has rows of no width',
      writtenInStreams(good, { entries: '/Index [0 999999999999]', pack: () => Buffer.alloc(0) }),
    ],
    ['whose packed table is cut short', writtenInStreams(good, { pack: (rows) => rows.subarray(0, -1) })],
    [
      'whose packed table goes on for ever',
      swap(writtenInStreams(good, { entries: '/Index [0 999999999999]' }), /\/W \[1 2 1\]/, '/W [0 0 0]'),
    ],
    ['whose packed table counts backwards', swap(writtenInStreams(good), /\/W \[1 2 1\]/, '/W [-1 2 1]')],
    ['whose table has a row of other length', swap(written(good), / 00000 n \n/, ' 00000 n\n')],
    ['whose table has a free row that is none', swap(written(good), /0000000000 65535 f/, '000000#000 65535 f')],
    ['whose trailer is followed by something', swap(written(good), />>\nstartxref/, '>>\n0\nstartxref')],
    ['whose packed table has rows of another kind', writtenInStreams(good, { pack: (rows) => rows.fill(3, 0, 1) })],
    [
      'whose packed objects have a space that is none',
      swap(writtenInStreams(good), /stream\n1 0 2 /, 'stream\n1 0\x0b2 '),
    ],
    [
      'whose packed objects have words between them',
      swap(writtenInStreams({ ...good, 6: '[0    ]' }), /\[0 {4}\]/, '[0]null'),
    ],
    ['whose packed objects overlap', overlapping()],
  ])('%s, within bounded time', async (_, paper) => {
    const began = performance.now();
    expect(await activeContent(paper)).toMatch(broken);
    expect(performance.now() - began).toBeLessThan(2_000);
  });

  it.each<[string, Record<number, string>]>([
    ['lead back to themselves', { 2: '<< /Type /Pages /Kids [2 0 R] /Count 1 >>' }],
    ['are reached twice', { 2: '<< /Type /Pages /Kids [3 0 R 3 0 R] /Count 2 >>' }],
    ['are counted otherwise', { 2: '<< /Type /Pages /Kids [3 0 R] /Count 7 >>' }],
    ['are none', { 2: '<< /Type /Pages /Kids [5 0 R] /Count 1 >>' }],
    ['are not there', { 2: '<< /Type /Pages /Kids [77 0 R] /Count 1 >>' }],
    ['stand in the list itself', { 2: '<< /Type /Pages /Kids [<< /Type /Page >>] /Count 1 >>' }],
    ['are nested without end', nestedPages(3_000)],
    ['are doubled at each of many levels', doubledPages(40)],
  ])('whose pages %s, within bounded time', async (_, pages) => {
    const began = performance.now();
    expect(await activeContent(written({ ...good, ...pages }))).toMatch(broken);
    expect(performance.now() - began).toBeLessThan(2_000);
  });

  it.each<[string, Record<number, string>]>([
    ['actions that lead to themselves', { 3: link('6 0 R'), 6: '[6 0 R]' }],
    ['rows of actions in rows of actions', { 3: link('10 0 R'), ...rowsOfRows(30) }],
  ])('or taken in bounded time with %s', async (_, objects) => {
    const began = performance.now();
    await activeContent(written({ ...good, ...objects }));
    expect(performance.now() - began).toBeLessThan(2_000);
  });

  it('with many streams that fail only at their end, within bounded time', async () => {
    const bomb = deflateSync(Buffer.alloc(100 * 2 ** 20), { level: 9 });
    bomb[bomb.length - 1]! ^= 1;
    const many = Object.fromEntries(
      Array.from({ length: 60 }, (_, i) => [i + 6, stream('/Filter /FlateDecode', bomb)]),
    );
    const began = performance.now();
    expect(await activeContent(written({ ...good, ...many }))).toBeDefined();
    expect(performance.now() - began).toBeLessThan(5_000);
  });
  it.each<[string, string, () => Buffer]>([
    ['spelled in digits', '[/ASCIIHexDecode /FlateDecode]', () => Buffer.from(`${bomb().toString('hex')}>`)],
    ['spelled in digits, in short', '[/AHx /Fl]', () => Buffer.from(`${bomb().toString('hex')}>`)],
    ['of equal codes', '/LZWDecode', lzwBomb],
    ['of runs, spelled in digits', '[/AHx /RL]', () => Buffer.from(`${'8100'.repeat(2 ** 21)}>`)],
  ])('that unpacks to more than a paper can be, %s, within bounded time', async (_, filter, make) => {
    const paper = written({ ...good, 4: stream(`/Filter ${filter}`, make()) });
    const began = performance.now();
    expect(await activeContent(paper)).toBe('unpacks to more than a paper can be');
    expect(performance.now() - began).toBeLessThan(10_000);
  });
  it('of digits and comments that could be the beginning of an object, within bounded time', async () => {
    const began = performance.now();
    for (const flood of ['1%', '1 ', '1 1%\n', '1%\n%\n'])
      await activeContent(written({ ...good, 4: stream('', flood.repeat(2 ** 20)) }));
    expect(performance.now() - began).toBeLessThan(5_000);
  });
});

describe('the pages of a PDF paper that are attached', () => {
  it('are those that its table leads to, not the last that are written', async () => {
    const later = `4 0 obj\n${stream('', words('235 MPa'))}\nendobj\n`;
    expect(await textOf(written(good, { after: later }))).toEqual(['355 MPa']);
  });
  it('are those of its newest version', async () => {
    expect(await textOf(updated(written(good), { 4: stream('', words('235 MPa')) }))).toEqual(['235 MPa']);
  });
  it('start from the newest root, whatever trailer is written last', async () => {
    const other = {
      8: '<< /Type /Catalog /Pages 9 0 R >>',
      9: '<< /Type /Pages /Kids [10 0 R] /Count 1 >>',
      10: good[3]!.replace('2 0 R', '9 0 R').replace('4 0 R', '11 0 R'),
      11: stream('', words('235 MPa')),
    };
    const file = updated(written(good), other, { root: 8 });
    expect(await textOf(file)).toEqual(['235 MPa']);
    // Another table and its trailer, to which nothing leads.
    const stray = written(
      { ...good, ...other },
      { end: (table) => `${ending(table)}xref\n0 0\ntrailer\n<< /Size 12 /Root 8 0 R >>\n${ending(table)}` },
    );
    expect(await textOf(stray)).toEqual(['355 MPa']);
  });
  it('leave out an object that its table takes away', async () => {
    const both = good[3]!.replace('4 0 R', '[4 0 R 6 0 R]');
    const gone = written({ ...good, 3: both, 6: stream('', words('235 MPa')) }, { at: { 6: 'free' } });
    expect(await textOf(gone)).toEqual(['355 MPa']);
  });
});

const swap = swapped;
function swapped(file: Buffer, what: RegExp, by: string): Buffer {
  const text = file.toString('latin1');
  expect(text).toMatch(what);
  return Buffer.from(text.replace(what, by), 'latin1');
}

const bomb = (): Buffer => deflateSync(Buffer.alloc(200 * 2 ** 20), { level: 9 });

/** Codes of 9 to 12 bits (7.4.4.2): each new one stands for a byte more than the one before, then the longest again and again. */
function lzwBomb(): Buffer {
  const bits: string[] = [];
  let next = 258;
  const put = (code: number): void => {
    bits.push(code.toString(2).padStart(next >= 2047 ? 12 : next >= 1023 ? 11 : next >= 511 ? 10 : 9, '0'));
  };
  for (let n = 0; n < 20; n++) {
    next = 258;
    bits.push((256).toString(2).padStart(n === 0 ? 9 : 12, '0'));
    put(0);
    for (; next < 4094; next++) put(next);
  }
  const text = bits.join('');
  return Buffer.from(text.match(/.{8}/g)!.map((byte) => Number.parseInt(byte, 2)));
}

/** Packed objects, of which the second lies within the first. */
function overlapping(): Buffer {
  const catalog = '<< /Type /Catalog /Pages 2 0 R /X << /Type /Pages /Kids [3 0 R] /Count 1 >> >>';
  return writtenInStreams(
    { ...good, 1: catalog },
    {
      index: (bodies) =>
        `1 0 2 ${bodies.indexOf('/X ') + 3} 3 ${bodies.indexOf('<< /Type /Page ')} 5 ${bodies.indexOf('<< /Type /Font')} `,
    },
  );
}

/** A table and a stream for the same version, of which each leads to another page. */
function hybrid(): Buffer {
  const file = written(good).toString('latin1');
  const first = file.slice(0, file.lastIndexOf('xref\n0'));
  const rows = Buffer.alloc(4 * 6);
  const other = `4 0 obj\n${stream('', words('235 MPa'))}\nendobj\n`;
  rows.set([1, first.length >> 8, first.length & 255, 0], 16);
  const table = `6 0 obj\n${stream('/Type /XRef /W [1 2 1] /Size 6 /Root 1 0 R', rows)}\nendobj\n`;
  return written(good, { after: other + table, trailer: `/XRefStm ${first.length + other.length}` });
}

function nestedPages(levels: number): Record<number, string> {
  const nodes = Array.from({ length: levels }, (_, i) => [
    i + 10,
    `<< /Type /Pages /Kids [${i === levels - 1 ? 3 : i + 11} 0 R] /Count 1 >>`,
  ]);
  return { 2: '<< /Type /Pages /Kids [10 0 R] /Count 1 >>', ...Object.fromEntries(nodes) };
}

function doubledPages(levels: number): Record<number, string> {
  const nodes = Array.from({ length: levels }, (_, i) => {
    const next = i === levels - 1 ? 3 : i + 11;
    return [i + 10, `<< /Type /Pages /Kids [${next} 0 R ${next} 0 R] /Count ${2 ** (levels - i)} >>`];
  });
  return { 2: `<< /Type /Pages /Kids [10 0 R] /Count ${2 ** levels} >>`, ...Object.fromEntries(nodes) };
}

function rowsOfRows(levels: number): Record<number, string> {
  return Object.fromEntries(
    Array.from({ length: levels }, (_, i) => [i + 10, `[${`${i + 11} 0 R `.repeat(10)}]`]).concat([
      [levels + 10, '<< /S /GoTo /D [3 0 R /Fit] >>'],
    ]),
  );
}

/** Rows of a table as PNG predicts them (PNG specification, third edition, 9.2), for samples of one byte. */
function pngRows(rows: Buffer, width: number, filter: number): Buffer {
  const out: number[] = [];
  for (let r = 0; r * width < rows.length; r++) {
    out.push(filter);
    for (let i = 0; i < width; i++) {
      const value = (row: number, column: number) => (row < 0 || column < 0 ? 0 : rows[row * width + column]!);
      const [a, b, c] = [value(r, i - 1), value(r - 1, i), value(r - 1, i - 1)];
      const p = a + b - c;
      const nearest = [a, b, c].reduce((best, one) => (Math.abs(p - one) < Math.abs(p - best) ? one : best));
      const guess = [0, a, b, Math.floor((a + b) / 2), nearest][filter]!;
      out.push((value(r, i) - guess) & 255);
    }
  }
  return Buffer.from(out);
}
