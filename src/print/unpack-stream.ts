import { constants, inflateSync } from 'node:zlib';
import { decodePDFRawStream, PDFArray, PDFDict, PDFName, PDFNumber, PDFRawStream } from '@cantoo/pdf-lib';
import { notWhole, Unfit } from './unfit.js';
import { mostOf, mostOfOne } from './unpacks.js';

/** Gives what a stream holds; undefined for what is coded as a picture, which does not become objects or a table. */
export type Unpack = (stream: PDFRawStream) => Uint8Array | undefined;

/** Ways of packing that make much of little. */
const packing: ReadonlySet<string> = new Set(['FlateDecode', 'LZWDecode', 'RunLengthDecode']);
const spelling: ReadonlySet<string> = new Set(['ASCIIHexDecode', 'ASCII85Decode']);

/**
 * Unpacks streams within bounds for a file of `size` bytes.
 *
 * @throws Unfit where it comes to more, is packed twice over, or is damaged
 */
export function unpacker(size: number): Unpack {
  let left = mostOf(size);
  return (stream) => {
    const filters = filtersOf(stream);
    if (filters.filter((name) => packing.has(name)).length > 1)
      throw new Unfit('is packed twice over, so that it may unpack to more than fits anywhere');
    let content = stream.getContents();
    for (const filter of filters) {
      if (!packing.has(filter) && !spelling.has(filter)) return undefined;
      const most = Math.max(1, Math.min(mostOfOne, left));
      content = filter === 'FlateDecode' ? inflated(content, most) : decoded(stream, filter, content, most);
      left -= content.length;
    }
    return content;
  };
}

/** By the library, piece by piece: it knows no bounds of its own. */
function decoded({ dict }: PDFRawStream, filter: string, packed: Uint8Array, most: number): Uint8Array {
  const stream = decodePDFRawStream(PDFRawStream.of(dict.context.obj({ Filter: filter }), packed));
  let length = 0;
  for (let piece = -1; piece !== 0; length += piece) {
    if (length > most) throw tooMuch();
    piece = stream.getBytes(2 ** 16).length;
  }
  stream.reset();
  return length === 0 ? new Uint8Array() : Uint8Array.from(stream.getBytes(length));
}

const tooMuch = (): Unfit => new Unfit('unpacks to more than a paper can be');

function inflated(packed: Uint8Array, most: number): Uint8Array {
  try {
    // Some programs leave out the end of what they pack; all viewers show what there is.
    return inflateSync(packed, { maxOutputLength: most, finishFlush: constants.Z_SYNC_FLUSH });
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') throw tooMuch();
    throw notWhole('a stream is damaged');
  }
}

/** Meant for pictures within a page's words (8.9.7); some viewers take them elsewhere, too. */
const shortNames: Readonly<Record<string, string>> = Object.assign(Object.create(null), {
  AHx: 'ASCIIHexDecode',
  A85: 'ASCII85Decode',
  LZW: 'LZWDecode',
  Fl: 'FlateDecode',
  RL: 'RunLengthDecode',
});

function filtersOf({ dict }: PDFRawStream): string[] {
  const filter = dict.get(PDFName.of('Filter'));
  const all = filter instanceof PDFArray ? filter.asArray() : filter ? [filter] : [];
  return all.map((one) => {
    if (!(one instanceof PDFName)) throw new Unfit('does not say how it is packed');
    const name = one.decodeText();
    return shortNames[name] ?? name;
  });
}

/**
 * What a stream holds of which a viewer makes objects or its table: its rows as they were before PNG's prediction
 * (ISO 32000-1:2008, 7.4.4.4).
 *
 * @throws Unfit where it is packed in another way
 */
export function unpackedRows(stream: PDFRawStream, content: Uint8Array | undefined): Uint8Array {
  const given = stream.dict.get(PDFName.of('DecodeParms'));
  const terms = given instanceof PDFArray && given.size() === 1 ? given.get(0) : given;
  if (!content || (terms !== undefined && !(terms instanceof PDFDict))) throw unlooked();
  const term = (name: string, otherwise: number): number => {
    const value = terms?.get(PDFName.of(name)) ?? PDFNumber.of(otherwise);
    if (!(value instanceof PDFNumber) || !Number.isInteger(value.asNumber()) || value.asNumber() < 1) throw unlooked();
    return value.asNumber();
  };
  const predictor = term('Predictor', 1);
  if (predictor === 1) return content;
  const bits = term('Colors', 1) * term('BitsPerComponent', 8);
  const row = Math.ceil((bits * term('Columns', 1)) / 8);
  if (predictor < 10 || bits % 8 !== 0 || row > content.length) throw unlooked();
  return unpredicted(content, row, bits / 8);
}

const unlooked = (): Unfit => new Unfit('holds objects that are packed in a way that is not looked into');

/** Each row begins with the filter that it went through (PNG specification, third edition, 9.2). */
function unpredicted(content: Uint8Array, row: number, left: number): Uint8Array {
  const rows = Math.floor(content.length / (row + 1));
  const out = new Uint8Array(rows * row);
  for (let r = 0; r < rows; r++) {
    const filter = content[r * (row + 1)]!;
    for (let i = 0; i < row; i++) {
      const at = r * row + i;
      const a = i < left ? 0 : out[at - left]!;
      const b = r === 0 ? 0 : out[at - row]!;
      const c = i < left || r === 0 ? 0 : out[at - row - left]!;
      out[at] = content[r * (row + 1) + 1 + i]! + predicted(filter, a, b, c);
    }
  }
  return out;
}

function predicted(filter: number, a: number, b: number, c: number): number {
  if (filter === 0) return 0;
  if (filter === 1) return a;
  if (filter === 2) return b;
  if (filter === 3) return (a + b) >> 1;
  if (filter !== 4) throw unlooked();
  const [toA, toB, toC] = [Math.abs(b - c), Math.abs(a - c), Math.abs(a + b - 2 * c)];
  return toA <= toB && toA <= toC ? a : toB <= toC ? b : c;
}
