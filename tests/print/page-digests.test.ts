import { deflateSync } from 'node:zlib';
import {
  type PDFArray,
  type PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  type PDFPage,
  PDFRawStream,
  type PDFRef,
} from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { contentDigest, pageDigests } from '../../src/print/page-digests.js';

/** Digests of pages that are made here as objects, without a browser (ISO 32000-1, 7.7.3.3 and 12.5). */

interface Made {
  pdf: PDFDocument;
  pages: [PDFPage, PDFPage];
  font: PDFDict;
  picture: PDFRef;
  content: PDFRef;
  link: PDFDict;
  note: PDFDict;
}

const name = (text: string) => PDFName.of(text);

/** Two pages: words, a picture, a link to the second page and one to a web page on the first; words on the second. */
async function made(change: (made: Made) => void = () => {}): Promise<PDFDocument> {
  const pdf = await PDFDocument.create();
  const { context } = pdf;
  const pages = [pdf.addPage([300, 400]), pdf.addPage([300, 400])] as [PDFPage, PDFPage];
  const font = context.obj({ Type: 'Font', Subtype: 'Type1', BaseFont: 'Helvetica' });
  const fontRef = context.register(font);
  const picture = context.register(
    context.stream(new Uint8Array([0xff, 0xd8, 1, 2, 3, 0xff, 0xd9]), {
      Type: 'XObject',
      Subtype: 'Image',
      Width: 1,
      Height: 1,
      Filter: 'DCTDecode',
    }),
  );
  const words = (text: string) => context.register(context.flateStream(`BT /F1 10 Tf (${text}) Tj ET`));
  const content = words('wall 2.48 mm');
  const link = context.obj({
    Type: 'Annot',
    Subtype: 'Link',
    Rect: [10, 10, 50, 20],
    A: { S: 'URI', URI: PDFHexString.fromText('https://example.org/a') },
  });
  const note = context.obj({ Type: 'Annot', Subtype: 'Link', Rect: [10, 30, 50, 40], P: pages[0].ref });
  note.set(name('Dest'), context.obj([pages[1].ref, name('Fit')]));
  pages[0].node.set(name('Resources'), context.obj({ Font: { F1: fontRef }, XObject: { X1: picture } }));
  pages[0].node.set(name('Contents'), context.obj([content]));
  pages[0].node.set(name('Annots'), context.obj([context.register(link), context.register(note)]));
  pages[1].node.set(name('Resources'), context.obj({ Font: { F1: fontRef } }));
  pages[1].node.set(name('Contents'), words('second page'));
  change({ pdf, pages, font, picture, content, link, note });
  return pdf;
}

const digests = async (change?: (made: Made) => void) => pageDigests(await made(change));
const put = (of: 'pages' | 'second', key: string, value: (made: Made) => PDFObject) => (m: Made) =>
  m.pages[of === 'pages' ? 0 : 1].node.set(name(key), value(m));
const box = ({ pdf }: Made) => pdf.context.obj([0, 0, 300, 399]);
const rawOf = ({ pdf, picture }: Made) => pdf.context.lookup(picture) as PDFRawStream;

describe('the digest of a page', () => {
  it('is of one page, and the same when it is made again', async () => {
    const one = await digests();
    expect(one).toHaveLength(2);
    expect(one[0]).toMatch(/^[0-9a-f]{64}$/);
    expect(one[0]).not.toBe(one[1]);
    expect(await digests()).toEqual(one);
  });

  it.each<[string, (made: Made) => unknown]>([
    ['its size', put('pages', 'MediaBox', box)],
    ['what is cut off', put('pages', 'CropBox', box)],
    ['the way it is turned', put('pages', 'Rotate', () => PDFNumber.of(90))],
    ['its words', ({ pdf, content }) => pdf.context.assign(content, pdf.context.flateStream('BT (2.49) Tj ET'))],
    [
      'more that is drawn',
      ({ pages, pdf }) =>
        (pages[0].node.Contents() as PDFArray).push(pdf.context.register(pdf.context.flateStream('0 0 9 9 re f'))),
    ],
    [
      'where a link leads',
      ({ link }) => (link.get(name('A')) as PDFDict).set(name('URI'), PDFHexString.fromText('https://example.org/b')),
    ],
    ['where a link stands', ({ link, pdf }) => link.set(name('Rect'), pdf.context.obj([10, 10, 50, 21]))],
    [
      'the order of what is drawn',
      ({ pages, pdf, content }) =>
        pages[0].node.set(
          name('Contents'),
          pdf.context.obj([pdf.context.register(pdf.context.flateStream('q Q')), content]),
        ),
    ],
    [
      'a link to a page that is one of this document',
      ({ note, pdf, pages }) => note.set(name('Dest'), pdf.context.obj([pages[0].ref, name('Fit')])),
    ],
    ['a link less', ({ pages }) => pages[0].node.Annots()!.remove(0)],
    ['its links altogether', ({ pages }) => pages[0].node.delete(name('Annots'))],
    [
      'one byte of a picture',
      (m) =>
        m.pdf.context.assign(
          m.picture,
          PDFRawStream.of(rawOf(m).dict, new Uint8Array([0xff, 0xd8, 1, 2, 4, 0xff, 0xd9])),
        ),
    ],
    ['how a picture is read', (m) => rawOf(m).dict.set(name('Width'), PDFNumber.of(2))],
    ['a picture that nothing can read any more', (m) => rawOf(m).dict.set(name('Filter'), name('JPXDecode'))],
  ])('tells that %s is another one', async (_, change) => {
    const [before, after] = [await digests(), await digests(change)];
    expect(after[0]).not.toBe(before[0]);
    expect(after[1]).toBe(before[1]);
  });

  it('tells it on every page that uses it', async () => {
    const before = await digests();
    const after = await digests(({ font }) => font.set(name('BaseFont'), name('Courier')));
    expect(after.map((d, i) => d === before[i])).toEqual([false, false]);
  });

  it('tells on which page it is; a page that a link leads to counts for the link', async () => {
    const before = await digests();
    const turned = await digests(put('second', 'Rotate', () => PDFNumber.of(90)));
    expect(turned.map((d, i) => d === before[i])).toEqual([false, false]);
    const without = (m: Made) => m.pages[0].node.delete(name('Annots'));
    const [plain, plainTurned] = [
      await digests(without),
      await digests((m) => {
        without(m);
        put('second', 'Rotate', () => PDFNumber.of(90))(m);
      }),
    ];
    expect(plainTurned.map((d, i) => d === plain[i])).toEqual([true, false]);
  });

  it('counts what a page inherits (ISO 32000-1, 7.7.3.4)', async () => {
    const inherited = (width: number) => (m: Made) => {
      for (const page of m.pages) page.node.delete(name('MediaBox'));
      m.pages[0].node.Parent()!.set(name('MediaBox'), m.pdf.context.obj([0, 0, width, 400]));
    };
    const own = await digests();
    expect((await digests(inherited(300)))[1]).toBe(own[1]);
    expect((await digests(inherited(301)))[1]).not.toBe(own[1]);
  });

  it.each<[string, (made: Made) => unknown]>([
    ['the tags of its text', put('pages', 'StructParents', () => PDFNumber.of(3))],
    ['the tag of a link', ({ link }) => link.set(name('StructParent'), PDFNumber.of(7))],
    ['the page that a link stands on', ({ link, pages }) => link.set(name('P'), pages[1].ref)],
    ['what an object hangs from', ({ link, pages }) => link.set(name('Parent'), pages[1].ref)],
    [
      'a content that is not packed',
      ({ pdf, content }) => pdf.context.assign(content, pdf.context.stream('BT /F1 10 Tf (wall 2.48 mm) Tj ET')),
    ],
    [
      'a content that is packed harder',
      ({ pdf, content }) =>
        pdf.context.assign(
          content,
          PDFRawStream.of(
            pdf.context.obj({ Filter: 'FlateDecode', Length: 1 }),
            deflateSync('BT /F1 10 Tf (wall 2.48 mm) Tj ET', { level: 9 }),
          ),
        ),
    ],
    [
      'a content that is packed with a predictor of none',
      ({ pdf, content }) =>
        pdf.context.assign(
          content,
          PDFRawStream.of(
            pdf.context.obj({ Filter: 'FlateDecode', DecodeParms: { Predictor: 1 } }),
            deflateSync('BT /F1 10 Tf (wall 2.48 mm) Tj ET'),
          ),
        ),
    ],
    [
      'the order of keys',
      ({ link }) => {
        const rect = link.get(name('Rect'))!;
        link.delete(name('Rect'));
        link.set(name('Rect'), rect);
      },
    ],
    [
      'a number of its own for what stood in place',
      ({ link, pdf }) =>
        link.set(name('A'), pdf.context.obj({ URI: PDFHexString.fromText('https://example.org/a'), S: 'URI' })),
    ],
  ])('does not count %s', async (_, change) => expect(await digests(change)).toEqual(await digests()));

  it('does not depend on numbers of objects and on how the file is written', async () => {
    const pdf = await made();
    const before = pageDigests(pdf);
    for (const useObjectStreams of [true, false])
      expect(
        pageDigests(await PDFDocument.load(await pdf.save({ useObjectStreams }), { updateMetadata: false })),
      ).toEqual(before);
    const later = await PDFDocument.create();
    for (let i = 0; i < 5; i += 1) later.context.register(PDFNumber.of(i));
    for (const page of await later.copyPages(pdf, [0, 1])) later.addPage(page);
    expect(pageDigests(later)[1]).toBe(before[1]);
  });

  // Regression: documents that were printed before carry such digests.
  it('is the same in every version', async () => {
    expect((await digests()).map((digest) => digest.slice(0, 16))).toEqual(['a8cf72eea5a3bd7e', '9709abdf84b008d1']);
  });

  it('of a document is one over all, in their order', () => {
    expect(contentDigest(['a', 'b'])).toMatch(/^[0-9a-f]{64}$/);
    expect(contentDigest(['a', 'b'])).not.toBe(contentDigest(['b', 'a']));
    expect(contentDigest(['a', 'b'])).not.toBe(contentDigest(['ab']));
  });
});
