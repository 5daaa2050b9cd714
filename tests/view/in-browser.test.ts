import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import { running } from '../commands/running.js';
import { workshop } from '../commands/workshop.js';
import { folderWith } from '../project/scratch.js';

let browser: RunningBrowser;
beforeAll(async () => void (browser = await launchBrowser(undefined, 'loopback')));
afterAll(() => browser?.close());

/** What runs inside the page knows more than this project's own library does. */
const inPage = (page: Page, script: string): Promise<unknown> => page.evaluate(script);

async function open(files: Readonly<Record<string, string>> = workshop) {
  const build = folderWith(files);
  const preview = running('view', build);
  const [, url] = await preview.said(/(http:\/\/127\.0\.0\.1:\d+\/)/);
  const page = await browser.browser.newPage();
  onTestFinished(() => page.close());
  const troubles: string[] = [];
  page.on('console', (message) => ['error', 'warn'].includes(message.type()) && troubles.push(message.text()));
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('requestfailed', (request) => troubles.push(`${request.url()} ${request.failure()?.errorText}`));
  await page.setViewport({ width: 1000, height: 700 });
  await page.goto(url!, { waitUntil: 'load' });
  const edit = (path: string, from: string, to: string) => {
    const before = readFileSync(join(build, path), 'utf8');
    expect(before).toContain(from);
    writeFileSync(join(build, path), before.replace(from, to));
  };
  const see = (text: string) =>
    page.waitForFunction(`document.body.innerText.includes(${JSON.stringify(text)})`, { timeout: 40_000 });
  return { build, preview, page, edit, see, troubles };
}

describe('the preview in a browser', () => {
  it('shows an edit where it was made, marks it and keeps the reading place', { timeout: 180_000 }, async () => {
    const { page, edit, see, troubles } = await open();
    await inPage(
      page,
      `document.querySelector('#note-030-driveline h3').scrollIntoView({ block: 'start', behavior: 'instant' })`,
    );
    const place = () => inPage(page, `document.querySelector('#note-030-driveline h3').getBoundingClientRect().top`);
    const [before, scrolled] = [await place(), await inPage(page, 'scrollY')];
    await inPage(page, `window.kept = document.querySelector('#note-030-driveline')`);

    edit(
      'notes/020-crossmember.md',
      'It was tacked, measured and welded.',
      'It was tacked.\n\nThen it was measured twice, and a second man looked at it.\n\nThen it was welded.',
    );
    await see('a second man looked at it');
    expect(Math.abs(((await place()) as number) - (before as number)), 'a scroll lands on whole pixels').toBeLessThan(
      1,
    );
    expect(await inPage(page, 'scrollY')).not.toBe(scrolled);
    expect(await inPage(page, `window.kept === document.querySelector('#note-030-driveline')`)).toBe(true);
    const marked = (await inPage(
      page,
      `[...document.querySelectorAll('.view-changed')].map((e) => e.innerText)`,
    )) as string[];
    expect(marked).toContain('Then it was measured twice, and a second man looked at it.');
    expect(marked.some((text) => text.includes('The pressed one did not fit'))).toBe(false);
    await see('notes/020-crossmember.md saved. Changed: ');

    edit('notes/020-crossmember.md', 'The pressed one', 'The old one');
    await see('The old one did not fit.');
    expect(await inPage(page, `[...document.querySelectorAll('.view-changed')].map((e) => e.innerText)`)).toEqual([
      'The old one did not fit.',
    ]);
    expect(troubles).toEqual([]);
  });

  it('keeps the last good document while a note is broken, says what is wrong with it, and goes on when it is mended', {
    timeout: 180_000,
  }, async () => {
    const { page, edit, see, troubles, preview } = await open();
    edit('notes/020-crossmember.md', 'value: 2.48 mm', 'value: 2.48 kg');
    await see('One problem keeps the notes from being read');
    await see('notes/020-crossmember.md:9:');
    expect(await inPage(page, `document.querySelector('#view-problems pre').innerText.split('\\n')[1].trim()`)).toMatch(
      /^\^+$/,
    );
    expect(await inPage(page, `document.querySelector('#view-problems a').getAttribute('href')`)).toBe(
      '#note-020-crossmember',
    );
    expect(await inPage(page, `document.querySelector('main').innerText.includes('2.48')`)).toBe(true);
    await page.reload({ waitUntil: 'load' });
    await see('One problem keeps the notes from being read');
    expect(await inPage(page, `document.querySelectorAll('main > *').length`)).toBeGreaterThan(10);

    edit('notes/020-crossmember.md', 'value: 2.48 kg', 'value: 2.41 mm');
    await page.waitForFunction(`document.querySelector('#view-problems').hidden`);
    await see('2.41');
    expect(preview.out()).toMatch(
      /020-crossmember\.md: 1 problem\(s\); the last document stays[^]*020-crossmember\.md: \d+ part\(s\) changed/,
    );
    expect(troubles).toEqual([]);
  });

  it('leads from an open finding to its chapter', { timeout: 180_000 }, async () => {
    const { page } = await open();
    const id = (await inPage(
      page,
      `(() => { const a = document.querySelector('#section-open a.ref[href^="#finding-020"]'); a.click(); return a.getAttribute('href').slice(1); })()`,
    )) as string;
    expect(await inPage(page, `document.getElementById(${JSON.stringify(id)}).closest('main > *').id`)).toBe(
      'note-020-crossmember',
    );
    await page.waitForFunction(
      `document.getElementById(${JSON.stringify(id)}).getBoundingClientRect().top < innerHeight`,
    );
  });

  it('begins without a document where the notes cannot be read yet, and tells when it has ended', {
    timeout: 180_000,
  }, async () => {
    const { page, edit, see, preview } = await open({
      ...workshop,
      'build.md': workshop['build.md']!.replace('category: MA', 'category: MX'),
    });
    await see('One problem keeps the notes from being read');
    edit('build.md', 'category: MX', 'category: MA');
    await see('Crossmember made anew');
    expect(await inPage(page, `document.querySelectorAll('.view-changed').length`)).toBe(0);
    expect(await preview.finish()).toBe(0);
    await see('The preview has ended');
    expect(preview.out()).toContain('The preview has ended.');
  });
});
