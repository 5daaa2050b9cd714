import { decodePDFRawStream, PDFRawStream, type PDFObject } from '@cantoo/pdf-lib';

/** The content of a stream, one character a byte; empty for what is no stream. */
export function streamText(object: PDFObject | undefined): string {
  return object instanceof PDFRawStream ? Buffer.from(decodePDFRawStream(object).decode()).toString('latin1') : '';
}
