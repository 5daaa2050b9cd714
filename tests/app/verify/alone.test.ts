import { createHash } from 'node:crypto';
import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { checkAlone } from '../../../src/app/verify/alone.js';
import { sha256Of, type VerifiedDocument } from '../../../src/app/verify/document.js';
import { type Manifest, manifestName } from '../../../src/history/manifest.js';
import { contentDigest, pageDigests } from '../../../src/print/page-digests.js';
import { manifest } from './made.js';

const note = Buffer.from('wall: 2.48 mm');
const paper = Buffer.from('a letter');
const entry = (path: string, bytes: Uint8Array) => ({ path, bytes: bytes.length, sha256: sha256Of(bytes) });

/** Bytes with the digest that a finished file bears: of all of them, with zeros where it stands. */
function withDigest(text: string): Buffer {
  const file = (id: string) => `%PDF-1.7 ${text} /ID [<${'A'.repeat(32)}> <${id}>]`;
  const id = createHash('sha256')
    .update(file('0'.repeat(32)))
    .digest('hex')
    .slice(0, 32)
    .toUpperCase();
  return Buffer.from(file(id));
}

async function pdfOf(...sizes: readonly (readonly [number, number])[]): Promise<PDFDocument> {
  const pdf = await PDFDocument.create();
  for (const size of sizes) pdf.addPage([...size]);
  return pdf;
}

/** A document whose parts all fit, and what is changed of it. */
async function document(change: { manifest?: Partial<Manifest> } & Partial<Omit<VerifiedDocument, 'manifest'>> = {}) {
  const pdf = await pdfOf([100, 200], [100, 201]);
  const pages = pageDigests(pdf);
  const whole = manifest({
    inputs: [entry('notes/010.md', note), entry('papers/letter.pdf', paper)],
    attachments: [
      { ...entry('010.md', note), of: 'notes/010.md' },
      { ...entry('letter.pdf', paper), of: 'papers/letter.pdf' },
      entry('data.json', note),
    ],
    pages,
    content: contentDigest(pages),
    ...change.manifest,
  });
  const bytes = withDigest('whole');
  const attached = new Map([
    [manifestName, Buffer.from('{}')],
    ['010.md', note],
    ['letter.pdf', paper],
    ['data.json', note],
  ]);
  const checks = checkAlone({ bytes, sha256: '', pdf, attached, twice: [], ...change, manifest: whole });
  return Object.fromEntries(checks.map((check) => [check.name, check]));
}

describe('a document of itself', () => {
  it('fits where nothing was altered', async () => {
    const found = await document();
    expect(Object.keys(found)).toEqual(['file', 'attachments', 'pages']);
    for (const check of Object.values(found)) expect(check).toMatchObject({ state: 'matches', list: [] });
    expect(found['attachments']!.says).toBe('3 attached files are those that were attached');
    expect(found['pages']!.says).toBe('2 pages show what was printed');
  });

  it('does not bear the digest of its bytes once one of them was altered', async () => {
    const altered = withDigest('whole');
    altered[10]! ^= 1;
    const { file, attachments, pages } = await document({ bytes: altered });
    expect(file).toMatchObject({ state: 'differs', list: ['print or fetch it again'] });
    expect([attachments!.state, pages!.state]).toEqual(['matches', 'matches']);
  });

  it.each<[string, Parameters<typeof document>[0], string]>([
    [
      'a file of other content',
      {
        attached: new Map([
          ['010.md', paper],
          ['letter.pdf', paper],
          ['data.json', note],
        ]),
      },
      '010.md is not the file that was attached',
    ],
    [
      'a file that is gone',
      {
        attached: new Map([
          ['letter.pdf', paper],
          ['data.json', note],
        ]),
      },
      '010.md is not attached any more',
    ],
    [
      'a file that was put in',
      {
        attached: new Map([
          [manifestName, note],
          ['010.md', note],
          ['letter.pdf', paper],
          ['data.json', note],
          ['more.txt', note],
        ]),
      },
      'more.txt was attached later',
    ],
    ['two files of one name', { twice: ['010.md'] }, '010.md is attached more than once'],
    [
      'a file that is no copy of the input that it is listed as',
      { manifest: { inputs: [entry('notes/010.md', paper), entry('papers/letter.pdf', paper)] } },
      '010.md is listed as notes/010.md, which is listed with another digest',
    ],
    [
      'an input that is not listed',
      { manifest: { inputs: [entry('papers/letter.pdf', paper)] } },
      '010.md is listed as notes/010.md, which is listed with another digest',
    ],
  ])('tells %s', async (_, change, says) => {
    const { file, attachments, pages } = await document(change);
    expect(attachments).toMatchObject({ state: 'differs', list: [says] });
    expect([file!.state, pages!.state]).toEqual(['matches', 'matches']);
  });

  it('tells a page that shows something else', async () => {
    const { attachments, pages } = await document({ pdf: await pdfOf([100, 200], [100, 202]) });
    expect(pages).toMatchObject({ state: 'differs', list: ['page 2 shows something else than was printed'] });
    expect(attachments!.state).toBe('matches');
  });

  it('tells a page that was taken out or put in', async () => {
    const less = await document({ pdf: await pdfOf([100, 200]) });
    expect(less['pages']).toMatchObject({ state: 'differs', list: ['it has 1 pages, 2 were printed'] });
    const more = await document({ pdf: await pdfOf([100, 200], [100, 201], [100, 202]) });
    expect(more['pages']).toMatchObject({ state: 'differs', list: ['it has 3 pages, 2 were printed'] });
  });

  it('tells a list of pages that was altered with the page', async () => {
    const pdf = await pdfOf([100, 200], [100, 202]);
    const { pages } = await document({ pdf, manifest: { pages: pageDigests(pdf) } });
    expect(pages).toMatchObject({ state: 'differs', list: ['the list of pages in the manifest was altered'] });
  });
});
