import { createHash } from 'node:crypto';
import {
  PDFArray,
  type PDFContext,
  PDFDict,
  type PDFDocument,
  PDFName,
  type PDFObject,
  PDFRawStream,
  PDFRef,
} from '@cantoo/pdf-lib';
import { streamBytes } from './stream-text.js';

/** What makes a page as it is seen: its size, what is drawn, with which fonts and pictures, and its links. */
const seen = ['MediaBox', 'CropBox', 'Rotate', 'Resources', 'Contents', 'Annots'];
/** Ways back up the document, and how a stream happens to be packed. */
const skipped = new Set(['Parent', 'P', 'StructParent', 'StructParents', 'Length', 'Filter', 'DecodeParms']);

/** SHA-256 of each page by meaning: the numbers of objects, their order in the file and their packing do not count. */
export function pageDigests(pdf: PDFDocument): string[] {
  const digest = digester(pdf.context);
  return pdf.getPages().map(({ node }) => {
    const entries = seen.map((name) => `${name} ${digest(node.getInheritableAttribute(PDFName.of(name)))}`);
    return sha256(entries.join('\n'));
  });
}

/** One SHA-256 for all pages, from those of {@link pageDigests}. */
export const contentDigest = (pages: readonly string[]): string => sha256(pages.join('\n'));

function digester(context: PDFContext): (object: PDFObject | undefined) => string {
  const done = new Map<string, string>();
  const digest = (object: PDFObject | undefined): string => {
    if (object === undefined) return 'none';
    if (object instanceof PDFRef) {
      const known = done.get(object.tag);
      if (known !== undefined) return known;
      done.set(object.tag, 'itself');
      const found = sha256(digest(context.lookup(object)));
      done.set(object.tag, found);
      return found;
    }
    if (object instanceof PDFArray) return `[${object.asArray().map(digest).join(' ')}]`;
    if (object instanceof PDFRawStream) return `${dictionary(object.dict)} ${content(object)}`;
    if (object instanceof PDFDict) return dictionary(object);
    return object.toString();
  };
  const dictionary = (dict: PDFDict): string => {
    const entries = dict.entries().map(([name, value]) => [name.decodeText(), value] as const);
    const told = entries.filter(([name]) => !skipped.has(name)).sort(([a], [b]) => (a < b ? -1 : 1));
    return `<<${told.map(([name, value]) => `${name} ${digest(value)}`).join(' ')}>>`;
  };
  return digest;
}

/** Unpacked, so that packing it otherwise makes no difference; a photo stays as it is, and what else it is said to be counts. */
function content(stream: PDFRawStream): string {
  try {
    return sha256(streamBytes(stream));
  } catch {
    const filter = String(stream.dict.get(PDFName.of('Filter')));
    return sha256(stream.getContents()) + (filter === '/DCTDecode' ? '' : filter);
  }
}

function sha256(data: string | Uint8Array): string {
  return createHash('sha256').update(data).digest('hex');
}
