import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { extname } from 'node:path';
import type { PDFDocument } from '@cantoo/pdf-lib';
import sharp from 'sharp';
import { type Manifest, manifestName, manifestText } from '../../history/manifest.js';
import { changed } from '../../platform/changed.js';
import type { Attachment } from '../../print/finish.js';
import { contentDigest, pageDigests } from '../../print/page-digests.js';
import { pagesOnly } from '../../print/pages-only.js';
import { jsonForm } from '../../project/format.js';
import type { Input, InputHash } from '../repository/inputs.js';

/** An attachment that is a copy of an input says so with `of`; one of its pages alone is written anew. */
type Carried = Attachment & { of?: string; rewritten?: true };

/** Kinds of file that are attached. Pictures are not: they may tell where they were taken. */
const attached: Readonly<Record<string, { mime: string; relationship: 'Source' | 'Supplement'; description: string }>> =
  {
    '.md': { mime: 'text/markdown', relationship: 'Source', description: 'Note as the builder wrote it' },
    '.yaml': { mime: 'application/yaml', relationship: 'Source', description: 'Limits as the builder wrote them' },
    '.csv': { mime: 'text/csv', relationship: 'Source', description: 'Readings as the builder wrote them' },
    '.pdf': { mime: 'application/pdf', relationship: 'Supplement', description: 'Pages of a paper that a note names' },
    '.txt': { mime: 'text/plain', relationship: 'Supplement', description: 'Paper that a note names' },
  };

/** What the PDF carries beside the manifest: the findings as data, and the builder's notes and papers. */
export async function carriedFiles(findings: string, inputs: readonly Input[]): Promise<Carried[]> {
  const kept = inputs.filter((i) => extname(i.path).toLowerCase() in attached);
  const files = kept.map(async (input): Promise<Carried> => {
    const ending = extname(input.path).toLowerCase();
    const bytes = input.text ?? (await readAgain(input));
    return {
      name: nameOf(input.path, kept),
      ...attached[ending]!,
      ...(ending === '.pdf' ? { bytes: await pagesOnly(bytes), rewritten: true } : { bytes }),
      of: input.path,
    };
  });
  return [
    {
      name: 'findings.json',
      mime: 'application/json',
      relationship: 'Data',
      description: 'All findings of this document',
      bytes: Buffer.from(findings),
    },
    ...(await Promise.all(files)),
  ];
}

async function readAgain({ path, absolute, sha256 }: Input): Promise<Buffer> {
  const bytes = await readFile(absolute);
  if (digestOf(bytes).sha256 !== sha256) throw changed(path);
  return bytes;
}

/** The path written without separators; two that would then be named alike stay apart by a digest. */
function nameOf(path: string, all: readonly Input[]): string {
  const plain = (of: string) => of.replace(/[^\w.-]+/g, '-').replace(/^[-.]+/, '');
  const alone = all.every((other) => other.path === path || plain(other.path) !== plain(path));
  return alone ? plain(path) : `${createHash('sha256').update(path).digest('hex').slice(0, 8)}-${plain(path)}`;
}

/** The part of the manifest that the printed pages do not decide. */
export type Origin = Omit<
  Manifest,
  'form' | 'browser' | 'pictures' | 'inputs' | 'attachments' | 'pages' | 'content' | 'outputs'
>;

/** What this document was made from, and the digests of what it shows and carries. */
export function manifestOf(
  origin: Origin,
  inputs: readonly InputHash[],
  carried: readonly Carried[],
  printed: PDFDocument,
  browser: string,
): Manifest {
  const pages = pageDigests(printed);
  return {
    form: jsonForm('manifest'),
    ...origin,
    browser,
    pictures: `libvips ${sharp.versions.vips}`,
    inputs: inputs.map(({ path, bytes, sha256 }) => ({ path, bytes, sha256 })),
    attachments: carried.map(({ name, bytes, of, rewritten }) => ({
      path: name,
      ...digestOf(bytes),
      ...(of === undefined ? {} : { of }),
      ...(rewritten ? { rewritten } : {}),
    })),
    pages,
    content: contentDigest(pages),
  };
}

export function manifestFile(manifest: Manifest): Attachment {
  return {
    name: manifestName,
    mime: 'application/json',
    relationship: 'Data',
    description: 'What this document was made from, with the SHA-256 of every file',
    bytes: Buffer.from(manifestText(manifest)),
  };
}

const digestOf = (bytes: Uint8Array): Omit<InputHash, 'path'> => ({
  bytes: bytes.length,
  sha256: createHash('sha256').update(bytes).digest('hex'),
});

/** The same of a file, which may be too large to hold. */
export async function digestOfFile(file: string): Promise<Omit<InputHash, 'path'>> {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const part of createReadStream(file, { highWaterMark: 2 ** 20 })) {
    hash.update(part as Buffer);
    bytes += (part as Buffer).length;
  }
  return { bytes, sha256: hash.digest('hex') };
}
