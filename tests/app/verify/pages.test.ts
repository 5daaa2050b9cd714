import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { decodePDFRawStream, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import type { VerifiedDocument } from '../../../src/app/verify/document.js';
import { textOfPages } from '../../../src/app/verify/page-text.js';
import { comparedPrints } from '../../../src/app/verify/printed.js';
import { textDifference } from '../../../src/app/verify/text-difference.js';
import { fontFaces, fontsDirectory } from '../../../src/platform/fonts.js';
import { hasOwnDigest } from '../../../src/print/finish.js';
import { contentDigest, pageDigests } from '../../../src/print/page-digests.js';
import { printDocument } from '../../../src/print/pdf.js';
import { temporary } from '../../history/throwaway.js';
import { details, writePage } from '../../print/fixtures.js';
import { readPdf, textOfPages as textByOther } from '../../print/read-pdf.js';

const look = `${fontFaces(pathToFileURL(fontsDirectory).href)} body { font: 10pt/1.4 var(--font-text); } math { font-family: var(--font-math); } code { font-family: var(--font-mono); } .next { break-before: page; } .faint { opacity: 0.4; }
  @page { size: A4; margin: 20mm; @bottom-center { font: 8pt 'Noto Sans'; content: 'Page ' counter(page) ' of ' counter(pages); } }`;
const body = `<h1 id="top">Wall of 2.48 mm (fifth office, affine)</h1><p>Größe ≤ 3 Ω, “quoted” – ½ · Ärger <i>italic</i> <b>bold</b> <code>code [a]</code></p>
  <table><caption>Values</caption><thead><tr><th>Part</th><th>Wall</th></tr></thead><tbody><tr><td>floor</td><td>2.48 mm</td></tr></tbody></table>
  <p class="next faint">Drawn through a layer: 110 mm. <a href="#top">To the top</a></p><math display="block"><mi>W</mi><mo>=</mo><mfrac><mi>I</mi><mi>y</mi></mfrac></math>
  <p class="next"><img src="photo.jpg" alt="A grey picture" width="200" height="150"></p>`;

const folder = temporary();
const file = join(folder, 'out.pdf');
let bytes: Buffer;
beforeAll(async () => {
  await sharp({ create: { width: 400, height: 300, channels: 3, background: '#888' } })
    .jpeg()
    .toFile(join(folder, 'photo.jpg'));
  const html = writePage(folder, body, look);
  await printDocument({
    ...details,
    html,
    directory: folder,
    out: file,
    attachments: [
      {
        name: 'note.md',
        mime: 'text/markdown',
        relationship: 'Source',
        description: 'A note',
        bytes: Buffer.from('Words'),
      },
    ],
  });
  bytes = readFileSync(file);
});
const opened = () => PDFDocument.load(bytes, { updateMetadata: false });
const tight = (text: string) => text.normalize('NFKC').replace(/\s+/g, '');

/** Writes the PDF anew with one stream changed, as a forger would who keeps everything else in order. */
async function forged(change: (content: string) => string | undefined): Promise<PDFDocument> {
  const pdf = await opened();
  for (const [ref, object] of pdf.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFRawStream)) continue;
    const isPicture = object.dict.get(PDFName.of('Filter')) === PDFName.of('DCTDecode');
    const content = Buffer.from(isPicture ? object.getContents() : decodePDFRawStream(object).decode()).toString(
      'latin1',
    );
    const changed = change(content);
    if (changed === undefined) continue;
    pdf.context.assign(
      ref,
      isPicture
        ? PDFRawStream.of(object.dict, Buffer.from(changed, 'latin1'))
        : pdf.context.flateStream(Buffer.from(changed, 'latin1')),
    );
    return PDFDocument.load(await pdf.save(), { updateMetadata: false });
  }
  throw new Error('nothing was changed');
}

describe('the text of a page', () => {
  test('is what an independent reader finds', async () => {
    const pages = textOfPages(await opened());
    expect(pages.map(tight)).toEqual((await textByOther(await readPdf(file))).map(tight));
    expect(pages).toHaveLength(3);
    expect(pages[0]).toContain('Größe ≤ 3 Ω, “quoted” – ½ · Ärger');
    expect(pages[1]).toContain('Drawn through a layer: 110 mm.');
  });
});

describe('the digest of a page', () => {
  test('does not depend on how the file is packed or its objects are numbered', async () => {
    const pdf = await opened();
    const digests = pageDigests(pdf);
    expect(new Set(digests).size).toBe(3);
    const packed = await PDFDocument.load(await pdf.save({ useObjectStreams: false }), { updateMetadata: false });
    expect(pageDigests(packed)).toEqual(digests);
    expect(contentDigest(digests)).toMatch(/^[0-9a-f]{64}$/);
  });

  test('tells on which page a figure was altered', async () => {
    const before = pageDigests(await opened());
    // The glyphs of one run, with the code of one swapped for that of another.
    const altered = await forged((content) =>
      content.includes('Tj') && /<0013> Tj/.test(content) ? content.replace('<0013> Tj', '<0014> Tj') : undefined,
    );
    const after = pageDigests(altered);
    expect(after.map((d, i) => d === before[i])).toEqual([false, true, true]);
    expect(tight(textOfPages(altered)[0]!)).not.toBe(tight(textOfPages(await opened())[0]!));
  });

  test('tells that a picture was altered by one byte', async () => {
    const before = pageDigests(await opened());
    const altered = await forged((content) =>
      content.startsWith('\xff\xd8') ? `${content.slice(0, -3)}\x00${content.slice(-2)}` : undefined,
    );
    expect(pageDigests(altered).map((d, i) => d === before[i])).toEqual([true, true, false]);
  });
});

describe('two prints by different browsers', () => {
  const printed = async (browser: string, wall: string, width: string) => {
    const place = temporary();
    const html = writePage(
      place,
      `<div style="width:${width}"><p>Printed by ${browser}. The wall of the new tube is ${wall}, measured with the caliper on a cut edge that was cleaned to bright metal.</p></div>`,
      look,
    );
    await printDocument({ ...details, html, directory: place, out: join(place, 'out.pdf') });
    const pdf = await PDFDocument.load(readFileSync(join(place, 'out.pdf')), { updateMetadata: false });
    return {
      pdf,
      sha256: browser,
      manifest: { browser, pictures: 'any' },
      attached: new Map(),
    } as unknown as VerifiedDocument;
  };

  test('say the same wherever their lines break, but for the name of the browser', async () => {
    const [one, other] = [
      await printed('HeadlessChrome/146.0.1', '2.48 mm', '60mm'),
      await printed('HeadlessChrome/147.0.2', '2.48 mm', '110mm'),
    ];
    const [text, pictures, details] = comparedPrints(one, other);
    expect(text).toMatchObject({ name: 'print', state: 'matches', list: [] });
    expect([pictures, details]).toMatchObject([
      { name: 'pictures', state: 'unchecked' },
      { name: 'details', state: 'unchecked' },
    ]);
  });

  test('are never called the same where only the picture library differs: its pictures were not compared', async () => {
    const one = await printed('A/1', '2.90 mm', '60mm');
    const other = { ...one, sha256: 'another', manifest: { ...one.manifest, pictures: 'another version' } };
    expect(comparedPrints(one, other).map((c) => [c.name, c.state])).toEqual([
      ['print', 'matches'],
      ['pictures', 'unchecked'],
      ['details', 'unchecked'],
    ]);
  });

  test('by the same versions report pages, pictures, attachments and the rest apart', async () => {
    const one = await printed('A/1', '2.90 mm', '60mm');
    const states = (other: VerifiedDocument) => comparedPrints(one, other).map((c) => `${c.name} ${c.state}`);
    expect(states({ ...one })).toEqual(['print matches']);
    expect(states({ ...one, sha256: 'another' })).toEqual([
      'print matches',
      'pictures matches',
      'carried matches',
      'details differs',
    ]);
    expect(states({ ...one, sha256: 'another', attached: new Map([['a', Buffer.from('x')]]) })).toContain(
      'carried differs',
    );
    const words = await printed('A/1', '2.40 mm', '60mm');
    expect(states({ ...words, sha256: 'another', manifest: one.manifest })).toEqual([
      'print differs',
      'pictures differs',
      'carried matches',
      'details differs',
    ]);
  });

  test('are told apart by one altered figure', async () => {
    const [one, other] = [await printed('A/1', '2.90 mm', '60mm'), await printed('B/2', '2.40 mm', '110mm')];
    expect(comparedPrints(one, other)[0]).toMatchObject({
      state: 'differs',
      list: [expect.stringMatching(/^page 1 says “.*tube is 2\.90 mm.*”, printed again it says “.*tube is 2\.40 mm/)],
    });
  });
});

describe('where two texts part', () => {
  test('is told with words around it; spaces and ligatures make no difference', () => {
    expect(textDifference('a fine  wall', 'a ﬁne\nwall')).toBeUndefined();
    expect(textDifference('', '')).toBeUndefined();
    expect(textDifference('the wall is 2.48 mm thick', 'the wall is 2.84 mm thick')).toEqual({
      one: 'the wall is 2.48 mm thick',
      other: 'the wall is 2.84 mm thick',
    });
    expect(textDifference('2 mm', '2 mm more')).toEqual({ one: '2 mm', other: '2 mm more' });
    const long = 'word '.repeat(100);
    expect(textDifference(`${long}2.4 mm ${long}`, `${long}2.9 mm ${long}`)).toEqual({
      one: expect.stringMatching(/^….*2\.4 mm.*…$/),
      other: expect.stringMatching(/^….*2\.9 mm.*…$/),
    });
  });

  test('is found for any two texts that differ in more than spaces, and for no others', () => {
    const letters = fc.string({ unit: fc.constantFrom('a', 'b', ' '), maxLength: 12 });
    fc.assert(
      fc.property(
        letters,
        letters,
        (a, b) => (textDifference(a, b) === undefined) === (a.replaceAll(' ', '') === b.replaceAll(' ', '')),
      ),
    );
  });
});

describe('the digest that a file bears', () => {
  test('is true of the file as it was written, and of no other', () => {
    expect(hasOwnDigest(bytes)).toBe(true);
    for (const at of [20, bytes.length >> 1, bytes.length - 200]) {
      const flipped = Buffer.from(bytes);
      flipped[at]! ^= 1;
      expect(hasOwnDigest(flipped)).toBe(false);
    }
    expect(hasOwnDigest(Buffer.concat([bytes, Buffer.from('\n% more')]))).toBe(false);
    expect(hasOwnDigest(Buffer.from('%PDF-1.7'))).toBe(false);
  });
});
