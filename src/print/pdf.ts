import { resolve } from 'node:path';
import type { PDFDocument } from '@cantoo/pdf-lib';
import { ProtocolError, TimeoutError } from 'puppeteer';
import { MachineFailure, wordsOf } from '../platform/failure.js';
import { fontsDirectory } from '../platform/fonts.js';
import { writeFileWhole } from '../platform/whole.js';
import { embeddedFonts, refuseForeignFonts } from './embedded.js';
import { type Attachment, type DocumentDetails, finishPdf } from './finish.js';
import { launchBrowser, type RunningBrowser } from './launch.js';
import { printWithNumbers } from './numbers.js';
import { packGreys } from './pack-greys.js';
import { PageCrashed, withPage } from './page.js';

export interface PrintOptions extends DocumentDetails {
  /** The finished HTML file. Its own style sheet gives page size, margins and margin boxes. */
  html: string;
  /** Where the HTML and its photos lie; the page can read nothing but this and the shipped fonts. */
  directory: string;
  out: string;
  /** Files to carry inside, or what makes them once the pages are printed. */
  attachments?: readonly Attachment[] | ((printed: PDFDocument, browser: string) => readonly Attachment[]);
  /** A browser that is already running; else one is started and closed. */
  browser?: RunningBrowser;
}

export interface Printed {
  pages: number;
  /** Page of every id that a link of the document points to. */
  pageOf: Map<string, number>;
  /** How many times the page was printed until its numbers were true. */
  passes: number;
  browser: string;
}

/**
 * Prints the HTML file to a tagged PDF whose `<span class="page-of" data-target="ID">` tell true page numbers. The file at
 * `out` is replaced whole or not at all. Throws MachineFailure if the browser fails or the page is not self-sufficient.
 */
export async function printDocument(options: PrintOptions): Promise<Printed> {
  const running = options.browser ?? (await launchBrowser());
  try {
    return await withPage(running.browser, resolve(options.html), [options.directory, fontsDirectory], async (open) => {
      const { printed, pageOf, passes } = await printWithNumbers(open);
      const { pdf } = printed;
      packGreys(pdf);
      refuseForeignFonts(embeddedFonts(pdf), open.content.characters);
      const files =
        typeof options.attachments === 'function' ? options.attachments(pdf, running.version) : options.attachments;
      await writeFileWhole(options.out, await finishPdf(printed, options, files ?? []));
      return { pages: pdf.getPageCount(), pageOf, passes, browser: running.version };
    });
  } catch (cause) {
    throw isBrowserTrouble(cause) || !running.browser.connected ? browserFailed(running.version, cause) : cause;
  } finally {
    if (!options.browser) await running.close();
  }
}

const isBrowserTrouble = (cause: unknown): boolean =>
  cause instanceof ProtocolError || cause instanceof TimeoutError || cause instanceof PageCrashed;

const browserFailed = (version: string, cause: unknown): MachineFailure =>
  new MachineFailure({
    found: `the browser (${version}) failed while printing: ${wordsOf(cause)}`,
    expected: 'that it prints the document to the end',
    todo: 'print again; if it fails again, close other programs to free memory, or use another browser',
    cause,
  });
