import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';
import { readExif } from '../../src/print/exif.js';
import { type PhotoResult, preparePhotos } from '../../src/print/photos.js';
import { scratch } from './fixtures.js';

const colours = { R: [220, 30, 30], G: [30, 200, 30], B: [30, 30, 220], Y: [220, 220, 30] } as const;
type Colour = keyof typeof colours;

/** A picture of four quarters (top left, top right, bottom left, bottom right), so that every turn and mirror can be told. */
function quarters(width: number, height: number, corners = 'RGBY'): Sharp {
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      pixels.set(colours[corners[(x < width / 2 ? 0 : 1) + (y < height / 2 ? 0 : 2)] as Colour], (y * width + x) * 3);
    }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

/** The corners of a picture, each by the nearest of the four colours. */
async function cornersOf(file: string): Promise<string> {
  const { data, info } = await sharp(file)
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const nearest = (x: number, y: number) => {
    const pixel = data.subarray((y * info.width + x) * info.channels);
    const distance = (colour: Colour) =>
      colours[colour].reduce((sum, value, channel) => sum + (value - (pixel[channel] ?? 0)) ** 2, 0);
    return (Object.keys(colours) as Colour[]).reduce((best, colour) =>
      distance(colour) < distance(best) ? colour : best,
    );
  };
  const [right, low] = [info.width - 4, info.height - 4];
  return nearest(3, 3) + nearest(right, 3) + nearest(3, low) + nearest(right, low);
}

/**
 * Exif (CIPA DC-008), tag Orientation (0x0112): the side of the scene that row 0 of the stored picture shows, then the side
 * that column 0 shows.
 */
const orientations = [
  'top left',
  'top right',
  'bottom right',
  'bottom left',
  'left top',
  'right top',
  'right bottom',
  'left bottom',
];

/** How the scene RG/BY is stored under an orientation. */
function storedCorners(orientation: string): string {
  const [row = '', column = ''] = orientation.split(' ');
  const opposite: Record<string, string> = { top: 'bottom', bottom: 'top', left: 'right', right: 'left' };
  const scene: Record<string, string> = { 'top left': 'R', 'top right': 'G', 'bottom left': 'B', 'bottom right': 'Y' };
  const at = (one = '', other = '') => scene[`${one} ${other}`] ?? scene[`${other} ${one}`];
  return [
    at(row, column),
    at(row, opposite[column]),
    at(opposite[row], column),
    at(opposite[row], opposite[column]),
  ].join('');
}

const settings = (folder: string) => ({
  printWidthMm: 80,
  ppi: 254,
  quality: 82,
  cacheDirectory: join(folder, 'cache'),
});
const usable = (result: PhotoResult | undefined) => {
  if (!result?.ok) throw new Error(`not usable: ${JSON.stringify(result)}`);
  return result;
};

describe('a good photo', () => {
  test('of each of the eight Exif orientations comes out upright', async () => {
    const folder = scratch();
    const files = await Promise.all(
      orientations.map(async (orientation, index) => {
        const file = join(folder, `${index + 1}.jpg`);
        await quarters(40, 60, storedCorners(orientation))
          .withMetadata({ orientation: index + 1 })
          .jpeg({ quality: 95 })
          .toFile(file);
        return file;
      }),
    );
    expect(files.map((file) => readExif(readFileSync(file)).orientation)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    const results = (await preparePhotos(files, settings(folder))).map(usable);
    expect(await Promise.all(results.map(({ prepared }) => cornersOf(prepared)))).toEqual(Array(8).fill('RGBY'));
    expect(results.map(({ width, height }) => [width, height])).toEqual([
      ...Array(4).fill([40, 60]),
      ...Array(4).fill([60, 40]),
    ]);
    expect(results.every(({ prepared }) => readExif(readFileSync(prepared)).orientation === 1)).toBe(true);
  });

  test('is brought to print size, never enlarged, and keeps neither position nor any other metadata', async () => {
    const folder = scratch();
    const large = join(folder, 'large.jpg');
    await quarters(2000, 1000)
      .withExif({
        IFD0: { Make: 'Invented', Artist: 'Somebody' },
        IFD2: { DateTimeOriginal: '2026:03:12 14:05:33', OffsetTimeOriginal: '+10:00' },
        IFD3: {
          GPSLatitudeRef: 'S',
          GPSLatitude: '33/1 51/1 0/1',
          GPSLongitudeRef: 'E',
          GPSLongitude: '151/1 12/1 0/1',
        },
      })
      .jpeg()
      .toFile(large);
    const small = join(folder, 'small.jpg');
    await quarters(300, 200).jpeg().toFile(small);
    const before = createHash('sha256').update(readFileSync(large)).digest('hex');
    expect(readExif(readFileSync(large))).toEqual({
      takenAt: '2026-03-12T14:05:33+10:00',
      orientation: 1,
      width: 2000,
      height: 1000,
      hasPosition: true,
    });

    const [first, second] = (await preparePhotos([large, small], settings(folder))).map(usable);
    // 80 mm at 254 ppi = 800 pixels
    expect(first).toMatchObject({ width: 800, height: 400, mime: 'image/jpeg', sha256: before });
    expect(second).toMatchObject({ width: 300, height: 200 });
    const prepared = readFileSync(first!.prepared);
    expect(readExif(prepared)).toEqual({ orientation: 1, width: 800, height: 400, hasPosition: false });
    expect(prepared.includes('Exif')).toBe(false);
    expect(prepared.includes('Invented')).toBe(false);
    expect(createHash('sha256').update(readFileSync(large)).digest('hex')).toBe(before);
  });

  test('is taken from the cache the second time, and made anew for other settings', async () => {
    const folder = scratch();
    const file = join(folder, 'a.jpg');
    await quarters(1000, 500).jpeg().toFile(file);
    const [made] = (await preparePhotos([file], settings(folder))).map(usable);
    const { mtimeMs } = statSync(made!.prepared);
    const [again] = (await preparePhotos([file], settings(folder))).map(usable);
    expect([again!.prepared, statSync(again!.prepared).mtimeMs]).toEqual([made!.prepared, mtimeMs]);
    const good = readFileSync(made!.prepared);
    writeFileSync(made!.prepared, await sharp(good).negate().jpeg().toBuffer());
    await preparePhotos([file], settings(folder));
    expect(readFileSync(made!.prepared).equals(good)).toBe(true);
    const [other] = (await preparePhotos([file], { ...settings(folder), quality: 70 })).map(usable);
    expect(other!.prepared).not.toBe(made!.prepared);
    writeFileSync(made!.prepared, '');
    const [mended] = (await preparePhotos([file], settings(folder))).map(usable);
    expect(statSync(mended!.prepared).size).toBeGreaterThan(0);
  });

  test('identical photos are prepared once, and progress is told for each', async () => {
    const folder = scratch();
    const files = ['a.jpg', 'b.jpg', 'c.jpg'].map((name) => join(folder, name));
    const bytes = await quarters(900, 600).jpeg().toBuffer();
    for (const file of files) writeFileSync(file, bytes);
    const told: string[] = [];
    const results = (
      await preparePhotos(files, { ...settings(folder), onProgress: (done, total) => told.push(`${done}/${total}`) })
    ).map(usable);
    expect(new Set(results.map(({ prepared }) => prepared)).size).toBe(1);
    expect(results.map(({ file }) => file)).toEqual(files);
    expect(readdirSync(join(folder, 'cache')).filter((name) => !name.endsWith('.sha256'))).toHaveLength(1);
    expect(told).toEqual(['1/3', '2/3', '3/3']);
  });

  test('CMYK, 16-bit, grey and see-through pictures become plain sRGB of the same colours', async () => {
    const folder = scratch();
    const cmyk = join(folder, 'cmyk.jpg');
    await quarters(200, 200).toColourspace('cmyk').jpeg({ quality: 95 }).toFile(cmyk);
    const deep = join(folder, 'deep.png');
    await quarters(200, 200).toColourspace('rgb16').png().toFile(deep);
    const wide = join(folder, 'wide.jpg');
    await quarters(200, 200).withIccProfile('p3').jpeg({ quality: 95 }).toFile(wide);
    const grey = join(folder, 'grey.jpg');
    await sharp({ create: { width: 200, height: 200, channels: 3, background: '#808080' } })
      .toColourspace('b-w')
      .jpeg()
      .toFile(grey);
    const clear = join(folder, 'clear.webp');
    await sharp({ create: { width: 200, height: 200, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } })
      .webp()
      .toFile(clear);
    expect((await sharp(cmyk).metadata()).space).toBe('cmyk');
    expect((await sharp(deep).metadata()).depth).toBe('ushort');
    expect((await sharp(wide).metadata()).hasProfile).toBe(true);

    const results = (await preparePhotos([cmyk, deep, wide, grey, clear], settings(folder))).map(usable);
    const kinds = await Promise.all(results.map(({ prepared }) => sharp(prepared).metadata()));
    expect(kinds.map(({ space, depth, hasProfile }) => ({ space, depth, hasProfile }))).toEqual(
      Array(5).fill({ space: 'srgb', depth: 'uchar', hasProfile: false }),
    );
    expect(await Promise.all(results.slice(0, 3).map(({ prepared }) => cornersOf(prepared)))).toEqual([
      'RGBY',
      'RGBY',
      'RGBY',
    ]);
    // Display P3 stores this red as a less saturated one: it must come back as what it was in sRGB.
    const [red = 0, green = 0, blue = 0] = await sharp(results[2]!.prepared).raw().toBuffer();
    expect(Math.max(Math.abs(red - 220), Math.abs(green - 30), Math.abs(blue - 30))).toBeLessThan(8);
    const middle = async (file: string) => [...(await sharp(file).raw().toBuffer()).subarray(0, 3)];
    expect((await middle(results[3]!.prepared)).every((value) => Math.abs(value - 128) <= 3)).toBe(true);
    expect(await middle(results[4]!.prepared)).toEqual([255, 255, 255]);
  });

  test('a drawing stays lossless where that is smaller', async () => {
    const folder = scratch();
    const drawing = join(folder, 'drawing.png');
    await sharp(
      Buffer.from(
        '<svg xmlns="http://www.w3.org/2000/svg" width="600" height="400"><rect width="600" height="400" fill="white"/><path d="M20 20H500V380" stroke="black" fill="none"/></svg>',
      ),
    )
      .png()
      .toFile(drawing);
    const [result] = (await preparePhotos([drawing], settings(folder))).map(usable);
    expect(result).toMatchObject({ mime: 'image/png', width: 600, height: 400 });
  });
});

/** A PNG header that promises so many pixels, with next to no data behind it. */
function promising(width: number, height: number, frames?: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    ...(frames === undefined ? [] : [chunk('acTL', Buffer.from([0, 0, 0, frames, 0, 0, 0, 0]))]),
    chunk('IDAT', deflateSync(Buffer.alloc(1000))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

describe('a bad file', () => {
  test('says what is wrong and what to do, each on its own, and stops nothing', async () => {
    const folder = scratch();
    const good = await quarters(400, 300).jpeg().toBuffer();
    const frames = await Promise.all(
      ['#f00', '#0f0'].map((background) =>
        sharp({ create: { width: 20, height: 20, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );
    const contents: Record<string, Buffer> = {
      'good.jpg': good,
      'empty.jpg': Buffer.alloc(0),
      'short.jpg': good.subarray(0, good.length / 2),
      'short.png': (await quarters(400, 300).png().toBuffer()).subarray(0, 900),
      'bomb.png': promising(60_000, 60_000),
      'moving.gif': await sharp(frames, { join: { animated: true } })
        .gif()
        .toBuffer(),
      'moving.webp': await sharp(frames, { join: { animated: true } })
        .webp()
        .toBuffer(),
      'moving.png': promising(8, 8, 2),
      'moving.avif': Buffer.from('\0\0\0\x1cftypavis\0\0\0\0avifavismsf1', 'latin1'),
      'large.png': promising(30_000, 30_000),
      'none.png': promising(0, 8),
      'paper.jpg': Buffer.from('%PDF-1.7\n'),
      'phone.jpg': Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'),
      'clip.jpg': Buffer.from('\0\0\0\x18ftypmp42\0\0\0\0isommp42', 'latin1'),
      'drawing.jpg': Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><image href="file:///etc/passwd"/></svg>'),
      'words.jpg': Buffer.from('not a photo at all'),
      'noise.jpg': Buffer.concat([good.subarray(0, 20), Buffer.alloc(400, 7)]),
    };
    for (const [name, bytes] of Object.entries(contents)) writeFileSync(join(folder, name), bytes);
    mkdirSync(join(folder, 'folder.jpg'));
    const names = [...Object.keys(contents), 'folder.jpg', 'gone.jpg'];
    const results = await preparePhotos(
      names.map((name) => join(folder, name)),
      settings(folder),
    );
    const reasons = Object.fromEntries(
      results.map((result, index) => [names[index], result.ok ? 'ok' : result.reason]),
    );
    expect(reasons).toEqual({
      'good.jpg': 'ok',
      'empty.jpg': 'is empty (zero bytes)',
      'short.jpg': expect.stringContaining('cut short or damaged'),
      'short.png': expect.stringContaining('cut short or damaged'),
      'bomb.png': 'is 60000 × 60000 pixels (3600 megapixels), more than the 210 that are read',
      'moving.gif': 'holds 2 pictures or frames',
      'moving.webp': 'holds 2 pictures or frames',
      'moving.png': 'holds 3 pictures or frames',
      'moving.avif': 'holds a moving picture',
      'large.png': 'is 30000 × 30000 pixels (900 megapixels), more than the 210 that are read',
      'none.png': expect.stringContaining('cut short or damaged'),
      'paper.jpg': 'holds a PDF',
      'phone.jpg': expect.stringContaining('HEIC'),
      'clip.jpg': 'holds a video',
      'drawing.jpg': 'holds an SVG drawing or a web page',
      'words.jpg': 'holds something that is no picture',
      'noise.jpg': expect.stringContaining('cut short or damaged'),
      'folder.jpg': 'is not a file',
      'gone.jpg': 'is not there',
    });
    expect(results.every((result) => result.ok || result.hint.length > 0)).toBe(true);
  });

  test("a picture under another kind's name is used as what it is", async () => {
    const folder = scratch();
    const file = join(folder, 'shot.jpg');
    writeFileSync(file, await quarters(100, 100).png().toBuffer());
    expect((await preparePhotos([file], settings(folder)))[0]).toMatchObject({
      ok: true,
      mime: 'image/png',
      width: 100,
    });
  });

  test('one that was prepared before is not read where its content is known', async () => {
    const folder = scratch();
    const file = join(folder, 'a.jpg');
    await quarters(100, 100).jpeg().toFile(file);
    const [first] = (await preparePhotos([file], settings(folder))).map(usable);
    const hashes = new Map([[file, first!.sha256]]);
    writeFileSync(file, 'overwritten');
    expect(await preparePhotos([file], { ...settings(folder), hashes })).toEqual([first]);
    expect(
      (await preparePhotos([file], { ...settings(folder), hashes: new Map([[file, 'f'.repeat(64)]]) }))[0],
    ).toMatchObject({ ok: false });
  });

  test('a cache that cannot be written is a failure of the machine, not of the photo', async () => {
    const folder = scratch();
    const file = join(folder, 'a.jpg');
    await quarters(100, 100).jpeg().toFile(file);
    writeFileSync(join(folder, 'cache'), 'a file where the folder should be');
    await expect(preparePhotos([file], settings(folder))).rejects.toThrow(/could not be written/);
  });
});
