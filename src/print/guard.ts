import { realpathSync } from 'node:fs';
import { sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { HTTPRequest, Page } from 'puppeteer';

/**
 * Lets the page read files under `directories` (links followed before comparing) and data: URLs, and refuses every other
 * request. Returns the list that fills with what went wrong: refused and failed requests, console errors, page errors.
 */
export async function guardPage(page: Page, directories: readonly string[]): Promise<string[]> {
  const troubles: string[] = [];
  const roots = directories.map((directory) => realpathSync(directory));
  await page.setRequestInterception(true);
  page.on('request', (request: HTTPRequest) => {
    const refusal = refusalOf(request.url(), roots);
    if (refusal) {
      troubles.push(refusal);
      void request.abort('blockedbyclient').catch(() => {});
    } else {
      void request.continue().catch(() => {});
    }
  });
  page.on('requestfailed', (request) => {
    const reason = request.failure()?.errorText ?? 'failed';
    if (reason !== 'net::ERR_BLOCKED_BY_CLIENT')
      troubles.push(`could not be loaded: ${shortened(request.url())} (${reason})`);
  });
  page.on('console', (message) => {
    if (message.type() === 'error' && !/^Failed to load resource/.test(message.text()))
      troubles.push(`console error: ${message.text()}`);
  });
  page.on('pageerror', (error) =>
    troubles.push(`page error: ${error instanceof Error ? error.message : String(error)}`),
  );
  return troubles;
}

function refusalOf(url: string, roots: readonly string[]): string | undefined {
  if (url.startsWith('data:')) return undefined;
  if (!url.startsWith('file:')) return `refused: ${shortened(url)} is not a file of this document`;
  try {
    const path = realpathSync(fileURLToPath(url));
    if (roots.some((root) => path === root || path.startsWith(root.endsWith(sep) ? root : root + sep)))
      return undefined;
    return `refused: ${shortened(url)} lies outside the document's folders`;
  } catch {
    return `there is no file ${shortened(url)}`;
  }
}

const shortened = (url: string): string => (url.length > 160 ? `${url.slice(0, 157)}…` : url);
