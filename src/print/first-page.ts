import type { Browser } from 'puppeteer';
import { activeContent } from './active-pdf.js';
import { asViewed } from './as-viewed.js';
import { type Given, TookTooLong, withClosedPage } from './closed-page.js';
import { drawFirstPageInPage } from './draw-in-page.js';
import { readerFile } from './pdf-reader.js';

/** The first page of a PDF as PNG and how many pages there are, or in words why it could not be drawn. */
export type DrawnPage = { ok: true; png: Buffer; pages: number } | { ok: false; reason: string };

const mostBytes = 64 * 2 ** 20;

const blank =
  '<!doctype html><html lang="en"><meta charset="utf-8"><title>Paper</title><script type="module" src="/legacy/build/pdf.min.mjs"></script></html>';

/** Draws the first page as large as fits into so many pixels, in a page of the browser of its own. Never throws. */
export async function drawFirstPage(
  browser: Browser,
  bytes: Uint8Array,
  width: number,
  height: number,
  milliseconds = 30_000,
): Promise<DrawnPage> {
  const refusal =
    bytes.length > mostBytes
      ? `is ${Math.round(bytes.length / 2 ** 20)} MB, more than is drawn (64 MB)`
      : await activeContent(bytes);
  if (refusal !== undefined) return { ok: false, reason: `the file ${refusal}` };
  // The pages that are drawn are those that are attached to the document.
  const viewed = await asViewed(bytes);
  const given: Given = async (path) => {
    if (path === '/') return { mime: 'text/html', bytes: Buffer.from(blank) };
    return path === '/paper.pdf' ? { mime: 'application/pdf', bytes: viewed } : readerFile(path);
  };
  try {
    const drawn = await withClosedPage(browser, given, milliseconds, (page) =>
      page.evaluate(drawFirstPageInPage, width, height),
    );
    if ('error' in drawn) return { ok: false, reason: said[drawn.error] ?? 'its first page cannot be drawn' };
    return { ok: true, png: Buffer.from(drawn.png, 'base64'), pages: drawn.pages };
  } catch (error) {
    return {
      ok: false,
      reason:
        error instanceof TookTooLong
          ? `its first page was not drawn within ${milliseconds / 1000} s`
          : 'its first page cannot be drawn: the browser gave up over it',
    };
  }
}

/** What the library calls its errors. */
const said: Readonly<Record<string, string>> = {
  InvalidPDFException: 'the file is no whole PDF',
  FormatError: 'the file is no whole PDF',
  NoPages: 'the file has no pages',
  PasswordException: 'the file has a password',
};
