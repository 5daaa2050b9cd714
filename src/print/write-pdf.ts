import { PDFName, PDFNumber, PDFStream, type PDFContext, type PDFDict, type PDFObject } from '@cantoo/pdf-lib';
import { pack, packObjects } from './object-streams.js';
import type { PrintedPdf } from './printed-pdf.js';

/** Where an object lies: at a byte of the file, or at a place in an object stream. */
type Entry = readonly [type: 0 | 1 | 2, where: number, place: number];
type Dictionary = Record<string, PDFObject | string | number | number[] | Record<string, number>>;

/** The bytes of a PDF in pieces, with object streams and a cross-reference stream (ISO 32000-1:2008, 7.5.7 and 7.5.8). The same objects give the same bytes. */
export async function writePdf({ pdf, structure }: PrintedPdf): Promise<Buffer[]> {
  await pdf.flush();
  const { context } = pdf;
  const objects = context.enumerateIndirectObjects();
  const together = packObjects(objects.filter(([, object]) => !(object instanceof PDFStream)).map(([ref, object]) => ({ number: ref.objectNumber, bytes: bytesOf(object) })));

  const entries: Entry[] = [[0, 0, 65535]];
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n%\x81\x81\x81\x81\n\n', 'latin1')];
  let length = parts[0]!.length;
  const put = (number: number, { dict, contents }: { dict: PDFDict; contents: Uint8Array }) => {
    entries[number] = [1, length, 0];
    dict.set(PDFName.of('Length'), PDFNumber.of(contents.length));
    for (const part of [Buffer.from(`${number} 0 obj\n`), bytesOf(dict), Buffer.from('\nstream\n'), viewOf(contents), Buffer.from('\nendstream\nendobj\n\n')]) {
      parts.push(part);
      length += part.length;
    }
  };
  for (const [ref, object] of objects) if (object instanceof PDFStream) put(ref.objectNumber, { dict: object.dict, contents: object.getContents() });
  let last = context.largestObjectNumber;
  for (const { numbers, first, contents } of [...(await together), ...(await structure)]) {
    last += 1;
    numbers.forEach((number, place) => (entries[number] = [2, last, place]));
    put(last, { dict: dictionary(context, { Type: 'ObjStm', N: numbers.length, First: first }), contents });
  }
  const begins = length;
  last += 1;
  entries[last] = [1, begins, 0];
  put(last, await crossReferences(context, entries));
  return [...parts, Buffer.from(`startxref\n${begins}\n%%EOF`)];
}

/** Each row as its difference from the one above (PNG filter 2): neighbours differ by little. */
async function crossReferences(context: PDFContext, entries: readonly (Entry | undefined)[]): Promise<{ dict: PDFDict; contents: Uint8Array }> {
  const widths = [1, 4, 2];
  const columns = 7;
  const rows = Buffer.alloc(entries.length * columns);
  for (let number = 0; number < entries.length; number += 1) {
    const [type, where, place] = entries[number] ?? [0, 0, 65535];
    rows.writeUInt8(type, number * columns);
    rows.writeUInt32BE(where, number * columns + 1);
    rows.writeUInt16BE(place, number * columns + 5);
  }
  const filtered = Buffer.alloc(entries.length * (columns + 1));
  for (let at = 0; at < rows.length; at += 1) {
    const row = Math.floor(at / columns);
    if (at % columns === 0) filtered[at + row] = 2;
    filtered[at + row + 1] = (rows[at]! - (row === 0 ? 0 : rows[at - columns]!)) & 0xff;
  }
  const { Root, Info, ID } = context.trailerInfo;
  const trailer = Object.fromEntries(Object.entries({ Root, Info, ID }).filter(([, value]) => value !== undefined));
  return { dict: dictionary(context, { Type: 'XRef', Size: entries.length, W: widths, DecodeParms: { Predictor: 12, Columns: columns }, ...trailer }), contents: await pack(filtered) };
}

const dictionary = (context: PDFContext, entries: Dictionary): PDFDict => context.obj({ ...entries, Filter: 'FlateDecode' });

const viewOf = (bytes: Uint8Array): Buffer => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);

function bytesOf(object: PDFObject): Buffer {
  const bytes = Buffer.alloc(object.sizeInBytes());
  object.copyBytesInto(bytes, 0);
  return bytes;
}
