import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Element } from 'hast';
import type { PDFDocumentProxy } from 'pdfjs-dist';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shippedFonts } from '../../src/platform/fonts.js';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import { type Printed, printDocument } from '../../src/print/pdf.js';
import { notForScreens } from '../../src/render/page.js';
import type { Subject } from '../../src/render/subject.js';
import { details } from '../print/fixtures.js';
import { readPdf, textOfPages } from '../print/read-pdf.js';
import { all, htmlIn, loaded, subjectOf } from './document.js';

let browser: RunningBrowser;
let folder: string;
let subject: Subject;
let tree: Element;
let printed: Printed;
let pdf: PDFDocumentProxy;
let pages: string[];

beforeAll(async () => {
  browser = await launchBrowser();
  subject = await subjectOf(await loaded());
  folder = mkdtempSync(join(tmpdir(), 'gusset-test-'));
  const html = join(folder, 'document.html');
  writeFileSync(html, notForScreens(htmlIn(folder, subject, (t) => (tree = t))));
  printed = await printDocument({ ...details, html, directory: folder, out: join(folder, 'document.pdf'), browser });
  pdf = await readPdf(join(folder, 'document.pdf'));
  pages = await textOfPages(pdf);
}, 300_000);
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

const squeezed = (text: string): string => text.normalize('NFKC').replace(/[\s\u00ad]+/g, '');
const classes = (e: Element) => (e.properties['className'] as string[] | undefined) ?? [];

/** Text between what print fills in (page numbers) and what has glyphs of its own (formulas, drawings). */
function segments(node: Element): string[] {
  const found = [''];
  const walk = (e: Element): void => {
    for (const child of e.children) {
      if (child.type === 'text') found.push(found.pop()! + child.value);
      else if (child.type === 'element') {
        const apart =
          classes(child).some((c) => ['ref-page', 'ref-number', 'math', 'numbers'].includes(c)) ||
          ['svg', 'br'].includes(child.tagName) ||
          /below|comparison/.test(classes(child).join());
        if (apart) found.push('');
        if (!classes(child).some((c) => ['ref-page', 'ref-number', 'math'].includes(c)) && child.tagName !== 'svg')
          walk(child);
        if (apart) found.push('');
      }
    }
  };
  walk(node);
  return found.map(squeezed).filter((s) => s !== '');
}

describe('the printed document', () => {
  it('is laid out for paper alone, in one print with room for all its page numbers', async () => {
    const page = await browser.browser.newPage();
    await page.goto(pathToFileURL(join(folder, 'document.html')).href);
    const display = () => page.evaluate('getComputedStyle(document.body).display');
    expect(await display()).toBe('none');
    await page.emulateMediaType('print');
    expect(await display()).toBe('block');
    await page.close();
    expect(printed).toMatchObject({ passes: 1, pages: pdf.numPages });
  });

  it('is numbered and named on every page, and ends with its mark', () => {
    pages.forEach((text, i) => {
      expect(text).toContain(`page ${i + 1} of ${pages.length}`);
      expect(text).toContain('FX-7 issue A');
      expect(text).not.toContain('DRAFT');
    });
    expect(pages.flatMap((text, i) => (text.includes('— end of document —') ? [i + 1] : []))).toEqual([pages.length]);
  });

  it('holds every word of every cell', () => {
    const text = squeezed(pages.join(' '));
    const cells = all(tree, (e) => e.tagName === 'td' || e.tagName === 'th');
    expect(cells.length).toBeGreaterThan(800);
    const lost = cells.flatMap((cell) => segments(cell).filter((s) => !text.includes(s)));
    expect(lost).toEqual([]);
  });

  it('holds every word of the notes, of captions and of the sheets', () => {
    const text = squeezed(pages.join(' '));
    const told = all(
      tree,
      (e) =>
        ['p', 'li', 'dd', 'dt', 'caption', 'figcaption', 'h2', 'h3', 'h4', 'h5'].includes(e.tagName) &&
        !all(e, (inner) => inner !== e && ['p', 'li', 'ul', 'ol', 'dl'].includes(inner.tagName)).length,
    );
    const words = told.flatMap((e) => segments(e).flatMap((s) => (text.includes(s) ? [] : [s])));
    // What breaks over two pages has the margins between its halves.
    const broken = words.filter(
      (s) => !pages.slice(1).some((_, i) => meets(s, squeezed(pages[i]!), squeezed(pages[i + 1]!))),
    );
    expect(broken).toEqual([]);
  });

  it('tells the true page at every reference', async () => {
    let checked = 0;
    const wrong: string[] = [];
    for (let n = 1; n <= pdf.numPages; n += 1) {
      const page = await pdf.getPage(n);
      const items = (await page.getTextContent()).items.filter((i) => 'str' in i);
      for (const link of (await page.getAnnotations()) as { subtype: string; rect: number[]; dest?: unknown }[]) {
        if (link.subtype !== 'Link' || !link.dest) continue;
        const [left, bottom, right, top] = link.rect as [number, number, number, number];
        const text = items
          .filter(
            (i) =>
              i.transform[4] >= left - 1 &&
              i.transform[4] < right &&
              i.transform[5] >= bottom - 1 &&
              i.transform[5] < top,
          )
          .map((i) => i.str)
          .join('');
        const told =
          /p\.\s*(\d+)\s*$/.exec(text)?.[1] ?? /…?(\d+)$/.exec(/^\D*\d*$/.test(text) && n < 4 ? text : '')?.[1];
        if (told === undefined) continue;
        const dest = typeof link.dest === 'string' ? await pdf.getDestination(link.dest) : (link.dest as unknown[]);
        const at = (await pdf.getPageIndex(dest![0] as never)) + 1;
        checked += 1;
        if (at !== Number(told)) wrong.push(`page ${n}: ${text} leads to ${at}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(checked).toBeGreaterThan(150);
  });

  it('finds each chapter on the page that the contents tell', () => {
    for (const note of subject.build.notes) {
      const number = /^\d+/.exec(note.name)![0];
      const told = new RegExp(`Note ${number}\\s+${note.data.title}\\s*(\\d+)`).exec(pages[1]!)?.[1];
      const found =
        pages.findIndex(
          (text, i) => i > 1 && text.includes(`Note ${number}`) && text.includes(`notes/${note.name}.md`),
        ) + 1;
      expect([note.name, Number(told)]).toEqual([note.name, found]);
    }
  });

  it('carries only the shipped fonts', async () => {
    const names = new Set<string>();
    for (let n = 1; n <= pdf.numPages; n += 1) {
      const page = await pdf.getPage(n);
      await page.getOperatorList();
      for (const { fontName } of (await page.getTextContent()).items as { fontName?: string }[]) {
        if (fontName && page.commonObjs.has(fontName))
          names.add(String((page.commonObjs.get(fontName) as { name: string }).name).replace(/^[A-Z]{6}\+/, ''));
      }
    }
    expect([...names].filter((name) => !shippedFonts.includes(name))).toEqual([]);
    expect(names.has('NotoSans-Regular')).toBe(true);
  });

  it('is tagged, titled and in its language, with heads of tables and words for pictures', async () => {
    const info = (await pdf.getMetadata()).info as Record<string, unknown>;
    expect(info['Title']).toBe(details.title);
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    const roles = new Map<string, string[]>();
    type Node = { role?: string; alt?: string; children?: Node[] };
    const walk = (node: Node): void => {
      if (node.role) roles.set(node.role, [...(roles.get(node.role) ?? []), node.alt ?? '']);
      node.children?.forEach(walk);
    };
    for (let n = 1; n <= pdf.numPages; n += 1) walk((await (await pdf.getPage(n)).getStructTree()) as Node);
    for (const role of ['H1', 'H2', 'H3', 'H4', 'Table', 'TH', 'TD', 'Figure', 'Link', 'L'])
      expect([role, roles.has(role)]).toEqual([role, true]);
    expect(roles.get('Figure')!.filter((alt) => alt === '')).toEqual([]);
    const outline = await pdf.getOutline();
    expect(JSON.stringify(outline)).toContain('Gearbox crossmember made anew');
  });

  it('puts the table of traceability on its side', async () => {
    const at = printed.pageOf.get('section-matrix')!;
    const [, , width, height] = (await pdf.getPage(at)).view as [number, number, number, number];
    expect(width).toBeGreaterThan(height);
    const [, , across, down] = (await pdf.getPage(1)).view as [number, number, number, number];
    expect(down).toBeGreaterThan(across);
  });
});

/** Whether a text ends one page and goes on at the head of the next, margins and repeated heads of tables between. */
function meets(text: string, page: string, next: string): boolean {
  for (let i = text.length - 1; i > 0; i -= 1)
    if (page.includes(text.slice(0, i)) && next.includes(text.slice(i))) return true;
  return false;
}
