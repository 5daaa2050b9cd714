/**
 * Draws the demo's illustrations: `node builds/make/illustrations.mjs [--draft] [--to <folder>] [<name>…]`, after
 * `npm run build`. Needs no network. The browser's own software renderer is used, so that machines agree.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import puppeteer from 'puppeteer';
import sharp from 'sharp';
import { findBrowser } from '../../dist/print/browser.js';
import { taken } from './taken.mjs';

const { values, positionals } = parseArgs({ allowPositionals: true, options: { draft: { type: 'boolean' }, to: { type: 'string' } } });
const size = values.draft ? { width: 640, height: 480, samples: 8 } : { width: 1280, height: 960, samples: 16 };
const folder = values.to ?? fileURLToPath(new URL('../sedge/photos', import.meta.url));

const { executable, env, from } = await findBrowser();
const profile = mkdtempSync(join(tmpdir(), 'studio-'));
const browser = await puppeteer.launch({
  executablePath: executable, headless: from === 'package' ? 'shell' : true, userDataDir: profile, pipe: true, protocolTimeout: 3_600_000,
  env: { ...process.env, ...env },
  args: ['--no-sandbox', '--allow-file-access-from-files', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--ignore-gpu-blocklist'],
});
try {
  const page = await browser.newPage();
  page.on('console', (message) => console.error(message.text()));
  page.on('pageerror', (error) => console.error(error.stack ?? String(error)));
  await page.goto(new URL('studio/index.html', import.meta.url).href);
  await page.waitForFunction('window.names');
  const all = await page.evaluate('window.names');
  mkdirSync(folder, { recursive: true });
  for (const name of positionals.length > 0 ? positionals : all) {
    const began = Date.now();
    const url = await page.evaluate((name, size) => window.draw(name, size), name, size);
    const picture = await asPhoto(Buffer.from(url.split(',')[1], 'base64'), taken[name]);
    writeFileSync(join(folder, `${name}.jpg`), picture);
    console.log(`${name}.jpg ${Math.round(picture.length / 1024)} kB, ${((Date.now() - began) / 1000).toFixed(0)} s`);
  }
} finally {
  await browser.close();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
}

/** As JPEG of at most 350 kB, with the time it stands for. */
async function asPhoto(png, time) {
  const exif = { IFD0: { ImageDescription: 'rendered illustration' }, ...(time ? { IFD2: { DateTimeOriginal: time.replaceAll('-', ':') } } : {}) };
  for (let quality = 88; ; quality -= 4) {
    const picture = await sharp(png).withExif(exif).jpeg({ quality, mozjpeg: true }).toBuffer();
    if (picture.length <= 350 * 1024 || quality < 50) return picture;
  }
}
