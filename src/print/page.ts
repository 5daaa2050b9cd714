import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'puppeteer';
import { MachineFailure } from '../platform/failure.js';
import { fontsDirectory } from '../platform/fonts.js';
import { collected } from './collected.js';
import { guardPage } from './guard.js';
import { brokenImages, loadFonts, numbers, type PageContent, readContent, standIns } from './in-page.js';

/** An HTML file open in the browser, ready to print. */
export interface OpenPage {
  page: Page;
  content: PageContent;
  /** Throws MachineFailure if anything was refused, failed or complained so far. */
  check: () => void;
  /** The printed page as PDF bytes. */
  print: () => Promise<Uint8Array>;
}

/** The process that draws the page died; the browser itself may still run. */
export class PageCrashed extends Error {
  override readonly name = 'PageCrashed';
}

const patience = 600_000;

/**
 * Loads the HTML file with its scripts off and nothing but the files of `directories` in reach, fonts included, lets `work`
 * use the page, and closes it. A page that shows nothing on a screen is laid out once only, when it is printed. Throws
 * MachineFailure if the page is not self-sufficient, PageCrashed if it dies.
 */
export async function withPage<T>(
  browser: Browser,
  html: string,
  directories: readonly string[],
  work: (open: OpenPage) => Promise<T>,
): Promise<T> {
  const page = await browser.newPage();
  // A page that has died answers nothing any more: whatever waits for it would wait for ever.
  const crash = new Promise<never>((_, reject) =>
    page.once('error', (error) => reject(new PageCrashed(error.message))),
  );
  try {
    return await Promise.race([openPage(page, html, directories).then(work), crash]);
  } finally {
    await page.close().catch(() => {});
  }
}

async function openPage(page: Page, html: string, directories: readonly string[]): Promise<OpenPage> {
  await page.setJavaScriptEnabled(false);
  const troubles = await guardPage(page, directories);
  const check = () => refuseTroubles(html, troubles);
  try {
    await page.goto(pathToFileURL(html).href, { waitUntil: 'load', timeout: patience });
    troubles.push(...(await page.evaluate(loadFonts)), ...(await page.evaluate(brokenImages)));
  } finally {
    check(); // What was refused explains also why the loading failed.
  }
  const print = async () =>
    collected(
      await page.createPDFStream({
        preferCSSPageSize: true,
        printBackground: true,
        tagged: true,
        outline: true,
        timeout: patience,
      }),
      dirname(html),
    );
  return { page, content: await page.evaluate(readContent), check, print };
}

function refuseTroubles(html: string, troubles: readonly string[]): void {
  if (troubles.length === 0) return;
  const shown = troubles.slice(0, 10).join('; ');
  throw new MachineFailure({
    found: `${html} did not load cleanly: ${shown}${troubles.length > 10 ? `; and ${troubles.length - 10} more` : ''}`,
    expected: 'a page that needs only its own files, and all of them',
    todo: 'put the missing files in place, or remove what refers to others',
  });
}

/** Writes stand-ins for the page numbers, each the place of the number among all. Returns how many digits there is room for. */
export async function writeStandIns(page: Page): Promise<number> {
  // Under the name by which the page has it, it would be the same font in the PDF.
  return page.evaluate(standIns, `${pathToFileURL(join(fontsDirectory, 'NotoSans-Regular.woff2')).href}?numbers`);
}

/** Writes page numbers into the places that ask for them. */
export async function writeNumbers(page: Page, pageOf: ReadonlyMap<string, number>): Promise<void> {
  await page.evaluate(numbers, Object.fromEntries(pageOf));
}
