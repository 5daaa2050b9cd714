import { PDFArray, PDFDict, PDFName, PDFNumber, type PDFObject, PDFRawStream } from '@cantoo/pdf-lib';
import { notWhole } from './unfit.js';
import { type Unpack, unpackedRows } from './unpack-stream.js';

/** Where an object lies: at a byte of the file, or as the nth of an object stream. */
export type Entry = 'free' | { at: number; generation: number } | { stream: number; nth: number };

/** Takes the object apart that begins at a byte of the file. */
type ObjectAt = (at: number) => PDFObject;

/** Viewers look for the end of the file no further away from its last byte. */
const farthest = 1024;

/**
 * Where the newest table begins (7.5.5).
 *
 * @throws Unfit where the file does not end as it should, so that a viewer may look for its objects in another way
 */
export function startOfTable(text: string): number {
  const last = text.lastIndexOf('startxref');
  const start = /^startxref[\0\t\n\f\r ]+(\d{1,10})[\0\t\n\f\r ]+%%EOF/.exec(
    text.slice(Math.max(last, 0), last + 64),
  )?.[1];
  if (start === undefined) throw notWhole();
  if (text.length - last > farthest) throw notWhole('something else follows its end');
  return Number(start);
}

/**
 * The table as a viewer reads it, from the end of the file back through all versions (ISO 32000-1:2008, 7.5.4 to 7.5.8); the
 * newest entry of a number holds. Trailers come newest first.
 *
 * @throws Unfit where it is not laid out as every viewer expects: each would mend it in its own way
 */
export function tableOf(
  text: string,
  start: number,
  trailerAt: ObjectAt,
  streamAt: (at: number) => PDFObject | undefined,
  unpack: Unpack,
): { entries: Map<number, Entry>; trailers: PDFDict[] } {
  const entries = new Map<number, Entry>();
  const trailers: PDFDict[] = [];
  const seen = new Set<number>();
  const read = (at: number): { own: Map<number, Entry>; trailer: PDFDict } => {
    if (seen.has(at)) throw notWhole('its table leads back to itself');
    seen.add(at);
    return /^[\0\t\n\f\r ]*xref\b/.test(text.slice(at, at + 16))
      ? plainTable(text, at, trailerAt)
      : packedTable(streamAt(skipSpace(text, at)), unpack);
  };
  for (let at: number | undefined = start; at !== undefined; ) {
    const { own, trailer } = read(at);
    at = placeAt(trailer, 'Prev');
    trailers.push(trailer);
    const beside = placeAt(trailer, 'XRefStm');
    if (beside !== undefined) trailers.push(join(own, read(beside), at));
    for (const [number, entry] of own) if (!entries.has(number)) entries.set(number, entry);
  }
  return { entries, trailers };
}

/** Viewers differ over which half of a table holds, where both say something (7.5.8.4). */
function join(
  own: Map<number, Entry>,
  { own: other, trailer }: { own: Map<number, Entry>; trailer: PDFDict },
  previous: number | undefined,
): PDFDict {
  for (const [number, entry] of other) {
    const one = own.get(number);
    if (one === undefined || one === 'free') own.set(number, entry);
    else if (JSON.stringify(one) !== JSON.stringify(entry)) throw notWhole('its table tells two things of an object');
  }
  const before = placeAt(trailer, 'Prev');
  if (before !== undefined && before !== previous) throw notWhole('its table leads to two others');
  return trailer;
}

const skipSpace = (text: string, at: number): number =>
  at + (/^[\0\t\n\f\r ]*/.exec(text.slice(at, at + 16))?.[0].length ?? 0);

/** A whole number of a dictionary, not negative. */
export function wholeAt(dict: PDFDict, key: string): number {
  const value = dict.get(PDFName.of(key));
  return value instanceof PDFNumber ? whole(value.asNumber()) : whole(Number.NaN);
}

const placeAt = (dict: PDFDict, key: string): number | undefined =>
  dict.has(PDFName.of(key)) ? wholeAt(dict, key) : undefined;

function whole(value: number): number {
  if (!Number.isSafeInteger(value) || value < 0) throw notWhole();
  return value;
}

/** Twenty bytes a row: some viewers count them, others read words (7.5.4). */
const row = /(\d{10}) (\d{5}) ([nf])(?: \r| \n|\r\n)/y;
const heading = /[\0\t\n\f\r ]*(\d{1,10}) +(\d{1,10}) *(?:\r\n|\r|\n)/y;
const trailing = /[\0\t\n\f\r ]*trailer/y;

function plainTable(text: string, at: number, trailerAt: ObjectAt): { own: Map<number, Entry>; trailer: PDFDict } {
  const own = new Map<number, Entry>();
  let place = text.indexOf('xref', at) + 'xref'.length;
  const next = (what: RegExp): RegExpExecArray | null => {
    what.lastIndex = place;
    const found = what.exec(text);
    if (found) place = what.lastIndex;
    return found;
  };
  for (let found = next(heading); found; found = next(heading)) {
    const [first, count] = [Number(found[1]), Number(found[2])];
    for (let n = 0; n < count; n++) {
      const [, where, generation, kind] = next(row) ?? [];
      if (kind === undefined) throw notWhole('its table of objects cannot be read');
      enter(own, first + n, kind === 'f' ? 'free' : { at: Number(where), generation: Number(generation) });
    }
  }
  if (!next(trailing)) throw notWhole('its table of objects cannot be read');
  const trailer = trailerAt(place);
  if (!(trailer instanceof PDFDict)) throw notWhole();
  return { own, trailer };
}

/** Viewers differ over which of two entries holds. */
function enter(own: Map<number, Entry>, number: number, entry: Entry): void {
  if (own.has(number)) throw notWhole('its table tells two things of an object');
  own.set(number, entry);
}

/** A cross-reference stream (7.5.8). */
function packedTable(stream: PDFObject | undefined, unpack: Unpack): { own: Map<number, Entry>; trailer: PDFDict } {
  if (!(stream instanceof PDFRawStream) || stream.dict.get(PDFName.of('Type')) !== PDFName.of('XRef')) throw notWhole();
  const { dict } = stream;
  const rows = unpackedRows(stream, unpack(stream));
  const widths = wholesAt(dict, 'W') ?? [];
  const index = wholesAt(dict, 'Index') ?? [0, wholeAt(dict, 'Size')];
  const length = widths.reduce((sum, width) => sum + width, 0);
  if (widths.length !== 3 || length === 0 || Math.max(...widths) > 8 || index.length % 2 !== 0) throw notWhole();
  const own = new Map<number, Entry>();
  let at = 0;
  const field = (width: number): number => {
    let value = 0;
    for (let b = 0; b < width; b++) value = value * 256 + rows[at++]!;
    return whole(value);
  };
  for (let i = 0; i < index.length; i += 2) {
    for (let n = 0; n < index[i + 1]!; n++) {
      if (at + length > rows.length) throw notWhole('its table of objects is cut short');
      const kind = widths[0] === 0 ? 1 : field(widths[0]!);
      const [second, third] = [field(widths[1]!), field(widths[2]!)];
      // Viewers differ over what any other kind means.
      if (kind > 2) throw notWhole('its table of objects cannot be read');
      const entry: Entry =
        kind === 1 ? { at: second, generation: third } : kind === 2 ? { stream: second, nth: third } : 'free';
      enter(own, index[i]! + n, entry);
    }
  }
  return { own, trailer: dict };
}

function wholesAt(dict: PDFDict, key: string): number[] | undefined {
  const value = dict.get(PDFName.of(key));
  if (value === undefined) return undefined;
  if (!(value instanceof PDFArray)) throw notWhole();
  return value.asArray().map((one) => (one instanceof PDFNumber ? whole(one.asNumber()) : whole(Number.NaN)));
}
