import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Element } from 'hast';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { fontFaces, fontsDirectory } from '../../src/platform/fonts.js';
import { printDocument } from '../../src/print/pdf.js';
import { htmlPage } from '../../src/render/page.js';
import { table } from '../../src/render/table.js';
import { details } from '../print/fixtures.js';
import { readPdf, textOfPages } from '../print/read-pdf.js';
import { browserAndFolder } from './browser-and-folder.js';

const at = browserAndFolder();

/** Pages of a hundred millimetres by sixty, in the document's own style. */
async function pagesOf(...content: Element[]): Promise<string[]> {
  const { browser, folder, subject } = at;
  const html = htmlPage(h('main', ...content), subject, fontFaces(pathToFileURL(fontsDirectory).href)).replace(
    '</style>',
    '@page{size:100mm 60mm;margin:10mm}</style>',
  );
  writeFileSync(join(folder, 'page.html'), html);
  await printDocument({
    ...details,
    html: join(folder, 'page.html'),
    directory: folder,
    out: join(folder, 'page.pdf'),
    browser,
  });
  const texts = await textOfPages(await readPdf(join(folder, 'page.pdf')));
  return texts.map((t) =>
    t
      .replace(
        /FX-7 issue A|page \d+ of \d+|Invented hatchback[^\n]*document|issue A, commit c0ffeec0, invented example/g,
        '',
      )
      .replace(/\s+/g, ' ')
      .trim(),
  );
}

const filler = (lines: number) => Array.from({ length: lines }, (_, i) => h('p', `Line ${i + 1}.`));
const rows = (count: number) =>
  Array.from({ length: count }, (_, i) => [
    `row ${i + 1}`,
    `first line of ${i + 1}`,
    h('span', [`second begins ${i + 1}`, h('br'), `second ends ${i + 1}`]),
  ]);

describe('a table over several pages', () => {
  it('repeats its heads, keeps rows whole and loses none', async () => {
    for (const before of [0, 1, 2, 3]) {
      const pages = await pagesOf(
        ...filler(before),
        table(
          'tiny',
          'Rows',
          [
            ['What', 20],
            ['First', 40],
            ['Second', 40],
          ],
          rows(12),
        ),
      );
      expect(pages.length).toBeGreaterThan(2);
      for (const page of pages) expect(page).toMatch(/What First Second/);
      for (let i = 1; i <= 12; i += 1) {
        const on = pages.filter((page) =>
          new RegExp(`\\brow ${i} first line of ${i} second begins ${i} second ends ${i}\\b`).test(page),
        );
        expect([before, i, on.length]).toEqual([before, i, 1]);
      }
    }
  });

  it('never leaves the line over a group at the foot of a page', async () => {
    for (const before of [1, 2, 3, 4, 5, 6]) {
      const pages = await pagesOf(
        ...filler(before),
        table(
          'tiny',
          'Rows',
          [
            ['What', 50],
            ['Value', 50],
          ],
          [
            { group: 'Group one' },
            ['a', '1'],
            ['b', '2'],
            { group: 'Group two' },
            ['c', '3'],
            ['d', '4'],
            { group: 'Group three' },
            ['e', '5'],
          ],
        ),
      );
      for (const [group, first] of [
        ['one', 'a 1'],
        ['two', 'c 3'],
        ['three', 'e 5'],
      ])
        expect(
          pages.some((page) => page.includes(`Group ${group} ${first}`)),
          `${group} after ${before} lines: ${pages.join(' | ')}`,
        ).toBe(true);
    }
  });

  it('keeps its caption', async () => {
    for (const before of [2, 3, 4, 5, 6]) {
      const pages = await pagesOf(
        ...filler(before),
        table(
          'tiny',
          'The caption',
          [
            ['What', 50],
            ['Value', 50],
          ],
          [
            ['a', '1'],
            ['b', '2'],
          ],
        ),
      );
      expect(
        pages.filter((page) => /The caption What Value a 1/.test(page)),
        `after ${before} lines: ${pages.join(' | ')}`,
      ).toHaveLength(1);
    }
  });
});

describe('a heading', () => {
  it.each(['h2', 'h3', 'h4'])('%s stays with what follows', async (level) => {
    for (const before of [1, 2, 3, 4, 5, 6]) {
      const pages = await pagesOf(...filler(before), h(level, 'The heading'), h('p', 'What follows it.'));
      expect(
        pages.filter((page) => page.includes('The heading What follows it.')),
        `after ${before} lines: ${pages.join(' | ')}`,
      ).toHaveLength(1);
    }
  });
});
