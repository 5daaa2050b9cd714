import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ExifReader from 'exifreader';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { gusset } from '../../commands/run.js';
import { buildFile, folderWith } from '../../project/scratch.js';

// What is planted is looked for with a reader of metadata that this program does not use to remove them, and in the bytes.
const gps = {
  IFD0: { Make: 'PLANTED-MAKE', Copyright: 'PLANTED-OWNER' },
  IFD3: { GPSLatitudeRef: 'S', GPSLatitude: '37/1 48/1 0/1', GPSLongitudeRef: 'E', GPSLongitude: '144/1 57/1 0/1' },
};
const xmp =
  '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="37,48.82S" exif:GPSLongitude="144,57.0E" exif:UserComment="PLANTED-XMP"/></rdf:RDF></x:xmpmeta>';
const planted = (): Sharp =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: { r: 120, g: 90, b: 30 } } })
    .withExif(gps)
    .withXmp(xmp);

const segment = (marker: number, content: Buffer): Buffer => {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
};
/** A JPEG with further segments behind its start. */
const jpegWith = async (...more: Buffer[]): Promise<Buffer> => {
  const jpeg = await planted().jpeg().toBuffer();
  return Buffer.concat([jpeg.subarray(0, 2), ...more, jpeg.subarray(2)]);
};
const thumbnail = async (): Promise<Buffer> =>
  Buffer.concat([
    await sharp({ create: { width: 8, height: 8, channels: 3, background: '#fff' } })
      .withExif(gps)
      .jpeg()
      .toBuffer(),
  ]);
/** ISO 15948: a chunk with its check sum, put before the picture data. */
const pngWith = async (type: string, content: string): Promise<Buffer> => {
  const { crc32 } = await import('node:zlib');
  const png = await planted().png().toBuffer();
  const body = Buffer.concat([Buffer.from(type, 'latin1'), Buffer.from(content, 'latin1')]);
  const size = Buffer.alloc(4);
  size.writeUInt32BE(content.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([png.subarray(0, 33), size, body, check, png.subarray(33)]);
};

const files: [string, () => Promise<Buffer>][] = [
  ['plain.jpg', () => planted().jpeg().toBuffer()],
  ['comment.jpg', () => jpegWith(segment(0xfe, Buffer.from('PLANTED-COMMENT')))],
  ['iptc.jpg', () => jpegWith(segment(0xed, Buffer.from('Photoshop 3.0\0PLANTED-IPTC')))],
  [
    'jfxx.jpg',
    async () => jpegWith(segment(0xe0, Buffer.concat([Buffer.from('JFXX\0\x10PLANTED-JFXX'), await thumbnail()]))),
  ],
  [
    'jfif-thumbnail.jpg',
    () => jpegWith(segment(0xe0, Buffer.from(`JFIF\0\x01\x02\0\0\x01\0\x01\x04\x01PLANTED-RGB.`, 'latin1'))),
  ],
  ['several.jpg', () => jpegWith(segment(0xe2, Buffer.from('MPF\0PLANTED-MPF')))],
  ['behind.jpg', async () => Buffer.concat([await planted().jpeg().toBuffer(), Buffer.from('PLANTED-BEHIND')])],
  ['plain.png', () => planted().png().toBuffer()],
  ['text.png', () => pngWith('tEXt', 'Comment\0PLANTED-TEXT 37.8 S 144.9 E')],
  ['xmp.png', () => pngWith('iTXt', `XML:com.adobe.xmp\0\0\0\0\0${xmp}`)],
  ['behind.png', async () => Buffer.concat([await planted().png().toBuffer(), Buffer.from('PLANTED-BEHIND')])],
  ['plain.webp', () => planted().webp().toBuffer()],
  ['plain.avif', () => planted().avif().toBuffer()],
  ['plain.tiff', () => planted().tiff().toBuffer()],
];

describe('a photo that is taken in', () => {
  it.each(files)("%s carries nothing but its time and its original's hash", async (name, make) => {
    const build = folderWith({ 'build.md': buildFile, 'notes/020-a.md': '---\nkind: general\ntitle: A note\n---\n' });
    const phone = folderWith({});
    mkdirSync(join(phone, 'x'));
    const original = await make();
    expect(original.toString('latin1')).toMatch(/PLANTED/);
    writeFileSync(join(phone, 'x', name), original);
    const { code, err } = await gusset('photos', build, phone);
    expect([code, err]).toEqual([0, '']);
    const [copy] = readdirSync(join(build, 'photos'));
    const bytes = readFileSync(join(build, 'photos', copy!));
    expect(bytes.toString('latin1')).not.toMatch(/PLANTED|JFXX|MPF/);
    const tags = ExifReader.load(bytes, { expanded: true });
    expect([tags.gps, tags.xmp, tags.iptc, tags.exif?.['Make'], tags.Thumbnail]).toEqual(Array(5).fill(undefined));
    expect(tags.exif?.['ImageDescription']?.description).toMatch(/^gusset-original:[0-9a-f]{64}$/);
    expect(await sharp(bytes).stats()).toBeTruthy();
    const { width, height } = await sharp(bytes).metadata();
    expect([width, height]).toEqual([60, 40]);
  });
});
