import { createHash } from 'node:crypto';
import { type Manifest, manifestText } from './manifest.js';
import { shown } from './who.js';

/** What the tag of an issue vouches for: with the commit, the very document that was printed of it. */
export interface Vouched {
  /** SHA-256 of the PDF. */
  pdf: string;
  /** SHA-256 of the manifest beside it, which lists the other files; tags of earlier versions have none. */
  manifest?: string | undefined;
  tool: string;
  browser: string;
}

/** The message of the tag of an issue. The lines at its end are read back when the document is verified. */
export function tagMessage(manifest: Manifest, title: string, pdf: { path: string; sha256: string }): string {
  return [
    `${shown(manifest.document)}: ${shown(title)}`,
    '',
    `Build: ${shown(manifest.folder === undefined || manifest.folder === '' ? manifest.build : manifest.folder)}`,
    `Document: ${pdf.path}`,
    `Document-SHA-256: ${pdf.sha256}`,
    `Manifest-SHA-256: ${createHash('sha256').update(manifestText(manifest)).digest('hex')}`,
    `Content-SHA-256: ${manifest.content}`,
    `Made-with: ${shown(manifest.tool)}`,
    `Printed-by: ${shown(manifest.browser)}`,
  ].join('\n');
}

/** Whether a tag was made of the build in that folder (from the root of the repository), as far as its message tells. */
export function isOfFolder(message: string, folder: string): boolean {
  const told = /^Build: (.+)$/m.exec(message)?.[1];
  return told === undefined || told === shown(folder);
}

/** What a tag's message vouches for; nothing where it is not of this form. */
export function vouchedBy(message: string): Vouched | undefined {
  const line = (name: string): string | undefined => new RegExp(`^${name}: (.+)$`, 'm').exec(message)?.[1];
  const [pdf, tool, browser] = [line('Document-SHA-256'), line('Made-with'), line('Printed-by')];
  return pdf !== undefined && /^[0-9a-f]{64}$/.test(pdf) && tool !== undefined && browser !== undefined
    ? { pdf, manifest: line('Manifest-SHA-256'), tool, browser }
    : undefined;
}
