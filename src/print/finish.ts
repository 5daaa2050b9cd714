import { createHash } from 'node:crypto';
import { AFRelationship, type PDFDocument, PDFHexString } from '@cantoo/pdf-lib';
import type { PrintedPdf } from './printed-pdf.js';
import { writePdf } from './write-pdf.js';

/** What the PDF says about itself. `date` is written as both its dates, so that printing later gives the same bytes. */
export interface DocumentDetails {
  title: string;
  author: string;
  subject: string;
  keywords: readonly string[];
  /** BCP 47, such as `en-AU`. */
  language: string;
  /** Becomes the first, lasting half of the PDF's /ID. */
  documentId: string;
  date: Date;
}

/** A file carried inside the PDF; `name` in plain letters, digits, dots, hyphens and underscores. */
export interface Attachment {
  name: string;
  mime: string;
  /** How the file relates to the document: data behind it, what it was made from, or something added. */
  relationship: 'Data' | 'Source' | 'Supplement';
  description: string;
  bytes: Uint8Array;
}

const noId = '0'.repeat(32);

/**
 * Gives a printed PDF its details, attachments, fixed dates and an /ID that is a digest of the document id and of all its
 * bytes, and gives its bytes in pieces. The same input gives the same bytes. Throws RangeError for an attachment name beyond plain ASCII.
 */
export async function finishPdf(
  printed: PrintedPdf,
  details: DocumentDetails,
  attachments: readonly Attachment[],
): Promise<Buffer[]> {
  const { pdf } = printed;
  pdf.setTitle(details.title, { showInWindowTitleBar: true });
  pdf.setAuthor(details.author);
  pdf.setSubject(details.subject);
  pdf.setKeywords([...details.keywords]);
  pdf.setLanguage(details.language);
  pdf.setCreator('Gusset');
  pdf.setCreationDate(details.date);
  pdf.setModificationDate(details.date);
  for (const file of [...attachments].sort((a, b) => (a.name < b.name ? -1 : 1))) await attach(pdf, file, details.date);
  const lasting = digest(details.documentId);
  pdf.context.trailerInfo.ID = pdf.context.obj([PDFHexString.of(lasting), PDFHexString.of(noId)]);
  return withId(await writePdf(printed));
}

async function attach(pdf: PDFDocument, file: Attachment, date: Date): Promise<void> {
  if (!/^[\w.-]+$/.test(file.name))
    throw new RangeError(`attachment name ${file.name}: expected plain letters, digits, dots, hyphens and underscores`);
  await pdf.attach(file.bytes, file.name, {
    mimeType: file.mime,
    description: file.description,
    creationDate: date,
    modificationDate: date,
    afRelationship: AFRelationship[file.relationship],
  });
}

/** Puts the digest of the file in the place that was kept for it. */
function withId(parts: Buffer[]): Buffer[] {
  const part = parts.findLast((each) => each.lastIndexOf(`<${noId}>`) >= 0);
  if (!part) throw new Error('the PDF was written without the place for its /ID');
  part.write(digest(...parts), part.lastIndexOf(`<${noId}>`) + 1, 'latin1');
  return parts;
}

const idAt = /^\/ID\s*\[\s*<[0-9A-F]{32}>\s*<([0-9A-F]{32})>\s*\]/;

/** The second half of the last /ID of a file, if that is of the form in which it is written here. */
function idAtTheEnd(file: Buffer): string | undefined {
  for (let at = file.lastIndexOf('/ID'); at !== -1; at = at === 0 ? -1 : file.lastIndexOf('/ID', at - 1)) {
    const text = file.toString('latin1', at, at + 120);
    if (/^\/ID\s*\[/.test(text)) return idAt.exec(text)?.[1];
  }
  return undefined;
}

/** Whether the /ID still is the digest of the file's bytes: after a flipped byte it is not. False for a PDF from elsewhere. */
export function hasOwnDigest(bytes: Uint8Array): boolean {
  const file = Buffer.from(bytes);
  const id = idAtTheEnd(file);
  if (id === undefined) return false;
  file.write(noId, file.lastIndexOf(`<${id}>`) + 1, 'latin1');
  return digest(file) === id;
}

function digest(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex').slice(0, 32).toUpperCase();
}
