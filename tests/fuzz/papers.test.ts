import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { activeContent } from '../../src/print/active-pdf.js';
import { pagesOnly } from '../../src/print/pages-only.js';
import { readPdfBytes, textOfPages } from '../print/read-pdf.js';
import { good, stream, updated, words, written, writtenInStreams } from '../print/written-pdf.js';

/** PDF papers changed at a few places: never a crash, and of those that are taken an independent viewer reads the same as of the copy that is attached. */

const limits = {
  numRuns: Number(process.env['FUZZ_RUNS'] ?? 3000),
  interruptAfterTimeLimit: Number(process.env['FUZZ_SECONDS'] ?? 20) * 1000,
  markInterruptAsFailure: false,
};
const count = { tried: 0, taken: 0 };
afterAll(() => console.log(`papers tried: ${count.tried}, of which ${count.taken} were taken`));

const two = {
  ...good,
  2: '<< /Type /Pages /Kids [3 0 R 7 0 R] /Count 2 >>',
  6: stream('', words('235 MPa')),
  7: good[3]!.replace('4 0 R', '6 0 R'),
};
const demo = 'builds/sedge/papers';
const some = readdirSync(demo).find((name) => name.endsWith('.pdf'))!;
const papers = [
  written(two),
  updated(written(two), { 4: stream('', words('later')) }),
  writtenInStreams(two),
  readFileSync(join(demo, some)),
];

const pieces = [
  ...[
    '<<',
    '>>',
    '[',
    ']',
    '(',
    ')',
    '<',
    '>',
    '/A',
    '/S',
    '/Length 3',
    '/Kids',
    '/Type',
    '%',
    '#',
    '-',
    '.',
    ' ',
    '\n',
    '\x0b',
  ],
  ...[
    'R',
    'obj',
    'endobj',
    'stream',
    'endstream',
    'xref',
    'trailer',
    'startxref',
    '%%EOF',
    'null',
    '3 0 R',
    '6 0 R',
    '0',
    '9',
  ],
];
const where = fc.nat(2 ** 31);
const change = fc.oneof(
  { weight: 2, arbitrary: fc.record({ at: where, digit: fc.nat(9) }) },
  fc.record({ at: where, put: fc.nat(255).map((byte) => Buffer.from([byte])) }),
  fc.record({ at: where, put: fc.constantFrom(...pieces).map((piece) => Buffer.from(piece, 'latin1')) }),
  fc.record({ at: where, from: where, length: fc.nat(60) }),
);

it('changed at random, is refused, or its copy says what the paper says', { timeout: 24 * 3600 * 1000 }, async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.nat(papers.length - 1),
      fc.array(change, { minLength: 1, maxLength: 3 }),
      async (which, changes) => {
        const paper = papers[which]!;
        const changed = Buffer.from(paper);
        for (const one of changes) {
          const at = one.at % paper.length;
          if ('digit' in one) turn(changed, at, one.digit);
          else if ('put' in one) changed.set(one.put.subarray(0, paper.length - at), at);
          else changed.copyWithin(at, one.from % paper.length, (one.from % paper.length) + one.length);
        }
        count.tried++;
        if ((await activeContent(changed)) !== undefined) return;
        count.taken++;
        expect(await textOf(await pagesOnly(changed))).toEqual(await textOf(changed));
      },
    ),
    limits,
  );
});

/** The next digit behind a place. */
function turn(paper: Buffer, at: number, digit: number): void {
  const found = paper.subarray(at).findIndex((byte) => byte >= 48 && byte <= 57);
  if (found !== -1) paper[at + found] = 48 + digit;
}

async function textOf(paper: Uint8Array): Promise<string[]> {
  return textOfPages(await readPdfBytes(paper));
}
