import { deflateSync } from 'node:zlib';
import { PDFDocument, PDFName, PDFRawStream, type PDFRef } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { openDocument } from '../../../src/app/verify/document.js';
import { textOfPages } from '../../../src/app/verify/page-text.js';
import { hasOwnDigest } from '../../../src/print/finish.js';

/** Documents that somebody sent, made to hold up or exhaust whoever verifies them (ISO 32000-1:2008, 7.3.8, 7.5.7, 8.10, 9.10.3). */

/** In milliseconds, for what takes none to speak of. */
const atOnce = 8000;
async function inTime<T>(work: () => T | Promise<T>): Promise<T> {
  const began = performance.now();
  const result = await work();
  expect(performance.now() - began).toBeLessThan(atOnce);
  return result;
}

async function holding(stream: (pdf: PDFDocument) => PDFRawStream): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.addPage([200, 200]).node.set(PDFName.of('Contents'), pdf.context.register(stream(pdf)));
  // Only a file that is read, and none that is written, has such a stream.
  const file = Buffer.from(await pdf.save({ useObjectStreams: false }));
  const at = file.indexOf('ObjXtm');
  if (at !== -1) file.write('ObjStm', at);
  return file;
}
const zeros = deflateSync(Buffer.alloc(200 * 2 ** 20), { level: 9 });

describe('a document that unpacks to more than memory holds', () => {
  it.each<[string, object, Buffer]>([
    ['by one stream', { Filter: 'FlateDecode' }, zeros],
    ['by objects', { Type: 'ObjXtm', N: 1, First: 4, Filter: 'FlateDecode' }, zeros],
    ['packed twice', { Filter: ['FlateDecode', 'FlateDecode'] }, deflateSync(zeros)],
    ['by a growing list', { Filter: 'LZWDecode' }, Buffer.from([0x80, 0x0b, 0x60, 0x50])],
  ])('is refused in time: %s', async (_, dict, bytes) => {
    const file = await holding((pdf) => PDFRawStream.of(pdf.context.obj(dict as never) as never, bytes));
    expect(await inTime(() => openDocument(file))).toEqual({
      problem: expect.stringMatching(/may unpack to more than a document can be|cannot be read as a PDF/),
    });
  });

  it('is refused where each of many is small, and broken at its end', async () => {
    const part = deflateSync(Buffer.alloc(30 * 2 ** 20), { level: 9 });
    part[part.length - 1]! ^= 1;
    const pdf = await PDFDocument.create();
    pdf.addPage([200, 200]);
    for (let i = 0; i < 12; i++)
      pdf.context.register(PDFRawStream.of(pdf.context.obj({ Filter: 'FlateDecode' }) as never, part));
    const file = await pdf.save({ useObjectStreams: false });
    expect(await inTime(() => openDocument(file))).toEqual({ problem: expect.stringContaining('may unpack to more') });
  });
});

describe('the text of a page', () => {
  async function withForms(depth: number, innermost: string): Promise<PDFDocument> {
    const pdf = await PDFDocument.create();
    const form = (content: string, within: Record<string, PDFRef>) =>
      pdf.context.register(
        pdf.context.stream(content, {
          Type: 'XObject',
          Subtype: 'Form',
          BBox: [0, 0, 1, 1],
          Resources: { XObject: within },
        }),
      );
    let one = form(innermost, {});
    for (let i = 0; i < depth; i++) one = form('/A Do /A Do', { A: one });
    const { node } = pdf.addPage([200, 200]);
    node.set(PDFName.of('Contents'), pdf.context.register(pdf.context.stream('/A Do')));
    node.set(PDFName.of('Resources'), pdf.context.obj({ XObject: { A: one } }));
    return pdf;
  }

  it('is read in time where forms draw forms that draw forms, and bounded', async () => {
    const [empty, small, much] = [
      await withForms(60, 'q Q'),
      await withForms(3, '<0041> Tj'),
      await withForms(60, '<0041> Tj'),
    ];
    expect(await inTime(() => textOfPages(empty))).toEqual(['']);
    expect(textOfPages(small)).toEqual(['‹41›'.repeat(8)]);
    await inTime(() => expect(() => textOfPages(much)).toThrow('more than fits on a page'));
  });

  it.each([
    ['<0000> <FFFFFFFFFFFF> <0041>', 'A'],
    [`${'<0000> <FFFF> <0041>\n'.repeat(3000)}`, 'more than once'],
    [`beginbfchar `.repeat(40_000), 'more codes'],
  ])('is read in time whatever a font says of its codes (%#)', async (ranges, says) => {
    const pdf = await PDFDocument.create();
    const cmap = pdf.context.register(pdf.context.stream(`1 beginbfrange\n${ranges}\nendbfrange`));
    const { node } = pdf.addPage([200, 200]);
    node.set(PDFName.of('Contents'), pdf.context.register(pdf.context.stream('/F 9 Tf <0000> Tj')));
    node.set(PDFName.of('Resources'), pdf.context.obj({ Font: { F: { Type: 'Font', ToUnicode: cmap } } }));
    await inTime(() => {
      if (says === 'A') expect(textOfPages(pdf)).toEqual(['A']);
      else expect(() => textOfPages(pdf)).toThrow(says);
    });
  });
});

describe('the digest that a file bears', () => {
  it('is looked for in time, whatever stands there', async () => {
    const id = `/ID[<${'0'.repeat(32)}><${'A'.repeat(32)}>]`;
    for (const text of [id.repeat(200_000), '/ID'.repeat(2_000_000), `/ID${' '.repeat(5_000_000)}`.repeat(3)])
      expect(await inTime(() => hasOwnDigest(Buffer.from(text)))).toBe(false);
  });
});
