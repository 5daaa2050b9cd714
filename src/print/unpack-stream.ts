import { constants, inflateSync } from 'node:zlib';
import { PDFArray, PDFDict, PDFName, PDFNumber, type PDFRawStream } from '@cantoo/pdf-lib';
import { notWhole, Unfit } from './unfit.js';

/** In bytes: so much one stream, and all together, may come to when they are unpacked. */
const mostOfOne = 128 * 2 ** 20;
const mostOfAll = 256 * 2 ** 20;
/** A large file may hold many large pictures. */
const mostTimesTheFile = 40;

/** Gives what a stream holds; undefined where it is packed in a way that does not make much of little. */
export type Unpack = (stream: PDFRawStream) => Uint8Array | undefined;

/**
 * Unpacks what is packed by deflate, within bounds for a file of `size` bytes.
 *
 * @throws Unfit where it comes to more, is packed twice over, or is damaged
 */
export function unpacker(size: number): Unpack {
  let left = Math.max(mostOfAll, mostTimesTheFile * size);
  return (stream) => {
    const filters = filtersOf(stream);
    if (filters.filter((name) => name === 'FlateDecode' || name === 'LZWDecode').length > 1)
      throw new Unfit('is packed twice over, so that it may unpack to more than fits anywhere');
    const [first, ...others] = filters;
    if (first === undefined) return stream.getContents();
    if (first !== 'FlateDecode') return undefined;
    const content = inflated(stream.getContents(), Math.max(1, Math.min(mostOfOne, left)));
    left -= content.length;
    return others.length === 0 ? content : undefined;
  };
}

function inflated(packed: Uint8Array, most: number): Uint8Array {
  try {
    // Some programs leave out the end of what they pack; all viewers show what there is.
    return inflateSync(packed, { maxOutputLength: most, finishFlush: constants.Z_SYNC_FLUSH });
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE')
      throw new Unfit('unpacks to more than a paper can be');
    throw notWhole('a stream is damaged');
  }
}

function filtersOf({ dict }: PDFRawStream): string[] {
  const filter = dict.get(PDFName.of('Filter'));
  const all = filter instanceof PDFArray ? filter.asArray() : filter ? [filter] : [];
  return all.map((one) => {
    if (!(one instanceof PDFName)) throw new Unfit('does not say how it is packed');
    const name = one.decodeText();
    return name === 'Fl' ? 'FlateDecode' : name === 'LZW' ? 'LZWDecode' : name;
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
