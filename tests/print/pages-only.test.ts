import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { AFRelationship, type PDFDict, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { textOfPages } from '../../src/app/verify/page-text.js';
import { activeContent } from '../../src/print/active-pdf.js';
import { pagesOnly } from '../../src/print/pages-only.js';
import { good, stream, words, written } from './written-pdf.js';

/** A certificate with all that a paper may hold and more: what is planted is looked for in the bytes of the copy. */
async function laden(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.setTitle('PLANTED title');
  pdf.setAuthor('PLANTED author');
  const page = pdf.addPage([200, 100]);
  page.drawText('Mill certificate, invented', { size: 10 });
  pdf.addPage([100, 300]).drawText('Second page', { size: 10 });
  await pdf.attach(Buffer.from('PLANTED file'), 'PLANTED.exe', {
    mimeType: 'application/octet-stream',
    afRelationship: AFRelationship.Data,
  });
  const form = pdf.getForm();
  const field = form.createTextField('PLANTED.field');
  field.setText('2.48 mm');
  field.addToPage(page, { x: 10, y: 10, width: 80, height: 20 });
  const { context } = pdf;
  const annotations = page.node.Annots()!;
  const link = (A: object) =>
    annotations.push(
      context.register(context.obj({ Type: 'Annot', Subtype: 'Link', Rect: [0, 0, 9, 9], A, PLANTED: true } as never)),
    );
  link({ S: 'URI', URI: PDFString.of('https://example.org/certificate') });
  link({ S: 'JavaScript', JS: PDFString.of('PLANTED script') });
  page.node.set(PDFName.of('AA'), context.obj({ O: { S: 'JavaScript', JS: PDFString.of('PLANTED opening') } }));
  page.node.set(PDFName.of('PieceInfo'), context.obj({ PLANTED: 1 }));
  pdf.catalog.set(PDFName.of('OpenAction'), context.obj({ S: 'JavaScript', JS: PDFString.of('PLANTED') }));
  return pdf.save({ useObjectStreams: false });
}
const plain = async (bytes: Uint8Array) =>
  Buffer.from(
    await (await PDFDocument.load(bytes, { updateMetadata: false })).save({ useObjectStreams: false }),
  ).toString('latin1');

describe('the copy of a paper that is attached', () => {
  it('has its pages as they are seen, in their size and order', async () => {
    const before = await PDFDocument.load(await laden());
    const after = await PDFDocument.load(await pagesOnly(await laden()), { updateMetadata: false });
    expect(textOfPages(after).map((t) => t.trim())).toEqual(textOfPages(before).map((t) => t.trim()));
    expect(after.getPages().map((p) => p.getSize())).toEqual(before.getPages().map((p) => p.getSize()));
  });
  it('keeps links to addresses and the picture of a field, and nothing else that was in it', async () => {
    const copy = await pagesOnly(await laden());
    expect(Buffer.from(await laden()).toString('latin1')).toContain('PLANTED');
    const text = await plain(copy);
    expect(text).not.toMatch(/PLANTED|JavaScript|\/AA|OpenAction|AcroForm|EmbeddedFile|\/Info/);
    expect(text).toContain('https://example.org/certificate');
    const [first] = (await PDFDocument.load(copy)).getPages();
    const kinds = first!.node
      .Annots()!
      .asArray()
      .map((a) => (first!.node.context.lookup(a) as PDFDict).get(PDFName.of('Subtype'))!.toString());
    expect(kinds.sort()).toEqual(['/Link', '/Stamp']);
    expect(await activeContent(copy)).toBeUndefined();
  });
  // Flags of annotations: ISO 32000-1:2008, 12.5.3 (2 hidden, 4 on paper, too, 32 not on a screen).
  it.each([
    ['hidden', 2, undefined],
    ['on paper only', 4 | 32, undefined],
    ['on a screen only', 0, 4],
    ['on both', 4, 4],
  ])('shows on paper what is seen on a screen: of a stamp %s', async (_, flags, after) => {
    const stamp = `<< /Type /Annot /Subtype /Stamp /Rect [0 0 99 99] /F ${flags} /AP << /N 6 0 R >> >>`;
    const paper = written({
      ...good,
      3: good[3]!.replace('/Contents', `/Annots [${stamp}] /Contents`),
      6: stream('/Type /XObject /Subtype /Form /BBox [0 0 99 99]', words('235 MPa')),
    });
    expect(await activeContent(paper)).toBeUndefined();
    const [page] = (await PDFDocument.load(await pagesOnly(paper))).getPages();
    const kept = page!.node.Annots()?.lookup(0) as PDFDict | undefined;
    expect(kept?.get(PDFName.of('F'))?.toString()).toBe(after === undefined ? undefined : String(after));
  });
  it('is the same bytes for the same paper', async () => {
    const paper = await laden();
    expect(Buffer.from(await pagesOnly(paper)).equals(Buffer.from(await pagesOnly(paper)))).toBe(true);
  });
  it('can be made of every paper of the demo, and only shows', async () => {
    const folder = 'builds/sedge/papers';
    for (const name of readdirSync(folder).filter((n) => n.endsWith('.pdf'))) {
      const paper = readFileSync(join(folder, name));
      const copy = await pagesOnly(paper);
      expect(await activeContent(copy), name).toBeUndefined();
      const [before, after] = [await PDFDocument.load(paper), await PDFDocument.load(copy)];
      expect(after.getPageCount()).toBe(before.getPageCount());
    }
  });
});
