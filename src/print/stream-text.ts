import { inflateSync } from 'node:zlib';
import { decodePDFRawStream, PDFName, type PDFObject, PDFRawStream } from '@cantoo/pdf-lib';

/** The content of a stream, unpacked. Throws if it is packed in a way that cannot be undone. */
export function streamBytes(stream: PDFRawStream): Uint8Array {
  const { dict } = stream;
  const plainFlate =
    dict.get(PDFName.of('Filter')) === PDFName.of('FlateDecode') && !dict.has(PDFName.of('DecodeParms'));
  return plainFlate ? inflateSync(stream.getContents()) : decodePDFRawStream(stream).decode();
}

/** The content of a stream, one character a byte; empty for what is no stream. */
export const streamText = (object: PDFObject | undefined): string =>
  object instanceof PDFRawStream ? Buffer.from(streamBytes(object)).toString('latin1') : '';
