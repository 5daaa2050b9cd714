import { PDFDocument } from '@cantoo/pdf-lib';
import { packObjects, type ObjectStream, type PlainObject } from './object-streams.js';

/** A PDF as the browser printed it. */
export interface PrintedPdf {
  pdf: PDFDocument;
  /** The elements of its structure tree, nine objects in ten: nothing here changes them, so they are packed as they are, while the rest is worked on. */
  structure: Promise<readonly ObjectStream[]>;
}

const elementBegins = '<</Type /StructElem';
const objectEnds = '\nendobj\n';

/** Reads a PDF from a browser. One that is not laid out as expected is read whole, which takes longer and gives the same. */
export async function readPrinted(bytes: Uint8Array): Promise<PrintedPdf> {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const table = crossReferences(file);
  if (!table) return { pdf: await load(file), structure: Promise.resolve([]) };
  const { offsets, begins } = table;
  const inFile = [...offsets].sort(([, a], [, b]) => a - b);
  const elements: PlainObject[] = [];
  const rest: Uint8Array[] = [];
  let from = 0;
  inFile.forEach(([number, offset], index) => {
    const start = offset + `${number} 0 obj\n`.length;
    const end = inFile[index + 1]?.[1] ?? begins;
    const isElement = file.toString('latin1', start, start + elementBegins.length) === elementBegins && file.toString('latin1', end - objectEnds.length, end) === objectEnds;
    if (!isElement) return;
    elements.push({ number, bytes: file.subarray(start, end - objectEnds.length) });
    if (from < offset) rest.push(file.subarray(from, offset));
    from = end;
  });
  const structure = packObjects(elements);
  const trailer = file.indexOf('trailer', begins);
  const pdf = await load(Buffer.concat([...rest, file.subarray(from, begins), file.subarray(trailer)]));
  pdf.context.largestObjectNumber = Math.max(...[...offsets.keys()].slice(-1), pdf.context.largestObjectNumber);
  return { pdf, structure };
}

const load = (bytes: Uint8Array): Promise<PDFDocument> => PDFDocument.load(bytes, { updateMetadata: false, parseSpeed: Infinity });

/** Where each object begins, by the one cross-reference table at the end (ISO 32000-1:2008, 7.5.4); nothing for a file of another form. */
function crossReferences(file: Buffer): { offsets: Map<number, number>; begins: number } | undefined {
  const begins = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(file.toString('latin1', Math.max(0, file.length - 64)))?.[1]);
  const head = Number.isInteger(begins) ? /^xref\n0 (\d+)\n/.exec(file.toString('latin1', begins, begins + 32)) : null;
  if (!head) return undefined;
  const entries = begins + head[0].length;
  const offsets = new Map<number, number>();
  for (let number = 0; number < Number(head[1]); number += 1) {
    const [, offset, use] = /^(\d{10}) 00000 ([n])[ \r\n]{2}$/.exec(file.toString('latin1', entries + 20 * number, entries + 20 * (number + 1))) ?? [];
    if (use) offsets.set(number, Number(offset));
  }
  return { offsets, begins };
}
