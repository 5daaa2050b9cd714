import { PDFDocument } from '@cantoo/pdf-lib';
import { sha256Of, type VerifiedDocument } from '../../../src/app/verify/document.js';
import { type Manifest, manifestName } from '../../../src/history/manifest.js';
import { contentDigest, pageDigests } from '../../../src/print/page-digests.js';

/** A document made up without a browser: two pages, two inputs, and the attachments that its manifest lists. */
export async function madeUp(): Promise<VerifiedDocument & { manifest: Manifest; attached: Map<string, Uint8Array> }> {
  const pdf = await PDFDocument.create();
  pdf.addPage([200, 300]);
  pdf.addPage([300, 200]);
  const pages = pageDigests(pdf);
  const note = Buffer.from('a note');
  const findings = Buffer.from('{"findings":[]}');
  const file = (path: string, bytes: Buffer) => ({ path, bytes: bytes.length, sha256: sha256Of(bytes) });
  const manifest: Manifest = {
    form: 'gusset-manifest/2',
    tool: 'gusset 0.2.0',
    browser: 'any',
    pictures: 'any',
    document: 'wagon, issue A',
    as: 'submission',
    photos: 'print',
    build: 'wagon',
    date: '2026-03-14',
    dirty: [],
    inputs: [file('notes/010-a.md', note), file('photos/a.jpg', Buffer.from('photo'))],
    attachments: [file('findings.json', findings), { ...file('notes-010-a.md', note), of: 'notes/010-a.md' }],
    pages,
    content: contentDigest(pages),
  };
  const attached = new Map<string, Uint8Array>([
    [manifestName, Buffer.from(JSON.stringify(manifest))],
    ['findings.json', findings],
    ['notes-010-a.md', note],
  ]);
  const bytes = Buffer.from('no file of its own');
  return { bytes, sha256: sha256Of(bytes), pdf, manifest, attached, twice: [] };
}
