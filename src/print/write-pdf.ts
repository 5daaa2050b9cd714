import { type PDFContext, type PDFDict, PDFName, PDFNumber, type PDFObject, PDFStream } from '@cantoo/pdf-lib';
import { CrossReferences } from './cross-references.js';
import { packObjects } from './object-streams.js';
import type { PrintedPdf } from './printed-pdf.js';

type Entries = Record<string, PDFObject | string | number | number[] | Record<string, number>>;

/** The bytes of a PDF in pieces, with object streams and a cross-reference stream (ISO 32000-1:2008, 7.5.7 and 7.5.8). The same objects give the same bytes. */
export async function writePdf({ pdf, structure }: PrintedPdf): Promise<Buffer[]> {
  await pdf.flush();
  const { context } = pdf;
  const objects = context.enumerateIndirectObjects();
  const together = packObjects(
    objects
      .filter(([, object]) => !(object instanceof PDFStream))
      .map(([ref, object]) => ({ number: ref.objectNumber, bytes: bytesOf(object) })),
  );
  const packed = [...(await together), ...(await structure)];
  const own = context.largestObjectNumber + packed.length + 1;

  const lie = new CrossReferences(own + 1);
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n%\x81\x81\x81\x81\n\n', 'latin1')];
  let length = parts[0]!.length;
  const put = (number: number, dict: PDFDict, contents: Uint8Array) => {
    lie.alone(number, length);
    dict.set(PDFName.of('Length'), PDFNumber.of(contents.length));
    for (const part of [
      Buffer.from(`${number} 0 obj\n`),
      bytesOf(dict),
      Buffer.from('\nstream\n'),
      viewOf(contents),
      Buffer.from('\nendstream\nendobj\n\n'),
    ]) {
      parts.push(part);
      length += part.length;
    }
  };
  for (const [ref, object] of objects)
    if (object instanceof PDFStream) put(ref.objectNumber, object.dict, object.getContents());
  packed.forEach(({ numbers, first, contents }, index) => {
    const stream = context.largestObjectNumber + 1 + index;
    numbers.forEach((number, place) => lie.within(number, stream, place));
    put(stream, dictionary(context, { Type: 'ObjStm', N: numbers.length, First: first }), contents);
  });
  const begins = length;
  lie.alone(own, begins);
  const { Root, Info, ID } = context.trailerInfo;
  const trailer = Object.fromEntries(Object.entries({ Root, Info, ID }).filter(([, value]) => value !== undefined));
  const { widths, columns } = CrossReferences;
  put(
    own,
    dictionary(context, {
      Type: 'XRef',
      Size: lie.size,
      W: widths,
      DecodeParms: { Predictor: 12, Columns: columns },
      ...trailer,
    }),
    await lie.packed(),
  );
  return [...parts, Buffer.from(`startxref\n${begins}\n%%EOF`)];
}

const dictionary = (context: PDFContext, entries: Entries): PDFDict =>
  context.obj({ ...entries, Filter: 'FlateDecode' });

const viewOf = (bytes: Uint8Array): Buffer => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);

function bytesOf(object: PDFObject): Buffer {
  const bytes = Buffer.alloc(object.sizeInBytes());
  object.copyBytesInto(bytes, 0);
  return bytes;
}
