import { inflateSync } from 'node:zlib';
import { PDFArray, type PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';

/** In bytes: so much one stream, and all together, may come to when they are unpacked. */
export const mostOfOne = 128 * 2 ** 20;
const mostOfAll = 256 * 2 ** 20;
/** A large file may hold many large pictures. */
const mostTimesTheFile = 40;
export const mostOf = (size: number): number => Math.max(mostOfAll, mostTimesTheFile * size);

/**
 * Whether the streams of a file unpack to more than a document can be. Looks for them by the word that begins them, before
 * anything else reads the file: whoever opens it unpacks those that hold objects.
 */
export function unpacksToTooMuch(file: Buffer): boolean {
  let left = mostOf(file.length);
  for (let at = file.indexOf('stream'); at !== -1; at = file.indexOf('stream', at + 6)) {
    let start = at + 6;
    while (file[start] === 13 || file[start] === 10 || file[start] === 32) start += 1;
    // The head of deflated bytes (RFC 1950, 2.2) is a multiple of 31.
    if ((file[start]! & 0x0f) !== 8 || file.readUInt16BE(Math.min(start, file.length - 2)) % 31 !== 0) continue;
    try {
      left -= inflateSync(file.subarray(start), { maxOutputLength: Math.min(mostOfOne, Math.max(1, left)) }).length;
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') return true;
      // What can be unpacked only in part may still come to much.
      left -= mostOfOne / 4;
    }
    if (left < 0) return true;
  }
  return false;
}

/** Ways of packing in which a printed document has none: packed twice, or by words of a growing list, little makes very much. */
export function packedOddly(pdf: PDFDocument): boolean {
  return pdf.context.enumerateIndirectObjects().some(([, object]) => {
    if (!(object instanceof PDFRawStream)) return false;
    const filter = pdf.context.lookup(object.dict.get(PDFName.of('Filter')));
    const all = filter instanceof PDFArray ? filter.asArray().map((one) => pdf.context.lookup(one)) : [filter];
    const growing = all.filter((one) => one !== undefined && !tame.has(String(one)));
    return growing.some((one) => String(one) !== '/FlateDecode') || growing.length > 1;
  });
}
const tame = new Set(['/DCTDecode', '/JPXDecode', '/CCITTFaxDecode', '/ASCIIHexDecode', '/ASCII85Decode']);
