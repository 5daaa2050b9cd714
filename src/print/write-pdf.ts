import { PDFCrossRefStream, PDFHeader, PDFStreamWriter, type PDFDocument, type PDFRef } from '@cantoo/pdf-lib';

/** A tagged document has several hundred objects a page, most of them alike: in large streams they take a third less room. */
const objectsPerStream = 1000;

/** The bytes of a PDF, with object streams and a cross-reference stream (ISO 32000-1:2008, 7.5.7 and 7.5.8). */
export async function writePdf(pdf: PDFDocument): Promise<Uint8Array> {
  await pdf.flush();
  pdf.context.header = PDFHeader.forVersion(1, 7);
  return PDFStreamWriter.forContext(pdf.context, Infinity, true, objectsPerStream).serializeToBuffer();
}

interface Entries {
  entries: { ref: PDFRef }[];
  appendEntry: (entry: { ref: PDFRef }) => void;
}

/**
 * The library looks for the place of each entry from the first one on, which for the hundred thousand objects of a large
 * document takes longer than all the printing. They come nearly in their order, so the place is found from the end at once.
 */
(PDFCrossRefStream.prototype as unknown as Entries).appendEntry = function (this: Entries, entry) {
  let at = this.entries.length;
  while (at > 0 && this.entries[at - 1]!.ref.objectNumber > entry.ref.objectNumber) at -= 1;
  this.entries.splice(at, 0, entry);
};
