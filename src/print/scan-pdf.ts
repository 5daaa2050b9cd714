import { PDFContext, type PDFDict, PDFName, PDFNumber, type PDFObject, PDFRawStream, PDFRef } from '@cantoo/pdf-lib';
import { type Entry, startOfTable, tableOf, wholeAt } from './object-table.js';
import { countPages } from './page-tree.js';
import { type NumberAt, strictObject } from './strict-object.js';
import { notWhole, Unfit } from './unfit.js';
import { unpackedRows, unpacker } from './unpack-stream.js';

/**
 * A PDF taken apart in two ways: every object that is written anywhere in the file, and the table that a viewer follows to its
 * objects (ISO 32000-1:2008, 7.5). What only one of them sees could be shown by one viewer and hidden from another.
 */
export interface Scan {
  /** All that is written under each number, of every version of the file. */
  definitions: ReadonlyMap<number, readonly PDFObject[]>;
  /** The dictionaries at the ends of all versions. */
  trailers: readonly PDFDict[];
  /** The objects that the table leads to, from the root of the newest version. */
  viewed: PDFContext;
}

interface Written {
  number: number;
  generation: number;
  object: PDFObject;
  /** It begins as every viewer expects. */
  plain: boolean;
}

/** Between the words that begin an object: whatever counts as a space somewhere, a comment, too. */
const gap = '(?:[\\0\\s]|%[^\\r\\n]{0,60}[\\r\\n]){1,12}';
const begin = new RegExp(`(?<!\\d)(\\d{1,20})${gap}(\\d{1,20})${gap}obj(?![A-Za-z])`, 'g');
const plain = /^\d+[\0\t\n\f\r ]+\d+[\0\t\n\f\r ]+obj$/;

/**
 * @throws Unfit where the file is not whole, has a password, unpacks to too much, or where viewers may read it differently:
 * each mends in its own way what is not laid out as it should be
 */
export function scanPdf(bytes: Uint8Array): Scan {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  if (!text.startsWith('%PDF-')) throw notWhole();
  const start = startOfTable(text);
  const unpack = unpacker(bytes.length);
  const viewed = PDFContext.create();
  const begins = [...text.matchAll(begin)];
  const written = new Map<number, Written>();
  const numberAt = numbersOf(text, begins);
  for (const found of begins) {
    const [number, generation] = [Number(found[1]), Number(found[2])];
    const object = parsed(bytes, found.index + found[0].length, 'endobj', viewed, numberAt);
    written.set(found.index, { number, generation, object, plain: plain.test(found[0]) });
  }

  const definitions = new Map<number, PDFObject[]>();
  const define = (number: number, object: PDFObject) => {
    const known = definitions.get(number);
    if (known) known.push(object);
    else definitions.set(number, [object]);
  };
  const { entries, trailers } = tableOf(
    text,
    start,
    (at) => parsed(bytes, at, 'startxref', viewed),
    (at) => written.get(at)?.object,
    unpack,
  );
  if (trailers.some((trailer) => trailer.has(PDFName.of('Encrypt'))))
    throw new Unfit('has a password, so that nobody can look into it');
  const packed = new Map<PDFObject, Packed>();
  for (const { number, object } of written.values()) {
    define(number, object);
    if (!(object instanceof PDFRawStream)) continue;
    const content = unpack(object);
    if (nameAt(object.dict, 'Type') === 'ObjStm')
      packed.set(object, unpackObjects(object, unpackedRows(object, content), viewed, define));
  }

  for (const [number, entry] of entries) assign(viewed, number, entry, entries, written, packed);
  for (const [, object] of viewed.enumerateIndirectObjects()) fitsItsLength(object, viewed);
  viewed.trailerInfo.Root = rootOf(trailers);
  countPages(viewed);
  return { definitions, trailers, viewed };
}

export const nameAt = (dict: PDFDict, key: string): string | undefined => {
  const value = dict.get(PDFName.of(key));
  return value instanceof PDFName ? value.decodeText() : undefined;
};

function parsed(bytes: Uint8Array, from: number, then: string, context: PDFContext, numberAt?: NumberAt): PDFObject {
  try {
    return strictObject(bytes, from, then, context, numberAt);
  } catch {
    // A viewer that finds its table broken reads whatever looks like an object, as far as it can.
    throw notWhole('an object cannot be read');
  }
}

/** Whole numbers that are objects of their own, as lengths of streams are where these were not known before; only where there is one of that number. */
function numbersOf(text: string, begins: readonly RegExpMatchArray[]): NumberAt {
  const known = new Map<number, number | undefined>();
  for (const found of begins) {
    const from = found.index! + found[0].length;
    const value = /^[\0\t\n\f\r ]*(\d{1,10})[\0\t\n\f\r ]*endobj/.exec(text.slice(from, from + 64))?.[1];
    const number = Number(found[1]);
    known.set(number, known.has(number) || value === undefined ? undefined : Number(value));
  }
  return (ref) => known.get(ref.objectNumber);
}

/** The numbers of the objects of an object stream, and these. */
type Packed = readonly { number: number; object: PDFObject }[];

/** The objects of an object stream (7.5.7), in order. */
function unpackObjects(
  stream: PDFRawStream,
  content: Uint8Array,
  context: PDFContext,
  define: (number: number, object: PDFObject) => void,
): Packed {
  const [count, first] = [wholeAt(stream.dict, 'N'), wholeAt(stream.dict, 'First')];
  const index = Buffer.from(content.subarray(0, first))
    .toString('latin1')
    .split(/[\0\t\n\f\r ]+/);
  if (index.at(-1) === '') index.pop();
  if (index[0] === '') index.shift();
  if (count === 0) return [];
  if (index.length !== 2 * count || index.some((n) => !/^\d{1,10}$/.test(n)))
    throw notWhole('an index of its objects does not fit');
  const places = index.map(Number);
  return Array.from({ length: count }, (_, i) => {
    const number = places[2 * i]!;
    const [from, next] = [places[2 * i + 1]!, places[2 * i + 3] ?? content.length - first];
    const object = parsed(content.subarray(0, first + next), first + from, '', context);
    if (object instanceof PDFRawStream) throw notWhole('an index of its objects does not fit');
    define(number, object);
    return { number, object };
  });
}

/** Puts the object where the viewer finds it. */
function assign(
  viewed: PDFContext,
  number: number,
  entry: Entry,
  entries: ReadonlyMap<number, Entry>,
  written: ReadonlyMap<number, Written>,
  packed: ReadonlyMap<PDFObject, Packed>,
): void {
  if (entry === 'free') return;
  const container = 'stream' in entry ? entries.get(entry.stream) : entry;
  const there =
    container !== undefined && container !== 'free' && 'at' in container ? written.get(container.at) : undefined;
  if ('at' in entry) {
    if (there?.plain && there.number === number && there.generation === entry.generation)
      return viewed.assign(PDFRef.of(number, entry.generation), there.object);
  } else if (there?.plain && there.number === entry.stream) {
    const inside = packed.get(there.object)?.[entry.nth];
    if (inside?.number === number) return viewed.assign(PDFRef.of(number), inside.object);
  }
  throw notWhole('its table of objects leads to something else than an object');
}

/** How much of the file a stream is: some viewers believe its length, others look for its end. */
function fitsItsLength(object: PDFObject, viewed: PDFContext): void {
  if (!(object instanceof PDFRawStream)) return;
  const length = viewed.lookup(object.dict.get(PDFName.Length));
  const over = length instanceof PDFNumber ? length.asNumber() - object.contents.length : Number.NaN;
  // The line's end before the word that ends it counts or does not.
  if (!(over >= 0 && over <= 2)) throw notWhole('the length of a stream does not fit');
}

function rootOf([newest]: readonly PDFDict[]): PDFRef {
  const root = newest?.get(PDFName.of('Root'));
  if (!(root instanceof PDFRef)) throw notWhole();
  return root;
}
