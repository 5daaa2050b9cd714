import { PDFArray, PDFDict, type PDFDocument, PDFName, PDFRef } from '@cantoo/pdf-lib';

/** The page (from 1) of every named destination: Chromium makes one for each id that some link of the document points to. */
export function pagesOfDestinations(pdf: PDFDocument): Map<string, number> {
  const numbers = new Map(pdf.getPages().map((page, index) => [page.ref.tag, index + 1]));
  const destinations = pdf.catalog.lookupMaybe(PDFName.of('Dests'), PDFDict);
  const pages = new Map<string, number>();
  for (const [name, value] of destinations?.entries() ?? []) {
    const target = pdf.context.lookup(value);
    const page = target instanceof PDFArray ? target.get(0) : undefined;
    const number = page instanceof PDFRef ? numbers.get(page.tag) : undefined;
    if (number !== undefined) pages.set(unescaped(name.decodeText()), number);
  }
  return pages;
}

/** Chromium writes an id into the destination's name the way a URL fragment is written. */
function unescaped(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
