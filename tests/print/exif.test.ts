import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { readExif } from '../../src/print/exif.js';

const picture = () => sharp({ create: { width: 30, height: 20, channels: 3, background: '#888888' } });
const taken = async (fields: Record<string, string>) =>
  readExif(await picture().withExif({ IFD2: fields }).jpeg().toBuffer()).takenAt;

describe('the time a photo was taken', () => {
  test("is the camera's, with its offset from UTC where it noted one", async () => {
    expect(await taken({ DateTimeOriginal: '2026:03:12 14:05:33', OffsetTimeOriginal: '+10:30' })).toBe(
      '2026-03-12T14:05:33+10:30',
    );
    expect(await taken({ DateTimeOriginal: '2026:03:12 14:05:33', OffsetTimeOriginal: '-03:00' })).toBe(
      '2026-03-12T14:05:33-03:00',
    );
    expect(await taken({ DateTimeOriginal: '2026:03:12 14:05:33' })).toBe('2026-03-12T14:05:33');
    expect(await taken({ DateTimeOriginal: '2026:03:12 14:05:33', OffsetTimeOriginal: '      ' })).toBe(
      '2026-03-12T14:05:33',
    );
  });

  test('falls back to when it was digitised, and never to when it was changed', async () => {
    expect(await taken({ DateTimeDigitized: '2026:03:12 14:05:33', OffsetTimeDigitized: '+10:00' })).toBe(
      '2026-03-12T14:05:33+10:00',
    );
    const changed = await picture()
      .withExif({ IFD0: { DateTime: '2026:03:12 14:05:33' } })
      .jpeg()
      .toBuffer();
    expect(readExif(changed).takenAt).toBeUndefined();
  });

  test.each([
    '0000:00:00 00:00:00',
    '2026:02:30 10:00:00',
    '2026:13:01 10:00:00',
    '2026:03:12 25:00:00',
    '    :  :     :  :  ',
    'yesterday',
  ])('is left out where the clock was never set (%s)', async (text) => {
    expect(await taken({ DateTimeOriginal: text })).toBeUndefined();
  });
});

describe("a photo's metadata", () => {
  test('tell size as stored, orientation and whether there is a position', async () => {
    const plain = await picture().withMetadata({ orientation: 6 }).jpeg().toBuffer();
    expect(readExif(plain)).toEqual({ orientation: 6, width: 30, height: 20, hasPosition: false });
    const placed = await picture()
      .withExif({ IFD3: { GPSLatitudeRef: 'S', GPSLatitude: '33/1 51/1 0/1' } })
      .jpeg()
      .toBuffer();
    expect(readExif(placed).hasPosition).toBe(true);
  });

  test('are read from PNG and WebP too', async () => {
    const fields = {
      IFD2: { DateTimeOriginal: '2026:03:12 14:05:33' },
      IFD3: { GPSLongitudeRef: 'E', GPSLongitude: '151/1 12/1 0/1' },
    };
    const expected = { takenAt: '2026-03-12T14:05:33', orientation: 1, width: 30, height: 20, hasPosition: true };
    expect(readExif(await picture().withExif(fields).png().toBuffer())).toEqual(expected);
    expect(readExif(await picture().withExif(fields).webp().toBuffer())).toEqual(expected);
  });

  test('tell of a position that is written as XMP', async () => {
    const xmp =
      '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="33,51.0S" exif:GPSLongitude="151,12.0E"/></rdf:RDF></x:xmpmeta>';
    expect(readExif(await picture().withXmp(xmp).jpeg().toBuffer()).hasPosition).toBe(true);
  });

  test('that are missing, cut off or nonsense are left out, whatever the bytes', async () => {
    const whole = await picture()
      .withExif({ IFD2: { DateTimeOriginal: '2026:03:12 14:05:33' } })
      .jpeg()
      .toBuffer();
    for (let length = 0; length < whole.length; length += 7)
      expect(readExif(whole.subarray(0, length)).orientation).toBe(1);
    for (let at = 0; at < 400; at += 3) {
      const bent = Buffer.from(whole);
      bent[at] = 0xff ^ (bent[at] as number);
      expect(typeof readExif(bent).hasPosition).toBe('boolean');
    }
    expect(readExif(Buffer.from('not a photo'))).toEqual({ orientation: 1, hasPosition: false });
    expect(readExif(new Uint8Array())).toEqual({ orientation: 1, hasPosition: false });
  });
});
