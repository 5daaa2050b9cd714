import { deflateSync } from 'node:zlib';
import { type PDFDict, PDFDocument, PDFName, PDFRawStream, PDFString, StandardFonts } from '@cantoo/pdf-lib';
import { expect, it } from 'vitest';
import { contentDigest, pageDigests } from '../../src/print/page-digests.js';

interface Look {
  words?: string;
  link?: string;
  size?: [number, number];
  rotate?: number;
  font?: StandardFonts;
  /** Further objects that no page shows. */
  more?: number;
  packed?: boolean;
}

/** A document of two pages; the first looks as it is told to. */
async function printed({
  words = 'Wall 2.48 mm',
  link = 'note-a',
  size = [200, 300],
  rotate,
  font,
  more = 0,
  packed,
}: Look = {}) {
  const pdf = await PDFDocument.create();
  for (let i = 0; i < more; i++) pdf.context.register(PDFString.of(`nobody sees ${i}`));
  const page = pdf.addPage(size);
  page.setFont(await pdf.embedFont(font ?? StandardFonts.Helvetica));
  if (rotate !== undefined) page.node.set(PDFName.of('Rotate'), pdf.context.obj(rotate));
  const content = `BT /F1 12 Tf 20 200 Td (${words}) Tj ET`;
  const stream = packed
    ? PDFRawStream.of(pdf.context.obj({ Filter: 'FlateDecode' }) as PDFDict, deflateSync(content))
    : PDFRawStream.of(pdf.context.obj({}) as PDFDict, Buffer.from(content));
  page.node.set(PDFName.of('Contents'), pdf.context.register(stream));
  page.node.set(
    PDFName.of('Annots'),
    pdf.context.obj([{ Type: 'Annot', Subtype: 'Link', Rect: [0, 0, 10, 10], Dest: PDFString.of(link), P: page.ref }]),
  );
  pdf.addPage([200, 300]);
  return pdf;
}
const digests = async (look?: Look) => pageDigests(await printed(look));

it('are one a page, and the same for the same look', async () => {
  const first = await digests();
  expect(first).toHaveLength(2);
  expect(first.every((d) => /^[0-9a-f]{64}$/.test(d))).toBe(true);
  expect(await digests()).toEqual(first);
});

it.each<[string, Look]>([
  ['the words', { words: 'Wall 2.46 mm' }],
  ['a link', { link: 'note-b' }],
  ['the size', { size: [201, 300] }],
  ['the rotation', { rotate: 90 }],
  ['the font', { font: StandardFonts.Courier }],
])('differ on that page alone with %s', async (_, look) => {
  const [before, after] = [await digests(), await digests(look)];
  expect([after[0] === before[0], after[1] === before[1]]).toEqual([false, true]);
});

it.each<[string, Look]>([
  ['how the content is packed', { packed: true }],
  ['the numbers of the objects', { more: 3 }],
])('do not depend on %s', async (_, look) => {
  expect(await digests(look)).toEqual(await digests());
});

it('follow an object that refers back to itself to its end', async () => {
  const pdf = await printed();
  const [page] = pdf.getPages();
  const ref = pdf.context.nextRef();
  pdf.context.assign(ref, pdf.context.obj({ Next: ref, Says: PDFString.of('round') }));
  page!.node.set(PDFName.of('Annots'), pdf.context.obj([ref]));
  const [round] = pageDigests(pdf);
  pdf.context.assign(ref, pdf.context.obj({ Next: ref, Says: PDFString.of('square') }));
  expect(pageDigests(pdf)[0]).not.toBe(round);
});

it('take what a page inherits', async () => {
  const inherits = async (width: number) => {
    const pdf = await printed();
    const [page] = pdf.getPages();
    page!.node.delete(PDFName.of('MediaBox'));
    page!.node.Parent()!.set(PDFName.of('MediaBox'), pdf.context.obj([0, 0, width, 300]));
    return pageDigests(pdf)[0];
  };
  expect(await inherits(200)).not.toBe(await inherits(210));
});

it('give one digest for all pages, in their order', () => {
  expect(contentDigest(['a', 'b'])).not.toBe(contentDigest(['b', 'a']));
  expect(contentDigest(['a', 'b'])).toBe(contentDigest(['a', 'b']));
  expect(contentDigest(['ab'])).not.toBe(contentDigest(['a', 'b']));
});
