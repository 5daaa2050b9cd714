import { constants, deflateSync, inflateSync } from 'node:zlib';
import { type PDFDict, type PDFDocument, PDFName, PDFNumber, PDFRawStream } from '@cantoo/pdf-lib';

/**
 * The browser writes every picture that is no JPEG in three colours of eight bits. One that is grey throughout becomes one
 * of greys, in no more bits than tell its greys apart: the same dots in half the room, and on paper in black alone.
 */
export function packGreys(pdf: PDFDocument): void {
  for (const [ref, object] of pdf.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFRawStream) || !isPlainPicture(object.dict)) continue;
    const [width, height] = [numberAt(object.dict, 'Width'), numberAt(object.dict, 'Height')];
    const greys = greysOf(inflateSync(object.contents), width * height);
    if (!greys) continue;
    const bits = bitsFor(greys);
    const contents = deflateSync(packed(greys, width, bits), { level: constants.Z_BEST_COMPRESSION });
    pdf.context.assign(
      ref,
      PDFRawStream.of(
        pdf.context.obj({
          Type: 'XObject',
          Subtype: 'Image',
          Width: width,
          Height: height,
          ColorSpace: 'DeviceGray',
          BitsPerComponent: bits,
          Filter: 'FlateDecode',
          Length: contents.length,
        }),
        contents,
      ),
    );
  }
}

const known = new Set(['Type', 'Subtype', 'Width', 'Height', 'ColorSpace', 'BitsPerComponent', 'Filter', 'Length']);

/** No mask, no decoding of its own: nothing but its dots. */
function isPlainPicture(dict: PDFDict): boolean {
  const is = (key: string, value: string) => dict.get(PDFName.of(key)) === PDFName.of(value);
  return (
    is('Subtype', 'Image') &&
    is('Filter', 'FlateDecode') &&
    numberAt(dict, 'BitsPerComponent') === 8 &&
    dict.keys().every((key) => known.has(key.decodeText()))
  );
}

const numberAt = (dict: PDFDict, key: string): number =>
  dict.lookupMaybe(PDFName.of(key), PDFNumber)?.asNumber() ?? NaN;

/** One byte a dot; undefined for what has colours, or other than three bytes a dot. */
function greysOf(dots: Uint8Array, count: number): Uint8Array | undefined {
  if (dots.length !== 3 * count) return undefined;
  const greys = new Uint8Array(count);
  for (let i = 0; i < count; i += 1) {
    const grey = dots[3 * i]!;
    if (dots[3 * i + 1] !== grey || dots[3 * i + 2] !== grey) return undefined;
    greys[i] = grey;
  }
  return greys;
}

/** The fewest bits in which each of the greys is a whole step from black to white. */
const bitsFor = (greys: Uint8Array): number =>
  [1, 2, 4].find((bits) => greys.every((grey) => grey % (255 / (2 ** bits - 1)) === 0)) ?? 8;

/** Rows of so many bits a dot, each from a new byte on (ISO 32000-1:2008, 8.9.3). */
function packed(greys: Uint8Array, width: number, bits: number): Uint8Array {
  const row = Math.ceil((width * bits) / 8);
  const bytes = new Uint8Array(row * (greys.length / width));
  greys.forEach((grey, i) => {
    const bit = (i % width) * bits;
    const at = row * Math.floor(i / width) + Math.floor(bit / 8);
    bytes[at] = bytes[at]! | ((grey >> (8 - bits)) << (8 - bits - (bit % 8)));
  });
  return bytes;
}
