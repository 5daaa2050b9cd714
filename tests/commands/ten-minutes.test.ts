import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it, onTestFinished } from 'vitest';
import { launchBrowser } from '../../src/print/launch.js';
import { folderWith } from '../project/scratch.js';
import { gusset } from './run.js';
import { running } from './running.js';

/** The way of a new user through an empty folder, each step by what the step before said. */
it('leads from an empty folder to an issued document', { timeout: 600_000 }, async () => {
  const before = process.cwd();
  const shop = folderWith({});
  process.chdir(shop);
  onTestFinished(() => process.chdir(before));
  const git = (...args: string[]) =>
    execFileSync(
      'git',
      ['-c', 'user.name=J. Okoro (invented)', '-c', 'user.email=jo@example.org', '-c', 'commit.gpgsign=false', ...args],
      { encoding: 'utf8' },
    );
  const edit = (path: string, ...pairs: [string, string][]) => {
    let text = readFileSync(path, 'utf8');
    for (const [from, to] of pairs) {
      expect(text, path).toContain(from);
      text = text.replace(from, to);
    }
    writeFileSync(path, text);
  };
  git('init', '-q');
  git('config', 'user.name', 'J. Okoro (invented)');
  git('config', 'user.email', 'jo@example.org');

  // A build, with the car filled in.
  expect((await gusset('start', 'builds/wagon')).out).toContain('gusset note builds/wagon');
  edit(
    'builds/wagon/build.md',
    ['\n  make:', '\n  make: Examplia'],
    ['\n  model:', '\n  model: One'],
    ['\n  built:', '\n  built: 1984-05'],
    ['\n  category:', '\n  category: MA'],
    ['\n  registration:', '\n  registration: VIC'],
  );
  expect((await gusset('plan', 'builds/wagon', '--kinds', 'body-structure,general')).code).toBe(0);

  // Two notes.
  const floor = 'builds/wagon/notes/010-floor-let-in.md';
  expect((await gusset('note', 'builds/wagon', 'body-structure', 'Floor', 'let', 'in')).out).toContain(`Made ${floor}`);
  expect((await gusset('note', 'builds/wagon', 'general', 'Heat shield over the exhaust')).out).toContain(
    '020-heat-shield-over-the-exhaust.md',
  );
  edit(
    floor,
    ['\n  cut: #', '\n  cut: 2026-03-10 #'],
    ['\n  welded: #', '\n  welded: 2026-03-14 #'],
    [
      '\npieces:\n',
      '\npieces:\n  - { id: floor, role: bracket, joined-to: 1.20 ± 0.01 mm, now: { section: FL 100x3, steel: S355, wall: 2.90 ± 0.01 mm } }\n',
    ],
  );

  // Photos from a phone: the note and the stage by their day.
  mkdirSync('phone');
  writeFileSync(
    'phone/IMG_1.jpg',
    await sharp({ create: { width: 320, height: 240, channels: 3, background: '#864' } })
      .jpeg()
      .withExif({ IFD2: { DateTimeOriginal: '2026:03:14 16:05:00' } })
      .toBuffer(),
  );
  const taken = await gusset('photos', 'builds/wagon', 'phone');
  expect(taken.out).toContain('the day of `welded`');
  const [photo] = readdirSync('builds/wagon/photos');
  edit(floor, ['\nphotos:\n', `\nphotos:\n  - { file: ${photo}, shows: The weld before paint, stage: welded }\n`]);

  // A typing error, told with its place, and its mend.
  expect((await gusset('check', 'builds/wagon')).code).toBe(1);
  edit(floor, ['1.20 ± 0.01 mm', '1,20 ± 0.01 mm']);
  const wrong = await gusset('check', 'builds/wagon');
  expect(wrong.code).toBe(2);
  expect(wrong.err).toMatch(/builds\/wagon\/notes\/010-floor-let-in\.md:\d+:\d+: found [^]*\^[^]*hint: /);
  edit(floor, ['1,20 ± 0.01 mm', '1.20 ± 0.01 mm']);
  const checked = await gusset('check', 'builds/wagon');
  expect(checked.code).toBe(1);
  expect(checked.out).toContain('010-floor-let-in');

  // The document in a browser, which follows an edit.
  const preview = running('view', 'builds/wagon');
  const [, url] = await preview.said(/(http:\S+)/);
  const browser = await launchBrowser(undefined, 'loopback');
  onTestFinished(() => browser.close());
  const page = await browser.browser.newPage();
  await page.goto(url!, { waitUntil: 'load' });
  await page.waitForFunction(`document.querySelector('#note-010-floor-let-in img')?.naturalWidth > 0`);
  edit(floor, ['2.90 ± 0.01 mm', '2.80 ± 0.01 mm']);
  await page.waitForFunction(`document.querySelector('#note-010-floor-let-in').innerText.includes('2.80')`);
  await browser.close();
  expect(await preview.finish()).toBe(0);

  // Printed, committed and issued.
  const printed = await gusset('print', 'builds/wagon');
  expect(printed).toMatchObject({ code: 0, err: '' });
  expect(readFileSync('out/wagon/submission.pdf').subarray(0, 5).toString()).toBe('%PDF-');
  expect(readFileSync('out/wagon/submission.html', 'utf8')).not.toMatch(/<script/i);
  git('add', 'builds', '.gitignore');
  git('commit', '-q', '-m', 'The floor, as built');
  expect(git('status', '--porcelain', '--', 'builds', 'out', '.gitignore')).toBe('');
  const issued = await gusset('issue', 'builds/wagon', '--with-open');
  expect(issued, issued.err).toMatchObject({ code: 0 });
  expect(git('tag', '--list')).toMatch(/wagon/);
  expect(existsSync(join('out', 'wagon', 'manifest.json'))).toBe(true);
});
