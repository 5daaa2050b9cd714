import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { h } from 'hastscript';
import { expect, it } from 'vitest';
import { allSheets } from '../../src/calc/catalogue.js';
import { fontFaces, fontsDirectory } from '../../src/platform/fonts.js';
import { htmlPage } from '../../src/render/page.js';
import { sheetGroup } from '../../src/render/sections/sheet.js';
import { work } from '../calc/sheet-rules.js';
import { browserAndFolder } from './browser-and-folder.js';

const at = browserAndFolder();

/** Width of the text on paper, and of a phone. */
it.each([
  ['print', Math.floor((173 / 25.4) * 96)],
  ['screen', 380],
] as const)('every formula of every sheet fits its line (%s)', async (media, width) => {
  const sheets = (await allSheets()).flatMap((sheet) =>
    sheetGroup([{ ...work(sheet, sheet.examples[0].given), id: `000-all/${sheet.id}` }], at.subject),
  );
  const file = join(at.folder, 'sheets.html');
  writeFileSync(file, htmlPage(h('main', ...sheets), at.subject, fontFaces(pathToFileURL(fontsDirectory).href)));
  const page = await at.browser.browser.newPage();
  await page.setViewport({ width, height: 800 });
  await page.emulateMediaType(media);
  await page.goto(pathToFileURL(file).href);
  const seen = (await page.evaluate(`(async () => {
    await document.fonts.ready;
    const right = document.querySelector('main').getBoundingClientRect().right + 1;
    const formulas = [...document.querySelectorAll('.math, .numbers, .step-value')];
    const out = formulas.filter((f) => f.getBoundingClientRect().right > right || [...f.querySelectorAll('mrow, mfrac, msqrt')].some((m) => m.getBoundingClientRect().right > right));
    return { count: formulas.length, out: out.map((f) => f.closest('.sheet').id + ': ' + (f.getAttribute('aria-label') ?? f.textContent).slice(0, 100)) };
  })()`)) as { count: number; out: string[] };
  expect(seen.count).toBeGreaterThan(800);
  expect(seen.out).toEqual([]);
});
