import type { Browser, HTTPRequest, Page } from 'puppeteer';
import { PageCrashed } from './page.js';

/** What a closed page is given, by its path. */
export type Given = (path: string) => Promise<{ mime: string; bytes: Uint8Array } | undefined>;

/** An address that is nobody's (RFC 2606, 2): only what is given answers there. */
const origin = 'http://paper.invalid';

/** Code comes from what is given, is never made from text, and reaches nothing else; the worker is held to the same. */
const policy =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; connect-src 'self'; img-src blob: data:; font-src blob: data:";

/**
 * Opens a page of its own that has what is given and can reach nothing else, lets `work` use it, and closes it. Throws
 * PageCrashed if it dies, TookTooLong after so many milliseconds.
 */
export async function withClosedPage<T>(
  browser: Browser,
  given: Given,
  milliseconds: number,
  work: (page: Page) => Promise<T>,
): Promise<T> {
  const page = await browser.newPage();
  const crash = new Promise<never>((_, reject) =>
    page.once('error', (error) => reject(new PageCrashed(error.message))),
  );
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => (timer = setTimeout(() => reject(new TookTooLong()), milliseconds)));
  try {
    return await Promise.race([open(page, given).then(work), crash, late]);
  } finally {
    clearTimeout(timer);
    await page.close().catch(() => {});
  }
}

export class TookTooLong extends Error {
  override readonly name = 'TookTooLong';
}

async function open(page: Page, given: Given): Promise<Page> {
  await page.setRequestInterception(true);
  page.on('request', (request) => void answer(request, given).catch(() => {}));
  await page.goto(`${origin}/`, { waitUntil: 'load', timeout: 0 });
  return page;
}

async function answer(request: HTTPRequest, given: Given): Promise<void> {
  const url = new URL(request.url());
  const file = url.origin === origin ? await given(url.pathname) : undefined;
  if (!file) return request.abort('blockedbyclient');
  await request.respond({
    status: 200,
    contentType: file.mime,
    headers: { 'Content-Security-Policy': policy },
    body: file.bytes,
  });
}
