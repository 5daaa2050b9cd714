import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import ExifReader from 'exifreader';
import sharp from 'sharp';
import { expect, it, vi } from 'vitest';
import { viewState } from '../../src/app/view-state.js';
import { gusset } from '../commands/run.js';
import { buildFile, pagelessPdf } from '../history/invented.js';
import { scratch } from '../print/fixtures.js';
import { folderWith } from '../project/scratch.js';

async function certificate(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.addPage().drawText('Mill certificate, invented', { x: 60, y: 700 });
  pdf.addPage();
  return pdf.save();
}

it('first pages are in the print, with a reason where there is none, and in the preview once a print has drawn them', {
  timeout: 120_000,
}, async () => {
  const note =
    '---\nkind: general\ntitle: Roof\npapers:\n  - { file: tube.pdf, shows: mill certificate }\n  - { file: none.pdf, shows: the receipt }\n  - { file: words.txt, shows: a letter }\n---\n';
  const build = folderWith({
    'build.md': buildFile,
    'notes/010-roof.md': note,
    'papers/tube.pdf': await certificate(),
    'papers/none.pdf': pagelessPdf,
    'papers/words.txt': 'Roofs may be cut.',
  });
  vi.stubEnv('GUSSET_CACHE', scratch());
  const preview = async () => {
    vi.stubEnv('PUPPETEER_EXECUTABLE_PATH', '/no/browser/there');
    const state = viewState(build, 'submission', () => {});
    await state.look([]);
    vi.stubEnv('PUPPETEER_EXECUTABLE_PATH', undefined);
    return { state, html: state.shown().document!.parts.find((p) => p.id === 'section-papers')!.html };
  };
  expect((await preview()).html).not.toContain('<figure');

  const out = join(scratch(), 'o');
  expect(await gusset('print', build, '--out', out)).toMatchObject({ code: 0, err: '' });
  const html = readFileSync(join(out, 'submission.html'), 'utf8');
  expect(html).toMatch(
    /<img src="data:image\/png;base64,[^"]+" alt="First page of 2: mill certificate" width="\d+" height="944">.*<b>Paper tube\. <\/b>mill certificate\. .*First page of 2\./,
  );
  expect(html).toMatch(/No picture: the file has no pages\.<\/p><figcaption [^>]*><b>Paper none\. <\/b>the receipt\. /);
  expect(html.match(/<figure/g)).toHaveLength(2);

  const { state, html: shown } = await preview();
  const [, address] = /<img src="\/photos\/([^"]+)" alt="First page of 2: mill certificate"/.exec(shown)!;
  expect(readFileSync(state.photo(address!)!.file).subarray(1, 4).toString()).toBe('PNG');
  vi.unstubAllEnvs();
});

it('a paper that is a picture is shown whole, upright and without what a camera wrote into it, and is not attached', {
  timeout: 120_000,
}, async () => {
  const note =
    '---\nkind: general\ntitle: Roof\npapers:\n  - { file: ticket.jpg, shows: weighbridge ticket }\n  - { file: torn.png, shows: the receipt }\n---\n';
  // Lying on its side, as EXIF orientation 6 says (CIPA DC-008, 4.6.5), with the place where it was taken.
  const ticket = await sharp({ create: { width: 1600, height: 1000, channels: 3, background: '#eee' } })
    .jpeg()
    .withExif({ IFD3: { GPSLatitude: '37/1 48/1 0/1', GPSLatitudeRef: 'S' } })
    .withMetadata({ orientation: 6 })
    .toBuffer();
  expect(ExifReader.load(ticket, { expanded: true })).toMatchObject({
    gps: { Latitude: expect.closeTo(-37.8) },
    exif: { Orientation: { value: 6 } },
  });
  const build = folderWith({
    'build.md': buildFile,
    'notes/010-roof.md': note,
    'papers/ticket.jpg': ticket,
    'papers/torn.png': 'no picture',
  });
  vi.stubEnv('GUSSET_CACHE', scratch());
  const out = join(scratch(), 'o');
  expect(await gusset('print', build, '--out', out)).toMatchObject({ code: 0, err: '' });
  const html = readFileSync(join(out, 'submission.html'), 'utf8');
  const [, shown = '', width, height] =
    /<img src="data:image\/jpeg;base64,([^"]+)" alt="The paper as a picture: weighbridge ticket" width="(\d+)" height="(\d+)">/.exec(
      html,
    )!;
  expect(Number(height)).toBeGreaterThan(Number(width));
  expect(ExifReader.load(Buffer.from(shown, 'base64'), { expanded: true }).gps).toBeUndefined();
  expect(html).toContain('its file may tell where it was taken');
  expect(html).toMatch(/No picture: [^<]+<\/p><figcaption [^>]*><b>Paper torn\. <\/b>the receipt\. /);
  const pdf = await PDFDocument.load(readFileSync(join(out, 'submission.pdf')), { updateMetadata: false });
  expect(
    pdf
      .getAttachments()
      .map((file) => file.name)
      .sort(),
  ).toEqual(['build.md', 'findings.json', 'manifest.json', 'notes-010-roof.md']);
  vi.unstubAllEnvs();
});
