import { PDFCrossRefStream, PDFDict, PDFDocument, PDFName, PDFRef } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { writePdf } from '../../src/print/write-pdf.js';

it('keeps the entries of a cross-reference stream in the order of their objects, in whatever order they come', async () => {
  const { context } = await PDFDocument.create();
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 5000 }), { maxLength: 200 }), (numbers) => {
      const stream = PDFCrossRefStream.create(PDFDict.withContext(context));
      for (const n of numbers) stream.addUncompressedEntry(PDFRef.of(n), n);
      const { entries } = stream as unknown as { entries: { ref: PDFRef }[] };
      // The stream begins with the free entry of object 0 (ISO 32000-1:2008, 7.5.4).
      expect(entries.map((e) => e.ref.objectNumber)).toEqual([0, ...numbers.sort((a, b) => a - b)]);
    }),
  );
});

it('loses no object of a document that fills several object streams', async () => {
  const pdf = await PDFDocument.create();
  pdf.addPage();
  const refs = Array.from({ length: 2500 }, (_, i) => pdf.context.register(pdf.context.obj({ Number: i })));
  const read = await PDFDocument.load(await writePdf(pdf));
  expect(refs.map((ref) => Number(read.context.lookup(ref, PDFDict).get(PDFName.of('Number'))?.toString()))).toEqual(refs.map((_, i) => i));
});
