import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import type { Page } from 'puppeteer';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fontFaces, fontsDirectory } from '../../src/platform/fonts.js';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import { htmlPage } from '../../src/render/page.js';
import { scratch } from '../print/fixtures.js';
import { loaded, subjectOf, treeOf } from './document.js';

let browser: RunningBrowser;
let html: string;
beforeAll(async () => {
  const subject = await subjectOf(await loaded());
  html = htmlPage(treeOf(subject), subject, fontFaces(pathToFileURL(fontsDirectory).href));
  browser = await launchBrowser();
});
afterAll(() => browser.close());

async function open(width: number): Promise<Page> {
  const file = join(scratch(), 'document.html');
  // The pictures lie elsewhere and do not matter here.
  writeFileSync(
    file,
    html.replace(/src="file:[^"]*"/g, 'src="data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA="'),
  );
  const page = await browser.browser.newPage();
  await page.setViewport({ width, height: 900 });
  await page.goto(pathToFileURL(file).href);
  return page;
}

interface Violations {
  violations: { id: string; nodes: { html: string }[] }[];
}

/** Rules of WCAG 2 and best practice, as axe-core knows them. */
async function axe(page: Page): Promise<string[]> {
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  const { violations } = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as Violations;
  return violations.map(
    (v) =>
      `${v.id}: ${v.nodes
        .slice(0, 3)
        .map((n) => n.html.slice(0, 160))
        .join(' | ')}`,
  );
}

describe('the HTML edition', () => {
  it('is valid', async () => {
    const { results } = await new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: {
        // Whatever serialises a tree leaves these to taste.
        'attribute-boolean-style': 'off',
        'attr-quotes': 'off',
        'no-trailing-whitespace': 'off',
        'void-style': 'off',
        'doctype-style': 'off',
        'long-title': 'off',
        // Marks on photos, widths of columns and drawings carry measures of their own.
        'no-inline-style': 'off',
        // Ids are names of notes, fields and files.
        'valid-id': ['error', { relaxed: true }],
      },
    }).validateString(html);
    const told = results.flatMap((r) => r.messages.map((m) => `${m.ruleId}: ${m.message} ${m.selector ?? ''}`));
    expect([...new Set(told)].slice(0, 10)).toEqual([]);
  });

  it.each([1280, 380])('can be read by everybody, at a width of %i', async (width) => {
    const page = await open(width);
    expect(await axe(page)).toEqual([]);
    await page.close();
  });

  it('fits a phone without scrolling sideways, each cell under the head of its column', async () => {
    const page = await open(380);
    const seen = (await page.evaluate(`({
      wide: document.scrollingElement.scrollWidth,
      out: [...document.querySelectorAll('main *')].filter((e) => e.getBoundingClientRect().right > 381).slice(0, 5).map((e) => e.outerHTML.slice(0, 120)),
      labels: [...document.querySelectorAll('td')].filter((td) => !td.dataset.label && !td.closest('.identity, .colophon, .sign')).length,
      shown: getComputedStyle(document.querySelector('.findings td'), '::before').content,
    })`)) as { wide: number; out: string[]; labels: number; shown: string };
    expect(seen).toEqual({ wide: 380, out: [], labels: 0, shown: '"Measured"' });
    await page.close();
  });

  it('runs no script and asks for nothing from elsewhere', () => {
    expect(/<script|\son\w+=|javascript:/i.exec(html)?.[0]).toBeUndefined();
    expect(html.match(/(?:src|href)="(?!#|data:|file:)[^"]*"/g)).toBeNull();
    expect(/<meta http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1]).toMatch(
      /^default-src (?:'|&#x27;)none/,
    );
  });
});
