import { readFileSync } from 'node:fs';
import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Opens a PDF with a reader that has nothing to do with what wrote it. */
export const readPdf = (file: string): Promise<PDFDocumentProxy> => readPdfBytes(readFileSync(file));

export const readPdfBytes = (bytes: Uint8Array): Promise<PDFDocumentProxy> =>
  getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false, isEvalSupported: false }).promise;

/** The text of each page, its pieces joined as they stand. */
export async function textOfPages(pdf: PDFDocumentProxy): Promise<string[]> {
  const texts: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    texts.push(items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''));
  }
  return texts;
}
