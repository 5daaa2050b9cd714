import { PDFArray, type PDFContext, PDFDict, PDFName, PDFNumber, PDFRef } from '@cantoo/pdf-lib';
import { notWhole } from './unfit.js';

/** Deeper than any program nests the pages of a document. */
const mostLevels = 50;

/**
 * How many pages a document has, from its root: each is reached once, and all that is counted is there (ISO 32000-1:2008, 7.7.3).
 *
 * @throws Unfit for pages that lead back to themselves, are counted otherwise, or are none: viewers differ over what they show
 */
export function countPages(context: PDFContext): number {
  const reached = new Set<PDFRef>();
  const count = (ref: unknown, level: number): number => {
    if (!(ref instanceof PDFRef) || reached.has(ref) || level > mostLevels) throw notWhole('its pages are in disorder');
    reached.add(ref);
    const node = context.lookup(ref);
    const type = node instanceof PDFDict ? node.get(PDFName.Type) : undefined;
    if (type === PDFName.Page && level > 0) return 1;
    const kids = node instanceof PDFDict ? context.lookup(node.get(PDFName.of('Kids'))) : undefined;
    if (type !== PDFName.of('Pages') || !(kids instanceof PDFArray)) throw notWhole('its pages are in disorder');
    const pages = kids.asArray().reduce((sum, kid) => sum + count(kid, level + 1), 0);
    const counted = context.lookup((node as PDFDict).get(PDFName.of('Count')));
    if (!(counted instanceof PDFNumber) || counted.asNumber() !== pages)
      throw notWhole('its pages are counted otherwise than they are');
    return pages;
  };
  const catalog = context.lookup(context.trailerInfo.Root);
  if (!(catalog instanceof PDFDict) || catalog.get(PDFName.Type) !== PDFName.of('Catalog')) throw notWhole();
  return count(catalog.get(PDFName.of('Pages')), 0);
}
