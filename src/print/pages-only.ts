import { PDFArray, PDFDict, PDFDocument, PDFName, PDFNumber, type PDFPage, PDFRef } from '@cantoo/pdf-lib';
import { asViewed } from './as-viewed.js';
import { nameAt } from './scan-pdf.js';

/** Entries of a page (ISO 32000-1:2008, 7.7.3.3) that are seen; the others act, tell or lead somewhere else. */
const seen: ReadonlySet<string> = new Set([
  'Type',
  'Parent',
  'Resources',
  'MediaBox',
  'CropBox',
  'BleedBox',
  'TrimBox',
  'ArtBox',
  'Contents',
  'Rotate',
  'Group',
  'UserUnit',
  'Annots',
]);

/** Entries of an annotation (12.5.2) that are seen; `A` stays with links to addresses. */
const shown: ReadonlySet<string> = new Set(['Type', 'Subtype', 'Rect', 'F', 'AP', 'AS', 'Border', 'BS', 'C', 'CA']);

/** Flags of an annotation (12.5.3): it is hidden or on paper only; it is on paper, too. */
const unseen = 2 | 32;
const printed = 4;

/**
 * A copy of a PDF with its pages, what is drawn over them, and links to addresses: no fields, names, outline, layers, scripts,
 * files or details of who made it. What is seen on a screen is seen on paper. The same file gives the same bytes.
 *
 * @param bytes a PDF that only shows its pages
 */
export async function pagesOnly(bytes: Uint8Array): Promise<Uint8Array> {
  const from = await PDFDocument.load(await asViewed(bytes), { updateMetadata: false, parseSpeed: Infinity });
  for (const page of from.getPages()) bare(page);
  const copy = await PDFDocument.create({ updateMetadata: false });
  for (const page of await copy.copyPages(from, from.getPageIndices())) copy.addPage(page);
  return copy.save({ updateFieldAppearances: false, addDefaultPage: false });
}

/** Before it is copied, so that nothing comes along that only these entries lead to. */
function bare(page: PDFPage): void {
  const { node } = page;
  for (const key of node.keys()) if (!seen.has(key.decodeText())) node.delete(key);
  const annotations = node.lookup(PDFName.of('Annots'));
  node.delete(PDFName.of('Annots'));
  if (!(annotations instanceof PDFArray)) return;
  const kept = annotations.asArray().flatMap((one) => {
    const found = one instanceof PDFRef ? node.context.lookup(one) : one;
    return found instanceof PDFDict ? drawn(found) : [];
  });
  if (kept.length > 0) node.set(PDFName.of('Annots'), node.context.obj(kept));
}

/** An annotation that is seen or leads to an address. A field becomes the picture of itself. */
function drawn(annotation: PDFDict): PDFDict | [] {
  const { context } = annotation;
  const kind = nameAt(annotation, 'Subtype');
  const action = annotation.lookup(PDFName.of('A'));
  const isLink = kind === 'Link' && action instanceof PDFDict && nameAt(action, 'S') === 'URI';
  const flags = annotation.lookup(PDFName.of('F'));
  const isHidden = flags instanceof PDFNumber && (flags.asNumber() & unseen) !== 0;
  if (kind === 'Popup' || isHidden || (!isLink && !annotation.has(PDFName.of('AP')))) return [];
  const bare = context.obj({}) as PDFDict;
  for (const [key, value] of annotation.entries()) if (shown.has(key.decodeText())) bare.set(key, value);
  if (isLink) bare.set(PDFName.of('A'), context.obj({ S: 'URI', URI: (action as PDFDict).get(PDFName.of('URI'))! }));
  else {
    bare.set(PDFName.of('Subtype'), PDFName.of('Stamp'));
    bare.set(PDFName.of('F'), PDFNumber.of(printed));
  }
  return bare;
}
