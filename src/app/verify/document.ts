import { createHash } from 'node:crypto';
import { PDFDocument } from '@cantoo/pdf-lib';
import { type Manifest, manifestName, readManifest } from '../../history/manifest.js';
import { wordsOf } from '../../platform/failure.js';
import { packedOddly, unpacksToTooMuch } from '../../print/unpacks.js';

/** A PDF that this program printed, taken apart. */
export interface VerifiedDocument {
  bytes: Uint8Array;
  sha256: string;
  pdf: PDFDocument;
  manifest: Manifest;
  /** Contents of the attached files by name; of two with one name, none is trusted. */
  attached: ReadonlyMap<string, Uint8Array>;
  /** Names that are attached more than once. */
  twice: readonly string[];
}

interface Unverifiable {
  problem: string;
  /** A later version of the program printed it: that is nothing against the document. */
  later?: true;
}

const tooMuch = 'what it holds may unpack to more than a document can be: it was not printed by Gusset, or was altered';

/** Opens a PDF, or says in words why it cannot be verified. Never throws for what the file holds. */
export async function openDocument(bytes: Uint8Array): Promise<VerifiedDocument | Unverifiable> {
  try {
    if (unpacksToTooMuch(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength))) return { problem: tooMuch };
    const pdf = await PDFDocument.load(bytes, { updateMetadata: false, parseSpeed: Infinity });
    if (packedOddly(pdf)) return { problem: tooMuch };
    const files = pdf.getAttachments();
    const attached = new Map(files.map((file) => [file.name, file.data]));
    const twice = [...attached.keys()].filter((name) => files.filter((file) => file.name === name).length > 1);
    const found = attached.get(manifestName);
    if (!found)
      return {
        problem: `no ${manifestName} is attached to it: it was not printed by Gusset, or was saved by a program that dropped the attachments`,
      };
    const manifest = readManifest(Buffer.from(found).toString('utf8'));
    if ('problem' in manifest)
      return { ...manifest, problem: `the attached ${manifestName} cannot be read (${manifest.problem})` };
    return { bytes, sha256: sha256Of(bytes), pdf, manifest, attached, twice };
  } catch (error) {
    return { problem: `it cannot be read as a PDF: ${wordsOf(error)}` };
  }
}

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
