import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { PDFDict, PDFDocument, type PDFHexString, PDFName, PDFStream } from '@cantoo/pdf-lib';
import type { TextItem } from 'pdfjs-dist/types/src/display/api.js';
import sharp from 'sharp';
import temml from 'temml';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { fontFaces, fontsDirectory, shippedFonts } from '../../src/platform/fonts.js';
import { embeddedFonts } from '../../src/print/embedded.js';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import { type PrintOptions, printDocument } from '../../src/print/pdf.js';
import { details, scratch, writePage } from './fixtures.js';
import { readPdf, textOfPages } from './read-pdf.js';

let browser: RunningBrowser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const look = `${fontFaces(pathToFileURL(fontsDirectory).href)}
  :root { --page-digits: 2 } body { font: 10pt/1.4 var(--font-text); } math { font-family: var(--font-math); } code { font-family: var(--font-mono); }
  @page { size: A4; margin: 20mm; @bottom-center { font: 8pt 'Noto Sans'; content: 'Page ' counter(page) ' of ' counter(pages); } @top-left { font: 8pt 'Noto Sans'; content: 'FIX-001-A'; } }`;

async function print(body: string, { style = '', ...more }: Partial<PrintOptions> & { style?: string } = {}) {
  const folder = scratch();
  const html = writePage(folder, body, look + style);
  const out = join(folder, 'out.pdf');
  const printed = await printDocument({ ...details, html, directory: folder, out, browser, ...more });
  return { printed, out, folder, pdf: await readPdf(out) };
}

/** As the documents' style sheet gives it. */
const room =
  'text-rendering:geometricPrecision;display:inline-block;min-width:calc(var(--page-digits) * 0.572em);text-align:right';

/** The room in points between the end of each number and the bracket after it. */
async function gapsAfterNumbers(pdf: Awaited<ReturnType<typeof readPdf>>): Promise<number[]> {
  const gaps: number[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    const runs = items.filter((item): item is TextItem => 'str' in item && item.str.trim() !== '');
    runs.forEach((run, index) => {
      const next = runs[index + 1];
      if (/^\d+$/.test(run.str) && next?.str.startsWith(']'))
        gaps.push(Math.abs(next.transform[4] - run.transform[4] - run.width));
    });
  }
  expect(gaps.length).toBeGreaterThan(100);
  return gaps;
}

/** Chapters of such length that their pages are not known beforehand, with a list of contents before them. */
function book(chapters: number): string {
  const ids = Array.from({ length: chapters }, (_, index) => `ch-${index + 1}`);
  const contents = ids
    .map(
      (id) => `<li><a href="#${id}">Chapter ${id}</a> on page <span class="page-of" data-target="${id}"></span>.</li>`,
    )
    .join('');
  const text = ids
    .map(
      (id, index) =>
        `<h2 id="${id}">Title of ${id}</h2>${'<p>Measured and written down.</p>'.repeat((index * 7) % 23)}`,
    )
    .join('');
  return `<h1>Contents</h1><ol>${contents}</ol>${text}`;
}

describe('page numbers', () => {
  test('in the contents are where an independent reader finds each heading', async () => {
    const { printed, pdf } = await print(book(40), { style: 'h2 { break-after: avoid }' });
    const pages = await textOfPages(pdf);
    const told = [...pages.join('').matchAll(/Chapter (ch-\d+) on page (\d+)\./g)].map(([, id, page]) => [
      id,
      Number(page),
    ]);
    const found = told.map(([id]) => [id, pages.findIndex((text) => new RegExp(`Title of ${id}\\b`).test(text)) + 1]);
    expect(told).toHaveLength(40);
    expect(told).toEqual(found);
    expect(printed.pageOf).toEqual(new Map(found as [string, number][]));
    expect(printed).toMatchObject({ pages: pdf.numPages, passes: 1, browser: browser.version });
    expect(pages.map((text) => /Page (\d+ of \d+)/.exec(text)?.[1])).toEqual(
      pages.map((_, index) => `${index + 1} of ${pdf.numPages}`),
    );
    expect(pages.every((text) => text.includes('FIX-001-A'))).toBe(true);
  });

  test('stand in the room of their stand-ins, flush with its right end, whatever surrounds them', async () => {
    const ids = Array.from({ length: 120 }, (_, n) => `t-${n}`);
    const places = ids.map(
      (id, n) =>
        `<p style="font-size:${7 + (n % 5)}pt"><${'bi'[n % 2]}><a href="#${id}">to ${id}</a> [<span class="page-of" data-target="${id}" style="${room}"></span>]</${'bi'[n % 2]}></p>`,
    );
    const { printed, pdf } = await print(
      places.join('') + ids.map((id) => `<h2 id="${id}" style="height:60mm">Here ${id}</h2>`).join(''),
    );
    expect(printed).toMatchObject({ passes: 1, pages: pdf.numPages });
    expect(pdf.numPages).toBeGreaterThan(30);
    const said = [
      ...(await textOfPages(pdf))
        .join('')
        .replace(/\s/g, '')
        .matchAll(/to(t-\d+)\[(\d+)\]/g),
    ].map(([, id = '', page]) => [id, Number(page)]);
    expect(said).toEqual(ids.map((id) => [id, printed.pageOf.get(id)]));
    for (const gap of await gapsAfterNumbers(pdf)) expect(gap).toBeLessThan(0.5);
  });

  test('for which the document kept too little room are printed once more', async () => {
    const { printed, pdf } = await print(book(40), { style: ':root { --page-digits: 1 }' });
    const pages = await textOfPages(pdf);
    const told = [...pages.join('').matchAll(/Chapter (ch-\d+) on page (\d+)\./g)].map(([, id, page]) => [
      id,
      Number(page),
    ]);
    expect(told.some(([, page]) => Number(page) > 9)).toBe(true);
    expect(told).toEqual(
      told.map(([id]) => [id, pages.findIndex((text) => new RegExp(`Title of ${id}\\b`).test(text)) + 1]),
    );
    expect(printed.passes).toBeGreaterThan(1);
  });

  test('of which there are too few to write over stand-ins are printed once more', async () => {
    const { printed, pdf } = await print(
      '<p><a href="#end">x</a> ends on <span class="page-of" data-target="end"></span>.</p><p style="height:600mm"></p><h2 id="end">The end</h2>',
    );
    const pages = await textOfPages(pdf);
    expect([printed.passes, pages.findIndex((text) => text.includes('The end'))]).toEqual([2, 2]);
    expect(pages[0]).toContain('ends on 3.');
  });

  test('that move when they are filled in are printed again', async () => {
    // The paragraph is as wide as the number: zeros of another number of digits move what follows.
    const body = `<p><a href="#end">To the end</a></p><div style="height:200mm"></div><div style="width:min-content"><span class="page-of" data-target="end" style="font-size:40mm"></span>
      <p>a b c d e f g h</p></div><h2 id="end">The end</h2>`;
    const { printed, pdf } = await print(body);
    const pages = await textOfPages(pdf);
    expect(printed.pageOf.get('end')).toBe(pages.findIndex((text) => text.includes('The end')) + 1);
    expect(printed.passes).toBeGreaterThan(1);
  });

  test('that never settle are an error', async () => {
    // Nine pages, then a column as wide as the number: "9" makes it narrow and tall, so the target falls on page 10;
    // "10" makes it wide and short, so the target stays on page 9.
    const before = '<div style="break-after:page">.</div>'.repeat(8);
    const body = `<p><a href="#end">x</a></p>${before}<div style="width:min-content"><span class="page-of" data-target="end" style="font:60mm 'Noto Sans'"></span>
      <p style="font-size:8mm;line-height:12mm;margin:0">${'mm '.repeat(50)}</p></div><h2 id="end">The end</h2>`;
    await expect(print(body)).rejects.toThrow(/page numbers still moved after 4 prints/);
  });

  test('of something that no link points to are an error that names it', async () => {
    await expect(print('<p>Page <span class="page-of" data-target="nowhere"></span></p>')).rejects.toThrow(
      /no page number for nowhere/,
    );
  });
});

describe('the printed page', () => {
  test('is tagged, has an outline, working links, its language and details', async () => {
    const { pdf } = await print(
      '<h1>First</h1><p><a href="#spät-2">on</a></p><table><tr><th scope="col">Wall</th></tr><tr><td>2.48 mm</td></tr></table><h2 id="spät-2" style="break-before:page">Second</h2>',
    );
    const { info, contentDispositionFilename: _ } = (await pdf.getMetadata()) as unknown as {
      info: Record<string, unknown>;
      contentDispositionFilename: unknown;
    };
    expect(info).toMatchObject({
      Title: details.title,
      Author: details.author,
      Subject: details.subject,
      Keywords: 'fixture invented',
      Language: 'en-AU',
      Creator: 'Gusset',
      CreationDate: 'D:20260320100000Z',
      ModDate: 'D:20260320100000Z',
    });
    const outline = await pdf.getOutline();
    expect(outline.map(({ title, items }) => [title, items.map((item: { title: string }) => item.title)])).toEqual([
      ['First', ['Second']],
    ]);
    const tags = JSON.stringify(await (await pdf.getPage(1)).getStructTree());
    for (const role of ['H1', 'P', 'Link', 'Table', 'TR', 'TH', 'TD']) expect(tags).toContain(`"role":"${role}"`);
    const [link] = await (await pdf.getPage(1)).getAnnotations();
    const destination = typeof link.dest === 'string' ? await pdf.getDestination(link.dest) : link.dest;
    expect(await pdf.getPageIndex(destination[0])).toBe(1);
  });

  test('takes size, orientation and margins from the style sheet', async () => {
    const { pdf } = await print('<p>Upright</p><p style="page:wide">Wide</p>', {
      style: '@page wide { size: A4 landscape }',
    });
    const sizes = await Promise.all(
      [1, 2].map(async (number) =>
        (await pdf.getPage(number)).view.slice(2).map((points: number) => Math.round((points / 72) * 25.4)),
      ),
    );
    expect(sizes).toEqual([
      [210, 297],
      [297, 210],
    ]);
  });

  test('keeps table rows whole and repeats the head of the table on every page', async () => {
    const rows = Array.from(
      { length: 30 },
      (_, index) => `<tr><td>row ${index + 1} begins<br>${'<br>'.repeat(index % 5)}row ${index + 1} ends</td></tr>`,
    ).join('');
    const { pdf } = await print(
      `<table><thead><tr><th>Head of the table</th></tr></thead><tbody>${rows}</tbody></table>`,
      { style: 'tr { break-inside: avoid }' },
    );
    const pages = await textOfPages(pdf);
    expect(pages.length).toBeGreaterThan(2);
    expect(pages.every((text) => text.includes('Head of the table'))).toBe(true);
    for (let row = 1; row <= 30; row += 1) {
      const page = pages.filter((text) => new RegExp(`row ${row} begins`).test(text));
      expect(page).toHaveLength(1);
      expect(page[0]).toMatch(new RegExp(`row ${row} ends`));
    }
  });

  test('shows pictures, the same file once, those that load late too', async () => {
    const folder = scratch();
    await sharp({ create: { width: 300, height: 200, channels: 3, background: '#c02020' } })
      .jpeg()
      .toFile(join(folder, 'photo.jpg'));
    const html = writePage(
      folder,
      `<img src="photo.jpg" alt="Invented weld" width="300" height="200">${book(3)}<p style="margin-top:5000mm"></p><img src="photo.jpg" alt="The same, far down" loading="lazy">`,
      look,
    );
    const out = join(folder, 'out.pdf');
    await printDocument({ ...details, html, directory: folder, out, browser });
    const images = (await PDFDocument.load(readFileSync(out))).context
      .enumerateIndirectObjects()
      .filter(
        ([, object]) => object instanceof PDFStream && object.dict.get(PDFName.of('Subtype')) === PDFName.of('Image'),
      );
    // The same file is held once, however often it is shown.
    expect(images).toHaveLength(1);
    expect(JSON.stringify(await (await (await readPdf(out)).getPage(1)).getStructTree())).toContain(
      '"alt":"Invented weld"',
    );
  });

  test('carries the shipped fonts and no others, with text, mathematics and symbols read back as they were written', async () => {
    const words = 'Wall 2.48 ± 0.05 mm ≤ 3 − × ≥ ° µ ² ³ ⁴ √ → ✓ ✗ α β γ δ ε ζ η θ λ μ π ρ σ τ φ ψ ω ⌀ Ω Ż ő';
    const formula = temml.renderToString('\\sigma = \\frac{M}{W} + \\sqrt{\\tau^2} \\le \\sum_{i=1}^{n} A_i', {
      displayMode: true,
    });
    const { out, pdf } = await print(
      `<p>${words}</p><p><b>${words}</b></p><p><i>${words}</i></p><p><b><i>${words}</i></b></p><p><code>${words}</code></p>${formula}`,
    );
    const fonts = embeddedFonts(await PDFDocument.load(readFileSync(out)));
    expect(fonts.filter((font) => !shippedFonts.includes(font))).toEqual([]);
    expect(fonts).toEqual(
      expect.arrayContaining([
        'NotoSans-Regular',
        'NotoSans-BoldItalic',
        'NotoSansMath-Regular',
        'NotoSansMono-Regular',
      ]),
    );
    const plain = (text: string) => text.normalize('NFKC').replace(/\s/g, '');
    const text = plain((await textOfPages(pdf)).join(''));
    expect(text.split(plain(words))).toHaveLength(6);
    expect(text).toContain(plain('σ=MW+√τ2≤'));
  });

  test('is refused in any other font, or with characters that the fonts lack', async () => {
    await expect(print('<p style="font-family:serif">Text</p>')).rejects.toThrow(
      /took .* for some of its text[\s\S]*only the shipped fonts/,
    );
    await expect(print('<p>Wheel 車 🚗</p>')).rejects.toThrow('no shipped font has 車 (U+8ECA), 🚗 (U+1F697)');
  });
});

describe('the file', () => {
  const attachments = [
    {
      name: 'manifest.json',
      mime: 'application/json',
      relationship: 'Supplement',
      description: 'What it was made from',
      bytes: Buffer.from('{"b":2}'),
    },
    {
      name: 'findings.csv',
      mime: 'text/csv',
      relationship: 'Data',
      description: 'Findings',
      bytes: Buffer.from('id,outcome\n'),
    },
  ] as const;

  test('carries its attachments with kind, relationship and fixed dates', async () => {
    const { out, pdf } = await print('<p>Text</p>', { attachments });
    const read = Object.values(
      (await pdf.getAttachments()) as Record<string, { filename: string; content: Uint8Array; description: string }>,
    );
    expect(
      read.map(({ filename, content, description }) => [filename, Buffer.from(content).toString(), description]),
    ).toEqual([
      ['findings.csv', 'id,outcome\n', 'Findings'],
      ['manifest.json', '{"b":2}', 'What it was made from'],
    ]);
    const raw = await PDFDocument.load(readFileSync(out), { updateMetadata: false });
    const files = raw.context.enumerateIndirectObjects().map(([, object]) => object);
    const specs = files.filter(
      (object): object is PDFDict =>
        object instanceof PDFDict && object.get(PDFName.of('Type')) === PDFName.of('Filespec'),
    );
    const streams = files.filter(
      (object): object is PDFStream =>
        object instanceof PDFStream && object.dict.get(PDFName.of('Type')) === PDFName.of('EmbeddedFile'),
    );
    expect(specs.map((spec) => String(spec.get(PDFName.of('AFRelationship'))))).toEqual(['/Data', '/Supplement']);
    expect(streams.map((stream) => stream.dict.lookup(PDFName.of('Subtype'), PDFName).decodeText())).toEqual([
      'text/csv',
      'application/json',
    ]);
    expect(
      streams.map((stream) => String(stream.dict.lookup(PDFName.of('Params'), PDFDict).get(PDFName.of('ModDate')))),
    ).toEqual(Array(2).fill('(D:20260320100000Z)'));
  });

  test('is the same to the byte when printed again at another time, and not when anything differs', async () => {
    const body = book(5);
    const first = readFileSync((await print(body, { attachments })).out);
    vi.useFakeTimers({ now: new Date('2031-07-01T03:04:05Z'), toFake: ['Date'] });
    const second = readFileSync((await print(body, { attachments })).out);
    vi.useRealTimers();
    const warm = await print(body, { attachments });
    expect(second.equals(first)).toBe(true);
    expect(readFileSync(warm.out).equals(first)).toBe(true);
    const ids = async (bytes: Buffer) =>
      (await PDFDocument.load(bytes, { updateMetadata: false })).context.trailerInfo.ID as unknown as {
        get: (index: number) => PDFHexString;
      };
    const other = readFileSync((await print(body + '<p>.</p>', { attachments })).out);
    const [one, two] = [await ids(first), await ids(other)];
    expect(String(one.get(0))).toBe(String(two.get(0)));
    expect(String(one.get(1))).not.toBe(String(two.get(1)));
    expect(String(one.get(1))).not.toMatch(/^<0+>$/);
  });

  test('is the same to the byte from a page that shows nothing on a screen', async () => {
    const body = `${book(12)}<p><img src="data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' width='40' height='30'%3E%3Crect width='30' height='20'/%3E%3C/svg%3E" width="40" height="30" alt="A plate"></p><p lang="en">x<sub>2</sub></p>`;
    const [shown, hidden] = [
      await print(body),
      await print(body, { style: '@media screen { body { display: none } }' }),
    ];
    expect(hidden.printed).toEqual(shown.printed);
    expect(readFileSync(hidden.out).equals(readFileSync(shown.out))).toBe(true);
  });

  test('stays as it was if the print fails, with nothing beside it', async () => {
    const folder = scratch();
    const out = join(folder, 'out.pdf');
    writeFileSync(out, 'the last good one');
    const html = writePage(folder, '<p><img src="missing.jpg"></p>', look);
    await expect(printDocument({ ...details, html, directory: folder, out, browser })).rejects.toThrow(
      /there is no file .*missing\.jpg/,
    );
    expect(readFileSync(out, 'utf8')).toBe('the last good one');
    expect(readdirSync(folder).sort()).toEqual(['out.pdf', 'page.html']);
  });

  test('can be written into a folder that is not there yet', async () => {
    const folder = scratch();
    mkdirSync(join(folder, 'in'));
    const html = writePage(join(folder, 'in'), '<p>Text</p>', look);
    await printDocument({
      ...details,
      html,
      directory: join(folder, 'in'),
      out: join(folder, 'new/deep/out.pdf'),
      browser,
    });
    expect(existsSync(join(folder, 'new/deep/out.pdf'))).toBe(true);
  });
});
