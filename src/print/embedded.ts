import { PDFDict, PDFName, type PDFDocument } from '@cantoo/pdf-lib';

/** The PostScript names, without the subset tag, of the fonts that the PDF carries. */
export function embeddedFonts(pdf: PDFDocument): string[] {
  const names = new Set<string>();
  for (const [, object] of pdf.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFDict) || object.get(PDFName.of('Type')) !== PDFName.of('Font')) continue;
    const name = object.lookupMaybe(PDFName.of('BaseFont'), PDFName);
    if (name) names.add(name.decodeText().replace(/^[A-Z]{6}\+/, ''));
  }
  return [...names].sort();
}
