import { execFile, execFileSync } from 'node:child_process';
import fs, {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ExifReader from 'exifreader';
import sharp from 'sharp';
import { expect, it, onTestFinished, vi } from 'vitest';
import { gusset } from '../../commands/run.js';
import { buildFile, folderWith } from '../../project/scratch.js';

const note = `---
kind: body-structure
title: Crossmember
stages: { cut: 2026-03-10, tacked: 2026-03-12, welded: 2026-03-14, painted: 2026-03-20 }
---

Words.
`;
const gps = {
  IFD3: { GPSLatitudeRef: 'S', GPSLatitude: '37/1 48/1 0/1', GPSLongitudeRef: 'E', GPSLongitude: '144/1 57/1 0/1' },
};
const photo = (shade: number, taken: string, orientation = 1) =>
  sharp({ create: { width: 64, height: 48, channels: 3, background: { r: shade, g: 90, b: 30 } } })
    .jpeg()
    .withExif({ IFD0: { Make: 'Phone' }, IFD2: { DateTimeOriginal: taken }, ...gps })
    .withMetadata({ orientation })
    .toBuffer();

async function setUp() {
  const build = folderWith({ 'build.md': buildFile, 'notes/020-crossmember.md': note });
  const phone = folderWith({});
  mkdirSync(join(phone, 'DCIM'));
  writeFileSync(join(phone, 'DCIM', 'IMG_1.JPG'), await photo(10, '2026:03:12 09:30:00', 6));
  writeFileSync(
    join(phone, 'DCIM', 'IMG_2.jpg'),
    Buffer.concat([
      await photo(20, '2026:03:14 16:05:00'),
      Buffer.from('PK\u0003\u0004 an archive behind the picture'),
    ]),
  );
  return { build, phone, taken: () => readdirSync(join(build, 'photos')).sort() };
}

it('takes new photos in once, names them by note, stage and time, and says which hold points they could serve', async () => {
  const { build, phone, taken } = await setUp();
  const first = await gusset('photos', build, phone);
  expect(first.code).toBe(0);
  expect(taken()).toEqual(['020-crossmember-tacked-2026-03-12-0930.jpg', '020-crossmember-welded-2026-03-14-1605.jpg']);
  expect(first.out).toContain('the day of `tacked`');
  expect(first.out).toContain('Each new piece tacked, square and in place');
  expect(first.out).toContain('stage: tacked');
  const again = await gusset('photos', build, phone);
  expect(again.out).toContain('Nothing new: all 2 photos');
  expect(taken()).toHaveLength(2);
});

it('keeps the picture, time and orientation, and leaves position, camera and what follows the picture behind', async () => {
  const { build, phone, taken } = await setUp();
  const before = readFileSync(join(phone, 'DCIM', 'IMG_1.JPG'));
  await gusset('photos', build, phone);
  const [one, two] = taken().map((name) => readFileSync(join(build, 'photos', name)));
  for (const copy of [one!, two!]) {
    const tags = ExifReader.load(copy, { expanded: true });
    expect(tags.gps).toBeUndefined();
    expect(tags.exif?.['Make']).toBeUndefined();
    expect(copy.includes('archive behind')).toBe(false);
  }
  expect(ExifReader.load(one!)['DateTimeOriginal']?.description).toBe('2026:03:12 09:30:00');
  expect(ExifReader.load(one!)['Orientation']?.value).toBe(6);
  const pixels = (bytes: Buffer) => sharp(bytes).raw().toBuffer();
  expect(await pixels(one!)).toEqual(await pixels(before));
  expect(readFileSync(join(phone, 'DCIM', 'IMG_1.JPG'))).toEqual(before);
});

it('only says what it would do when asked to', async () => {
  const { build, phone } = await setUp();
  const { out, code } = await gusset(
    'photos',
    build,
    phone,
    '--dry-run',
    '--note',
    '020-crossmember',
    '--stage',
    'weldd',
  );
  expect(code).toBe(0);
  expect(out).toContain('would take IMG_1.JPG');
  expect(out).toContain('stage: welded');
  expect(() => readdirSync(join(build, 'photos'))).toThrow();
});

it('says what is wrong with a file that is no picture, and with a note that is not there', async () => {
  const { build, phone } = await setUp();
  writeFileSync(join(phone, 'broken.heic'), 'ftypheic but nothing else');
  const broken = await gusset('photos', build, phone);
  expect(broken.code).toBe(2);
  expect(broken.err).toContain('HEIC');
  expect((await gusset('photos', build, phone, '--note', '020-cross')).err).toContain(
    'expected one of 020-crossmember',
  );
  expect((await gusset('photos', build)).code).toBe(2);
});

it('names in the entry what was said to be shown, and leaves the key empty with what is open otherwise', async () => {
  const { build, phone } = await setUp();
  const named = ['--note', '020-crossmember', '--stage', 'tacked'];
  const open = await gusset('photos', build, phone, '--dry-run', ...named);
  expect(open.out).toContain('    proves: # what it shows of: tacked, cut-edge, body.weld-test\n');
  const said = await gusset('photos', build, phone, '--dry-run', ...named, '--proves', 'tacked, body.weld-test');
  expect(said.code).toBe(0);
  expect(said.out).toContain('    proves: [tacked, body.weld-test]\n');
});

it('offers only what is still open', async () => {
  const { build, phone } = await setUp();
  writeFileSync(
    join(build, 'notes', '020-crossmember.md'),
    note.replace(
      'painted: 2026-03-20 }',
      'painted: 2026-03-20 }\nphotos: [{ file: here.jpg, shows: tacked, stage: tacked, proves: [tacked] }]',
    ),
  );
  mkdirSync(join(build, 'photos'), { recursive: true });
  writeFileSync(join(build, 'photos', 'here.jpg'), await photo(30, '2026:03:12 08:00:00'));
  const { out } = await gusset('photos', build, phone, '--dry-run', '--note', '020-crossmember', '--stage', 'tacked');
  expect(out).toContain('    proves: # what it shows of: cut-edge, body.weld-test\n');
});

it('refuses a name that the note does not know, and names without a note', async () => {
  const { build, phone } = await setUp();
  const wrong = await gusset('photos', build, phone, '--note', '020-crossmember', '--proves', 'taked');
  expect(wrong).toMatchObject({ code: 2, err: expect.stringContaining('did you mean `tacked`?') });
  const part = await gusset('photos', build, phone, '--note', '020-crossmember', '--proves', 'tacked left');
  expect(part).toMatchObject({ code: 2, err: expect.stringContaining('no part `left` of `tacked`') });
  expect((await gusset('photos', build, phone, '--proves', 'tacked')).code).toBe(2);
  expect(() => readdirSync(join(build, 'photos'))).toThrow();
});

it('takes in the others where one cannot be read, and shows the entries of those taken', async () => {
  const { build, phone, taken } = await setUp();
  writeFileSync(join(phone, 'DCIM', 'IMG_0.jpg'), 'not a picture');
  writeFileSync(join(phone, 'DCIM', 'IMG_9.png'), (await photo(30, '2026:03:15 10:00:00')).subarray(0, 200));
  const { code, out, err } = await gusset('photos', build, phone);
  expect(code).toBe(2);
  expect(taken()).toHaveLength(2);
  for (const name of taken()) expect(out).toContain(`- file: ${name}`);
  expect(out).toContain('Took in 2 photo(s)');
  expect(err).toMatch(/IMG_0\.jpg: .*[^]*IMG_9\.png: /);
});

// What a photo viewer and this program would see differently, or would take as something else than a picture.
it.each([
  ['a drawing', 'IMG_0.jpg', () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')],
  ['a drawing behind a comment', 'IMG_0.png', () => Buffer.from('<!-- x --><svg xmlns="http://www.w3.org/2000/svg"/>')],
  ['a page', 'IMG_0.jpg', () => Buffer.from('%PDF-1.7\n')],
  ['a picture that moves', 'IMG_0.webp', () => moving().then((m) => m.webp().toBuffer())],
  ['a picture that moves, under another name', 'IMG_0.jpg', () => moving().then((m) => m.gif().toBuffer())],
  ['nothing', 'IMG_0.jpg', () => Buffer.alloc(0)],
] as const)('does not take %s in as a photo, and takes in the others', async (_, name, make) => {
  const { build, phone, taken } = await setUp();
  writeFileSync(join(phone, 'DCIM', name), await make());
  const { code, err } = await gusset('photos', build, phone);
  expect([code, err]).toEqual([2, expect.stringContaining(name)]);
  expect(taken()).toHaveLength(2);
});
it('does not read a file that is larger than a photo can be, and takes in the others', async () => {
  const { build, phone, taken } = await setUp();
  writeFileSync(join(phone, 'DCIM/IMG_0.jpg'), '');
  truncateSync(join(phone, 'DCIM/IMG_0.jpg'), 3 * 2 ** 30);
  const { code, err } = await gusset('photos', build, phone);
  expect([code, err]).toEqual([2, expect.stringMatching(/IMG_0\.jpg: is 3072 MB, more than a photo can be/)]);
  expect(taken()).toHaveLength(2);
});

async function moving() {
  const frames = await Promise.all(
    ['#f00', '#0f0'].map((background) =>
      sharp({ create: { width: 20, height: 20, channels: 3, background } })
        .png()
        .toBuffer(),
    ),
  );
  return sharp(frames, { join: { animated: true } });
}

it('shows the entries of those taken where the disk refuses the next', async () => {
  const { build, phone, taken } = await setUp();
  const real = fs.linkSync;
  let links = 0;
  vi.spyOn(fs, 'linkSync').mockImplementation((from, to) => {
    if (links++ > 0) throw Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' });
    real(from, to);
  });
  vi.spyOn(fs, 'copyFileSync').mockImplementation(() => {
    throw Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' });
  });
  syncBuiltinESMExports();
  onTestFinished(() => {
    vi.restoreAllMocks();
    syncBuiltinESMExports();
  });
  const { code, out, err } = await gusset('photos', build, phone);
  expect(code).toBe(3);
  expect(taken()).toHaveLength(1);
  expect(out).toContain(`- file: ${taken()[0]}`);
  expect(err).toContain('no space left');
});

it('loses none where two runs take the same names at once', { timeout: 120_000 }, async () => {
  const { build } = await setUp();
  const phones = await Promise.all(
    [0, 10].map(async (shade) => {
      const phone = folderWith({});
      for (let i = 0; i < 12; i++)
        writeFileSync(join(phone, `${i}.jpg`), await photo(shade + 20 * i, '2026:03:12 09:30:00'));
      return phone;
    }),
  );
  const cli = fileURLToPath(new URL('../../../dist/bundle/cli.js', import.meta.url));
  const runs = phones.map(
    (phone) =>
      new Promise<string>((resolve, reject) =>
        execFile(process.execPath, [cli, 'photos', build, phone], (error, out) =>
          error ? reject(error) : resolve(out),
        ),
      ),
  );
  const out = (await Promise.all(runs)).join('');
  const names = readdirSync(join(build, 'photos'));
  expect(names).toHaveLength(24);
  for (const name of names) expect(out).toContain(`- file: ${name}\n`);
  const originals = names.map(
    (name) => /gusset-original:(\w{64})/.exec(readFileSync(join(build, 'photos', name), 'latin1'))?.[1],
  );
  expect(new Set(originals).size).toBe(24);
});

it('says what it does not look at: a folder that is not there, a stage that is none, links and what is no plain file', async () => {
  const { build, phone } = await setUp();
  expect(await gusset('photos', build, join(phone, 'nowhere'))).toMatchObject({
    code: 2,
    err: expect.stringContaining('found no folder'),
  });
  for (const stage of ['../../x', 'somewhen'])
    expect(await gusset('photos', build, phone, '--stage', stage)).toMatchObject({ code: 2 });
  const elsewhere = folderWith({});
  symlinkSync(join(phone, 'DCIM'), join(elsewhere, 'a folder'));
  symlinkSync(join(phone, 'DCIM', 'IMG_1.JPG'), join(elsewhere, 'one.jpg'));
  execFileSync('mkfifo', [join(elsewhere, 'pipe.jpg')]);
  const { code, err } = await gusset('photos', build, elsewhere);
  expect(code).toBe(2);
  expect(err.split('\n').filter(Boolean)).toEqual([
    expect.stringMatching(/a folder: a link, which is not followed; /),
    expect.stringMatching(/one\.jpg: a link, which is not followed; /),
    expect.stringMatching(/pipe\.jpg: no plain file; /),
  ]);
  expect(existsSync(join(build, 'photos'))).toBe(false);
});
