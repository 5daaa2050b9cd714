import { promisify } from 'node:util';
import { constants, deflate } from 'node:zlib';
import { PDFRawStream, PDFStream, type PDFContext, type PDFObject } from '@cantoo/pdf-lib';
import type { PackedObject, PrintedPdf } from './printed-pdf.js';

/** A tagged document has several hundred objects a page, most of them alike: in large streams they take a third less room. */
const objectsPerStream = 1000;

/** Where an object lies: at a byte of the file, or at a place in an object stream. */
type Entry = readonly [type: 0 | 1 | 2, where: number, place: number];

/**
 * The bytes of a PDF, with object streams and a cross-reference stream (ISO 32000-1:2008, 7.5.7 and 7.5.8), packed on all
 * cores. The same objects give the same bytes.
 */
export async function writePdf({ pdf, elements }: PrintedPdf): Promise<Buffer> {
  await pdf.flush();
  const { context } = pdf;
  const objects = context.enumerateIndirectObjects();
  const alone = objects.filter(([, object]) => object instanceof PDFStream);
  const together = [...objects.filter(([, object]) => !(object instanceof PDFStream)).map(([ref, object]) => ({ number: ref.objectNumber, bytes: bytesOf(object) })), ...elements];
  together.sort((a, b) => a.number - b.number);

  const entries: Entry[] = [[0, 0, 65535]];
  const parts: Uint8Array[] = [Buffer.from('%PDF-1.7\n%\x81\x81\x81\x81\n\n', 'latin1')];
  let length = parts[0]!.length;
  const put = (number: number, object: Uint8Array) => {
    entries[number] = [1, length, 0];
    for (const part of [Buffer.from(`${number} 0 obj\n`), object, Buffer.from('\nendobj\n\n')]) {
      parts.push(part);
      length += part.length;
    }
  };
  for (const [ref, object] of alone) put(ref.objectNumber, bytesOf(object));
  let last = context.largestObjectNumber;
  for (const [chunk, stream] of await Promise.all(chunksOf(together).map(async (each) => [each, await objectStream(context, each)] as const))) {
    last += 1;
    chunk.forEach(({ number }, place) => (entries[number] = [2, last, place]));
    put(last, stream);
  }
  const begins = length;
  last += 1;
  entries[last] = [1, begins, 0];
  put(last, await crossReferenceStream(context, entries));
  return Buffer.concat([...parts, Buffer.from(`startxref\n${begins}\n%%EOF`)]);
}

function chunksOf(objects: readonly PackedObject[]): PackedObject[][] {
  return Array.from({ length: Math.ceil(objects.length / objectsPerStream) }, (_, n) => objects.slice(n * objectsPerStream, (n + 1) * objectsPerStream));
}

async function objectStream(context: PDFContext, objects: readonly PackedObject[]): Promise<Uint8Array> {
  let offset = 0;
  const index = objects.map(({ number, bytes }) => {
    const pair = `${number} ${offset}`;
    offset += bytes.length + 1;
    return pair;
  });
  const first = Buffer.from(`${index.join(' ')}\n`);
  const content = Buffer.concat([first, ...objects.flatMap(({ bytes }) => [bytes, newline])]);
  return packed(context, content, { Type: 'ObjStm', N: objects.length, First: first.length });
}

const newline = Buffer.from('\n');

/** Each row as its difference from the one above (PNG filter 2): neighbours differ by little. */
async function crossReferenceStream(context: PDFContext, entries: readonly (Entry | undefined)[]): Promise<Uint8Array> {
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
  return packed(context, filtered, { Type: 'XRef', Size: entries.length, W: widths, DecodeParms: { Predictor: 12, Columns: columns }, ...trailer });
}

async function packed(context: PDFContext, content: Uint8Array, dict: Record<string, PDFObject | string | number | number[] | Record<string, number>>): Promise<Uint8Array> {
  const contents = await promisify(deflate)(content, { level: constants.Z_BEST_COMPRESSION });
  return bytesOf(PDFRawStream.of(context.obj({ ...dict, Filter: 'FlateDecode' }), contents));
}

function bytesOf(object: PDFObject): Uint8Array {
  const bytes = new Uint8Array(object.sizeInBytes());
  object.copyBytesInto(bytes, 0);
  return bytes;
}
