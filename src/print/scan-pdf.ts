import { inflateSync } from 'node:zlib';
import {
  decodePDFRawStream,
  PDFArray,
  PDFContext,
  PDFDict,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFObjectParser,
  PDFRawStream,
  PDFRef,
} from '@cantoo/pdf-lib';

/**
 * A PDF taken apart in two ways: every object that is written anywhere in the file, and the table that a viewer follows to its
 * objects (ISO 32000-1:2008, 7.5). What only one of them sees could be shown by one viewer and hidden from another.
 */
export interface Scan {
  /** All that is written under each number, of every version of the file. */
  definitions: ReadonlyMap<number, readonly PDFObject[]>;
  /** The dictionaries at the ends of all versions. */
  trailers: readonly PDFDict[];
}

/** Why a PDF cannot be looked into, in words that follow its name. */
export class Unfit extends Error {}

/** In bytes: so much one stream, and all together, may come to when they are unpacked. */
const mostOfOne = 128 * 2 ** 20;
const mostOfAll = 256 * 2 ** 20;
/** A large file may hold many large pictures. */
const mostTimesTheFile = 40;

/**
 * @throws Unfit where the file is not whole, has a password, unpacks to too much, or where a viewer would follow its table to
 * something that is not written as an object
 */
export function scanPdf(bytes: Uint8Array): Scan {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  if (!text.startsWith('%PDF-')) throw new Unfit('is no whole PDF');
  const unpack = unpacker(bytes.length);
  const context = PDFContext.create();
  const parse = (from: number, within: Uint8Array = bytes): PDFObject =>
    PDFObjectParser.forBytes(within.subarray(from), context).parseObject();

  const written = new Map<number, { number: number; object: PDFObject }>();
  const broken = new Set<number>();
  for (const found of text.matchAll(/(?<!\d)(\d{1,10})[\0\t\n\f\r ]+\d{1,5}[\0\t\n\f\r ]+obj(?![A-Za-z])/g)) {
    try {
      written.set(found.index, { number: Number(found[1]), object: parse(found.index + found[0].length) });
    } catch {
      // Words of a text or a picture that look like an object; a table that leads here is refused below.
      broken.add(found.index);
    }
  }
  const { entries, trailers } = tableOf(text, parse, written, unpack);
  if (trailers.some((trailer) => trailer.has(PDFName.of('Encrypt'))))
    throw new Unfit('has a password, so that nobody can look into it');

  const definitions = new Map<number, PDFObject[]>();
  const define = (number: number, object: PDFObject) =>
    definitions.set(number, [...(definitions.get(number) ?? []), object]);
  const packed = new Map<PDFObject, number[]>();
  for (const { number, object } of written.values()) {
    define(number, object);
    if (!(object instanceof PDFRawStream)) continue;
    if (nameAt(object.dict, 'Type') !== 'ObjStm') unpack(object);
    else packed.set(object, unpackObjects(object, unpack(object), parse, define));
  }

  for (const [number, entry] of entries) {
    if (entry === 'free') continue;
    const container = entry.stream === undefined ? undefined : entries.get(entry.stream);
    const at = container === undefined ? entry.at : container === 'free' ? undefined : container.at;
    const there = at === undefined ? undefined : written.get(at);
    const fits =
      entry.stream === undefined
        ? there?.number === number
        : there?.number === entry.stream && packed.get(there.object)?.[entry.at] === number;
    if (!fits) throw new Unfit('is no whole PDF: its table of objects leads to something else than an object');
  }
  if (!trailers.some((t) => hasCatalog(t, definitions))) throw new Unfit('is no whole PDF');
  return { definitions, trailers };
}

export const nameAt = (dict: PDFDict, key: string): string | undefined => {
  const value = dict.get(PDFName.of(key));
  return value instanceof PDFName ? value.decodeText() : undefined;
};

function hasCatalog(trailer: PDFDict, definitions: Scan['definitions']): boolean {
  const root = trailer.get(PDFName.of('Root'));
  return root instanceof PDFRef && (definitions.get(root.objectNumber) ?? []).some((o) => o instanceof PDFDict);
}

type Unpack = (stream: PDFRawStream) => Uint8Array | undefined;

/** Unpacks what is packed by deflate, within bounds; other ways of packing do not make much of little. */
function unpacker(size: number): Unpack {
  let left = Math.max(mostOfAll, mostTimesTheFile * size);
  return (stream) => {
    const filters = filtersOf(stream);
    if (filters.filter((name) => name === 'FlateDecode' || name === 'LZWDecode').length > 1)
      throw new Unfit('is packed twice over, so that it may unpack to more than fits anywhere');
    const [first, ...others] = filters;
    if (first === undefined) return stream.getContents();
    if (first !== 'FlateDecode') return undefined;
    try {
      const content = inflateSync(stream.getContents(), { maxOutputLength: Math.min(mostOfOne, left) });
      left -= content.length;
      return others.length === 0 ? content : undefined;
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE')
        throw new Unfit('unpacks to more than a paper can be');
      return undefined;
    }
  };
}

function filtersOf({ dict }: PDFRawStream): string[] {
  const filter = dict.get(PDFName.of('Filter')) ?? dict.get(PDFName.of('F'));
  const all = filter instanceof PDFArray ? filter.asArray() : filter ? [filter] : [];
  return all.map((one) => {
    if (!(one instanceof PDFName)) throw new Unfit('does not say how it is packed');
    return one.decodeText() === 'Fl' ? 'FlateDecode' : one.decodeText() === 'LZW' ? 'LZWDecode' : one.decodeText();
  });
}

const numberAt = (dict: PDFDict, key: string): number => {
  const value = dict.get(PDFName.of(key));
  if (!(value instanceof PDFNumber)) throw new Unfit('is no whole PDF');
  return value.asNumber();
};

/** The objects of an object stream (7.5.7); gives their numbers in order. */
function unpackObjects(
  stream: PDFRawStream,
  content: Uint8Array | undefined,
  parse: (from: number, within: Uint8Array) => PDFObject,
  define: (number: number, object: PDFObject) => void,
): number[] {
  if (!content || stream.dict.has(PDFName.of('DecodeParms')))
    throw new Unfit('holds objects that are packed in a way that is not looked into');
  const [count, first] = [numberAt(stream.dict, 'N'), numberAt(stream.dict, 'First')];
  const index = Buffer.from(content.subarray(0, first)).toString('latin1').trim().split(/\s+/).map(Number);
  if (index.length !== 2 * count || index.some((n) => !Number.isInteger(n)))
    throw new Unfit('is no whole PDF: an index of its objects does not fit');
  return Array.from({ length: count }, (_, i) => {
    const number = index[2 * i]!;
    try {
      define(number, parse(first + index[2 * i + 1]!, content));
    } catch {
      throw new Unfit('is no whole PDF');
    }
    return number;
  });
}

/** Where an object lies: at a byte of the file, or as the nth of an object stream. */
type Entry = 'free' | { at: number; stream?: number };

/** The table as a viewer reads it, from the end of the file back through all versions; the newest entry of a number holds. */
function tableOf(
  text: string,
  parse: (from: number) => PDFObject,
  written: ReadonlyMap<number, { object: PDFObject }>,
  unpack: Unpack,
): { entries: Map<number, Entry>; trailers: PDFDict[] } {
  const start = [...text.slice(-2048).matchAll(/startxref\s+(\d+)/g)].at(-1)?.[1];
  if (start === undefined) throw new Unfit('is no whole PDF');
  const entries = new Map<number, Entry>();
  const trailers: PDFDict[] = [];
  const seen = new Set<number>();
  const queue = [Number(start)];
  const enter = (number: number, entry: Entry) => {
    if (!entries.has(number)) entries.set(number, entry);
  };
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    if (seen.has(at)) continue;
    seen.add(at);
    const trailer = /^\s*xref\b/.test(text.slice(at, at + 16))
      ? plainTable(text, at, parse, enter)
      : packedTable(written.get(skipSpace(text, at))?.object, unpack, enter);
    trailers.push(trailer);
    for (const key of ['XRefStm', 'Prev']) if (trailer.has(PDFName.of(key))) queue.push(numberAt(trailer, key));
  }
  return { entries, trailers };
}

const skipSpace = (text: string, at: number): number => at + (/^\s*/.exec(text.slice(at, at + 16))?.[0].length ?? 0);

function plainTable(
  text: string,
  at: number,
  parse: (from: number) => PDFObject,
  enter: (number: number, entry: Entry) => void,
): PDFDict {
  const end = text.indexOf('trailer', at);
  if (end === -1) throw new Unfit('is no whole PDF');
  const words = text.slice(at, end).trim().split(/\s+/).slice(1);
  for (let i = 0; i < words.length; ) {
    const [first, count] = [Number(words[i]), Number(words[i + 1])];
    i += 2;
    for (let n = 0; n < count; n++, i += 3) {
      const kind = words[i + 2];
      if (kind !== 'n' && kind !== 'f') throw new Unfit('is no whole PDF: its table of objects cannot be read');
      enter(first + n, kind === 'f' ? 'free' : { at: Number(words[i]) });
    }
  }
  const trailer = parse(end + 'trailer'.length);
  if (!(trailer instanceof PDFDict)) throw new Unfit('is no whole PDF');
  return trailer;
}

/** A cross-reference stream (7.5.8). */
function packedTable(
  stream: PDFObject | undefined,
  unpack: Unpack,
  enter: (number: number, entry: Entry) => void,
): PDFDict {
  if (!(stream instanceof PDFRawStream) || nameAt(stream.dict, 'Type') !== 'XRef' || !unpack(stream))
    throw new Unfit('is no whole PDF');
  const rows = decodePDFRawStream(stream).decode();
  const numbers = (key: string): number[] | undefined => {
    const value = stream.dict.get(PDFName.of(key));
    return value instanceof PDFArray ? value.asArray().map((n) => Number(n.toString())) : undefined;
  };
  const widths = numbers('W') ?? [];
  const index = numbers('Index') ?? [0, numberAt(stream.dict, 'Size')];
  if (widths.length !== 3) throw new Unfit('is no whole PDF');
  const length = widths[0]! + widths[1]! + widths[2]!;
  let row = 0;
  for (let i = 0; i + 1 < index.length; i += 2) {
    for (let n = 0; n < index[i + 1]!; n++, row++) {
      if ((row + 1) * length > rows.length) return stream.dict;
      let at = row * length;
      const [kind, where, place] = widths.map((width) => {
        let value = 0;
        for (let b = 0; b < width; b++) value = value * 256 + rows[at++]!;
        return value;
      }) as [number, number, number];
      const type = widths[0] === 0 ? 1 : kind;
      if (type === 1) enter(index[i]! + n, { at: where });
      else if (type === 2) enter(index[i]! + n, { at: place, stream: where });
      else enter(index[i]! + n, 'free');
    }
  }
  return stream.dict;
}
