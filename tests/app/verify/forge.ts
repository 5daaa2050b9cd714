import { decodePDFRawStream, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { sha256Of } from '../../../src/app/verify/document.js';
import { type Manifest, manifestName } from '../../../src/history/manifest.js';
import { type Attachment, finishPdf } from '../../../src/print/finish.js';
import { contentDigest, pageDigests } from '../../../src/print/page-digests.js';

export interface Forgery {
  /** Changes the content that a page draws; nothing where that is not the page. */
  page?: (content: string) => string | undefined;
  /** New contents of attached files. */
  attached?: Readonly<Record<string, string>>;
  manifest?: (manifest: Manifest) => Manifest;
  /** Leaves the digests in the manifest as they were. */
  careless?: boolean;
}

/** A PDF altered by somebody who knows how it is made and puts every digest in it right. */
export async function forge(
  bytes: Uint8Array,
  { page, attached = {}, manifest: change = (m) => m, careless = false }: Forgery,
): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  if (page) alterPage(pdf, page);
  const files = pdf.getAttachments().map((file) => ({
    name: file.name,
    bytes: attached[file.name] === undefined ? file.data : Buffer.from(attached[file.name]!),
  }));
  const old = JSON.parse(Buffer.from(files.find((f) => f.name === manifestName)!.bytes).toString()) as Manifest;
  const digests = careless ? old.pages : pageDigests(pdf);
  const right = {
    ...old,
    pages: digests,
    content: contentDigest(digests),
    attachments: careless
      ? old.attachments
      : old.attachments.map((a) => ({ ...a, ...of(files.find((f) => f.name === a.path)!.bytes) })),
  };
  const listed = careless
    ? right
    : {
        ...right,
        inputs: right.inputs.map((input) => ({
          ...input,
          ...(right.attachments.find((a) => a.of === input.path) ?? {}),
          path: input.path,
          of: undefined,
        })),
      };
  const manifest = change(JSON.parse(JSON.stringify(listed)) as Manifest);
  const all = files.map(
    (f): Attachment => ({
      name: f.name,
      mime: 'text/plain',
      relationship: 'Data',
      description: '',
      bytes: f.name === manifestName ? Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`) : f.bytes,
    }),
  );
  for (const file of files) pdf.detach(file.name);
  const clean = await PDFDocument.load(await pdf.save(), { updateMetadata: false });
  return Buffer.concat(
    await finishPdf(
      { pdf: clean, structure: Promise.resolve([]) },
      {
        title: 'x',
        author: '',
        subject: '',
        keywords: [],
        language: 'en-AU',
        documentId: manifest.document,
        date: new Date('2026-01-01T00:00:00Z'),
      },
      all,
    ),
  );
}

const of = (bytes: Uint8Array) => ({ bytes: bytes.length, sha256: sha256Of(bytes) });

function alterPage(pdf: PDFDocument, change: (content: string) => string | undefined): void {
  for (const { node } of pdf.getPages()) {
    const ref = node.get(PDFName.of('Contents'));
    const stream = pdf.context.lookup(ref);
    if (!(stream instanceof PDFRawStream)) continue;
    const changed = change(Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1'));
    if (changed === undefined) continue;
    pdf.context.assign(ref as never, pdf.context.flateStream(Buffer.from(changed, 'latin1')));
    return;
  }
  throw new Error('no page was changed');
}
