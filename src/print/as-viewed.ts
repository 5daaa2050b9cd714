import { PDFStream, PDFWriter } from '@cantoo/pdf-lib';
import { nameAt, scanPdf } from './scan-pdf.js';

/**
 * A PDF written anew with what a viewer finds in it, so that all that read it find the same: nothing of earlier versions, and
 * nothing that its table does not lead to.
 *
 * @throws Unfit where viewers may read it differently
 */
export async function asViewed(bytes: Uint8Array): Promise<Uint8Array> {
  const { viewed } = scanPdf(bytes);
  for (const [ref, object] of viewed.enumerateIndirectObjects())
    if (object instanceof PDFStream && layout.has(nameAt(object.dict, 'Type') ?? '')) viewed.delete(ref);
  return PDFWriter.forContext(viewed, Number.POSITIVE_INFINITY).serializeToBuffer();
}

/** How the file was laid out, which is done anew. */
const layout: ReadonlySet<string> = new Set(['XRef', 'ObjStm']);
