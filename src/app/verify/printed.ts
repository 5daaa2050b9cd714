import { pageDigests } from '../../print/page-digests.js';
import type { VerifiedDocument } from './document.js';
import { textOfPages } from './page-text.js';
import { textDifference } from './text-difference.js';

export interface PageDifference {
  page: number;
  /** What the document says and what the new print says; absent where only pictures, drawings or links differ. */
  text?: { one: string; other: string };
}

/**
 * The pages on which a document differs from a new print of it. By another browser only what they say counts; the
 * name of the browser, which the document tells, does not.
 */
export function printedDifferences(
  document: VerifiedDocument,
  again: VerifiedDocument,
  sameBrowser: boolean,
): PageDifference[] {
  const [before, now] = [document, again].map((d) =>
    textOfPages(d.pdf).map((text) => (sameBrowser ? text : text.replaceAll(d.manifest.browser, 'browser'))),
  ) as [string[], string[]];
  const [drawn, drawnNow] = sameBrowser ? [pageDigests(document.pdf), pageDigests(again.pdf)] : [[], []];
  return Array.from({ length: Math.max(before.length, now.length) }, (_, i): PageDifference[] => {
    const text = textDifference(before[i] ?? '', now[i] ?? '');
    if (text) return [{ page: i + 1, text }];
    return drawn[i] === drawnNow[i] ? [] : [{ page: i + 1 }];
  }).flat();
}

const most = 12;

/** The differences in words, and what else of the file may differ. */
export function sayDifferences(
  pages: readonly PageDifference[],
  document: VerifiedDocument,
  again: VerifiedDocument,
): string[] {
  const said = pages
    .slice(0, most)
    .map(({ page, text }) =>
      text
        ? `page ${page} says “${text.one}”, printed again it says “${text.other}”`
        : `page ${page} shows another picture, drawing or link than when it is printed again`,
    );
  const more = pages.length > most ? [`and ${pages.length - most} more pages`] : [];
  const files = [...new Set([...document.attached.keys(), ...again.attached.keys()])]
    .filter((name) => !same(document.attached.get(name), again.attached.get(name)))
    .map((name) => `the attached ${name} is another one`);
  const all = [...said, ...more, ...files];
  return all.length > 0 ? all : ['the pages and attachments are the same; its details, outline or structure are not'];
}

const same = (a: Uint8Array | undefined, b: Uint8Array | undefined): boolean =>
  a !== undefined && b !== undefined && Buffer.from(a).equals(Buffer.from(b));
