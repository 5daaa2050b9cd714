import { deflateSync, inflateSync } from 'node:zlib';
import {
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, it } from 'vitest';
import { readPrinted } from '../../src/print/printed-pdf.js';
import { writePdf } from '../../src/print/write-pdf.js';

const written = async (pdf: PDFDocument) => Buffer.concat(await writePdf({ pdf, structure: Promise.resolve([]) }));

it('loses no object of a document that fills several object streams', async () => {
  const pdf = await PDFDocument.create();
  pdf.addPage();
  const refs = Array.from({ length: 2500 }, (_, i) => pdf.context.register(pdf.context.obj({ Number: i })));
  const read = await PDFDocument.load(await written(pdf));
  expect(refs.map((ref) => Number(read.context.lookup(ref, PDFDict).get(PDFName.of('Number'))?.toString()))).toEqual(
    refs.map((_, i) => i),
  );
});

it('writes what another reader finds by its cross-reference stream alone, whatever lies between', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.oneof(fc.uint8Array({ maxLength: 300 }), fc.string(), fc.integer()), { maxLength: 40 }),
      async (values) => {
        const pdf = await PDFDocument.create({ updateMetadata: false });
        const page = pdf.addPage([200, 300]);
        for (const value of values) {
          if (value instanceof Uint8Array)
            page.node.set(
              PDFName.of(`X${values.indexOf(value)}`),
              pdf.context.register(PDFRawStream.of(pdf.context.obj({ Filter: 'FlateDecode' }), deflateSync(value))),
            );
          else
            page.node.set(
              PDFName.of(`X${values.indexOf(value)}`),
              pdf.context.register(typeof value === 'string' ? PDFHexString.fromText(value) : PDFNumber.of(value)),
            );
        }
        pdf.setTitle('ünten');
        const bytes = await written(pdf);
        const other = await getDocument({ data: new Uint8Array(bytes), verbosity: 0, stopAtErrors: true }).promise;
        expect([other.numPages, (await other.getPage(1)).view]).toEqual([1, [0, 0, 200, 300]]);
        expect(((await other.getMetadata()).info as { Title: string }).Title).toBe('ünten');
        const again = (await PDFDocument.load(bytes)).getPage(0).node;
        for (const value of values) {
          const read = again.lookup(PDFName.of(`X${values.indexOf(value)}`));
          if (read instanceof PDFRawStream)
            expect([...inflateSync(read.getContents())]).toEqual([...(value as Uint8Array)]);
          else
            expect(
              read instanceof PDFHexString || read instanceof PDFString
                ? read.decodeText()
                : (read as PDFNumber).asNumber(),
            ).toBe(value);
        }
      },
    ),
  );
}, 120_000);

it('leaves the structure of a printed document as it is, with or without reading it', async () => {
  const elements = Array.from(
    { length: 30 },
    (_, i) => `<</Type /StructElem\n/S /P\n/P ${i === 0 ? 3 : 4} 0 R\n/T (part ${i})>>`,
  );
  const objects = [
    '<</Type /Catalog\n/Pages 2 0 R\n/StructTreeRoot 3 0 R>>',
    '<</Type /Pages\n/Count 0\n/Kids []>>',
    '<</Type /StructTreeRoot\n/K 4 0 R>>',
    ...elements,
  ];
  const [photo, odd] = [
    '<</Subtype /Image\n/Length 31>> stream\nany byte: \u00ff endstream\nendobj\n1\nendstream',
    '<</Length 99 0 R>> stream\nindirect\nendstream',
  ];
  const plain = plainPdf([...objects, photo, odd]);
  const printed = await readPrinted(plain);
  expect((await printed.structure).flatMap(({ numbers }) => numbers).sort((a, b) => a - b)).toEqual(
    elements.map((_, i) => i + 4),
  );
  expect(printed.pdf.context.enumerateIndirectObjects()).toHaveLength(5);
  const { context } = await PDFDocument.load(Buffer.concat(await writePdf(printed)), { updateMetadata: false });
  const said = context
    .enumerateIndirectObjects()
    .map(([ref, object]) => [ref.objectNumber, object.toString().replace(/\s/g, '')])
    .slice(0, 33);
  expect(said).toEqual(objects.map((object, i) => [i + 1, object.replace(/\s/g, '')]));
  const contents = [34, 35].map((n) =>
    Buffer.from((context.lookup(PDFRef.of(n)) as PDFRawStream).getContents()).toString('latin1'),
  );
  expect(contents).toEqual(['any byte: \u00ff endstream\nendobj\n1', 'indirect']);
  // A browser that one day writes its cross-references otherwise is read whole.
  const whole = await readPrinted(await written(await PDFDocument.load(plain)));
  expect(await whole.structure).toEqual([]);
  expect(
    whole.pdf.context
      .enumerateIndirectObjects()
      .filter(([, object]) => object instanceof PDFDict && object.get(PDFName.of('Type')) === PDFName.of('StructElem')),
  ).toHaveLength(30);
});

/** A PDF with one cross-reference table (ISO 32000-1:2008, 7.5.4), its objects from the last to the first. */
function plainPdf(objects: readonly string[]): Uint8Array {
  let file = '%PDF-1.4\n';
  const offsets: number[] = [];
  for (let n = objects.length; n >= 1; n -= 1) {
    offsets[n] = file.length;
    file += `${n} 0 obj\n${objects[n - 1]}\nendobj\n`;
  }
  const rows = objects.map((_, i) => `${String(offsets[i + 1]).padStart(10, '0')} 00000 n \n`);
  const table = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows.join('')}trailer\n<</Size ${objects.length + 1}\n/Root 1 0 R>>\n`;
  return Buffer.from(`${file}${table}startxref\n${file.length}\n%%EOF\n`, 'latin1');
}
