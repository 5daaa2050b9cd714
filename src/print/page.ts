import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'puppeteer';
import { MachineFailure } from './failure.js';
import { guardPage } from './guard.js';

/** What the page holds that the printing must know. */
export interface PageContent {
  /** The ids that `<span class="page-of" data-target="…">` ask the page number of. */
  asked: string[];
  /** Every character of the text, once. */
  characters: string;
}

/** An HTML file open in the browser, ready to print. */
export interface OpenPage {
  page: Page;
  content: PageContent;
  /** Throws MachineFailure if anything was refused, failed or complained so far. */
  check: () => void;
  /** The printed page as PDF bytes. */
  print: (options: { tagged: boolean }) => Promise<Uint8Array>;
}

/** The process that draws the page died; the browser itself may still run. */
export class PageCrashed extends Error {
  override readonly name = 'PageCrashed';
}

const patience = 600_000;

/**
 * Loads the HTML file with its scripts off and nothing but the files of `directories` in reach, fonts included, lets `work`
 * use the page, and closes it. Throws MachineFailure if the page is not self-sufficient, PageCrashed if it dies.
 */
export async function withPage<T>(browser: Browser, html: string, directories: readonly string[], work: (open: OpenPage) => Promise<T>): Promise<T> {
  const page = await browser.newPage();
  // A page that has died answers nothing any more: whatever waits for it would wait for ever.
  const crash = new Promise<never>((_, reject) => page.once('error', (error) => reject(new PageCrashed(error.message))));
  try {
    return await Promise.race([openPage(page, html, directories).then(work), crash]);
  } finally {
    await page.close().catch(() => {});
  }
}

async function openPage(page: Page, html: string, directories: readonly string[]): Promise<OpenPage> {
  await page.setJavaScriptEnabled(false);
  await page.emulateMediaType('print');
  const troubles = await guardPage(page, directories);
  const check = () => refuseTroubles(html, troubles);
  try {
    await page.goto(pathToFileURL(html).href, { waitUntil: 'load', timeout: patience });
    troubles.push(...(await page.evaluate(loadFonts)), ...(await page.evaluate(brokenImages)));
  } finally {
    check(); // What was refused explains also why the loading failed.
  }
  const print = ({ tagged }: { tagged: boolean }) =>
    page.pdf({ preferCSSPageSize: true, printBackground: true, tagged, outline: tagged, timeout: patience });
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

/** Writes page numbers into the places that ask for them; an unknown one becomes two zeros, to keep its room. */
export async function fillNumbers(page: Page, pageOf: ReadonlyMap<string, number>): Promise<void> {
  await page.evaluate(writeNumbers, Object.fromEntries(pageOf));
}

/** Hides pictures (their room stays) or shows them again: a print for the page numbers alone does not need them. */
export async function showImages(page: Page, shown: boolean): Promise<void> {
  await page.evaluate(setImagesShown, shown);
}

// What follows runs inside the page, called from here; the page's own scripts stay off.

interface InPage {
  document: {
    body: { textContent: string };
    fonts: Iterable<{ family: string; weight: string; style: string; status: string; load: () => Promise<unknown> }> & { ready: Promise<unknown> };
    images: Iterable<{ complete: boolean; naturalWidth: number; currentSrc: string; src: string; loading: string; decode: () => Promise<void> }>;
    querySelectorAll: (selector: string) => Iterable<{ textContent: string; dataset: Record<string, string> }>;
    adoptedStyleSheets: unknown[];
  };
  CSSStyleSheet: new () => { replaceSync: (text: string) => void };
}

async function loadFonts(): Promise<string[]> {
  const { document } = globalThis as unknown as InPage;
  const faces = [...document.fonts];
  await Promise.allSettled(faces.map((face) => face.load()));
  await document.fonts.ready;
  return faces.filter((face) => face.status !== 'loaded').map((face) => `font not loaded: ${face.family} ${face.weight} ${face.style}`);
}

async function brokenImages(): Promise<string[]> {
  const { document } = globalThis as unknown as InPage;
  const images = [...document.images];
  for (const image of images) image.loading = 'eager';
  await Promise.allSettled(images.filter((image) => !image.complete).map((image) => image.decode()));
  const broken = images.filter((image) => !image.complete || image.naturalWidth === 0);
  return broken.map((image) => `image without a picture: ${(image.currentSrc || image.src).slice(0, 160)}`);
}

function readContent(): PageContent {
  const { document } = globalThis as unknown as InPage;
  const asked = [...document.querySelectorAll('.page-of')].map((place) => place.dataset['target'] ?? '');
  return { asked: [...new Set(asked)], characters: [...new Set(document.body.textContent)].join('') };
}

function writeNumbers(pageOf: Record<string, number>): void {
  const { document } = globalThis as unknown as InPage;
  for (const place of document.querySelectorAll('.page-of')) place.textContent = String(pageOf[place.dataset['target'] ?? ''] ?? '00');
}

function setImagesShown(shown: boolean): void {
  const { document, CSSStyleSheet } = globalThis as unknown as InPage;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync('img, svg, canvas { visibility: hidden !important }');
  document.adoptedStyleSheets = shown ? [] : [sheet];
}
