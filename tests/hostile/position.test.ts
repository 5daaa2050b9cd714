import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decodePDFRawStream, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import sharp from 'sharp';
import { afterEach, expect, it, vi } from 'vitest';
import { gusset } from '../commands/run.js';
import { buildFile, folderWith } from '../project/scratch.js';

/**
 * Where a photo was taken must not get out. The program reads Exif with exifreader; what it wrote is read back here with
 * libvips and libexif (through sharp) and by the bytes that would say it, in whatever of the outputs they might be.
 */

const exif = {
  IFD0: { Make: 'Phonemaker Invented', Artist: 'Somebody Invented' },
  IFD2: { DateTimeOriginal: '2026:03:12 09:30:00' },
  IFD3: {
    GPSLatitudeRef: 'S',
    GPSLatitude: '37/1 48/1 49377/1000',
    GPSLongitudeRef: 'E',
    GPSLongitude: '144/1 57/1 0/1',
  },
};
const xmp =
  '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="37,48.82S" exif:GPSLongitude="144,57.0E"/></rdf:RDF></x:xmpmeta>';
/** 49377/1000 as Exif keeps it, in both byte orders: no picture would hold them by chance in so short a file, and words tell the rest. */
const rationals = [
  [0x00, 0x00, 0xc0, 0xe1, 0x00, 0x00, 0x03, 0xe8],
  [0xe1, 0xc0, 0x00, 0x00, 0xe8, 0x03, 0x00, 0x00],
].map((bytes) => Buffer.from(bytes));
const words = ['Phonemaker', 'Somebody Invented', 'GPSLatitude', '37,48.82'];

const tellsPosition = (bytes: Buffer): string[] => [
  ...words.filter((word) => bytes.includes(word)),
  ...rationals.filter((r) => bytes.includes(r)).map((r) => r.toString('hex')),
];

afterEach(() => vi.unstubAllEnvs());

it('leaves no position in pictures, HTML, data or attachments of the document', async () => {
  const picture = sharp({ create: { width: 400, height: 300, channels: 3, background: '#805030' } })
    .withExif(exif)
    .withXmp(xmp);
  const photos = {
    'a.jpg': await picture.clone().jpeg().toBuffer(),
    'b.png': await picture.clone().png().toBuffer(),
    'c.webp': await picture.clone().webp().toBuffer(),
  };
  for (const [name, bytes] of Object.entries(photos)) {
    const kept = await sharp(bytes).metadata();
    expect([name, kept.exif !== undefined, kept.xmp !== undefined]).toEqual([name, true, true]);
  }
  // The search finds what is there to be found.
  expect(tellsPosition(photos['a.jpg'])).toEqual(
    expect.arrayContaining(['Phonemaker', 'GPSLatitude', '37,48.82', expect.stringMatching(/^[0-9a-f]{16}$/)]),
  );

  const note = `---\nkind: general\ntitle: Roof\nphotos:\n${Object.keys(photos)
    .map((name) => `  - { file: ${name}, shows: The roof as ${name[0]} }`)
    .join('\n')}\n---\n\nSee [it](../photos/a.jpg).\n`;
  const folder = folderWith({
    'build.md': buildFile,
    'notes/010-roof.md': note,
    ...Object.fromEntries(Object.entries(photos).map(([name, bytes]) => [`photos/${name}`, bytes])),
  });
  const out = join(folder, 'out');
  // Pictures prepared before would tell nothing of how they are prepared now.
  vi.stubEnv('GUSSET_CACHE', join(folder, 'cache'));
  expect(await gusset('print', folder, '--out', out)).toMatchObject({ code: 0 });

  for (const name of ['submission.pdf', 'submission.html', 'findings.json', 'manifest.json'])
    expect([name, tellsPosition(readFileSync(join(out, name)))]).toEqual([name, []]);

  const html = readFileSync(join(out, 'submission.html'), 'utf8');
  const inline = [...html.matchAll(/src="data:image\/(?:jpeg|png);base64,([^"]+)"/g)].map((m) =>
    Buffer.from(m[1]!, 'base64'),
  );
  expect(inline).toHaveLength(3);
  for (const bytes of inline) {
    const { exif: hasExif, xmp: hasXmp, iptc, comments } = await sharp(bytes).metadata();
    expect({ hasExif, hasXmp, iptc, comments, tells: tellsPosition(bytes) }).toEqual({
      hasExif: undefined,
      hasXmp: undefined,
      iptc: undefined,
      comments: undefined,
      tells: [],
    });
  }

  const pdf = await PDFDocument.load(readFileSync(join(out, 'submission.pdf')), { updateMetadata: false });
  const streams = pdf.context
    .enumerateIndirectObjects()
    .flatMap(([, object]) => (object instanceof PDFRawStream ? [object] : []));
  const ofKind = (key: string, value: string) =>
    streams.filter((s) => s.dict.get(PDFName.of(key)) === PDFName.of(value));
  expect(ofKind('Subtype', 'Image').length).toBeGreaterThanOrEqual(1);
  expect(ofKind('Type', 'EmbeddedFile').length).toBeGreaterThanOrEqual(3);
  for (const stream of streams) {
    const jpeg = stream.dict.get(PDFName.of('Filter')) === PDFName.of('DCTDecode');
    const content = Buffer.from(jpeg ? stream.contents : decodePDFRawStream(stream).decode());
    expect(tellsPosition(content)).toEqual([]);
    if (jpeg) expect((await sharp(content).metadata()).exif).toBeUndefined();
    // A picture among the attachments would carry what its file carries.
    expect(
      stream.dict.get(PDFName.of('Type')) === PDFName.of('EmbeddedFile') &&
        /^(?:\xff\xd8|\x89PNG|RIFF)/.test(content.toString('latin1', 0, 4)),
    ).toBe(false);
  }
});
