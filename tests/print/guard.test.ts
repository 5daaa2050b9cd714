import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fontFaces, fontsDirectory } from '../../src/platform/fonts.js';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import { printDocument } from '../../src/print/pdf.js';
import { details, scratch, writePage } from './fixtures.js';
import { readPdf, textOfPages } from './read-pdf.js';

let browser: RunningBrowser;
let server: Server;
let connections = 0;
let address = '';
beforeAll(async () => {
  browser = await launchBrowser();
  server = createServer((_request, response) => response.end('x')).on('connection', () => {
    connections += 1;
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await browser.close();
  server.close();
});

const look = `${fontFaces(pathToFileURL(fontsDirectory).href)} body { font-family: var(--font-text) }`;

async function print(folder: string, body: string, style = '') {
  const html = writePage(folder, `<p>Text</p>${body}`, look + style);
  const out = join(folder, 'out.pdf');
  return { out, printed: await printDocument({ ...details, html, directory: folder, out, browser }) };
}

describe('a page that reaches out', () => {
  test.each([
    ['a picture', '<img src="URL/a.png" alt="">', ''],
    ['a picture in another size', '<img srcset="URL/b.png 2x" alt="">', ''],
    ['a style sheet', '<link rel="stylesheet" href="URL/c.css">', ''],
    ['an imported style sheet', '<style>@import "URL/d.css";</style>', ''],
    ['a background', '', 'p { background: url("URL/e.png") }'],
    ['a font', '<p style="font-family:Far">Text</p>', '@font-face { font-family: Far; src: url("URL/f.woff2") }'],
    ['a frame', '<iframe src="URL/g.html"></iframe>', ''],
    ['an object', '<object data="URL/h.svg"></object>', ''],
    ["a drawing's picture", '<svg><image href="URL/i.png" width="9" height="9"/></svg>', ''],
    ['a film', '<video src="URL/j.mp4" preload="auto"></video>', ''],
    ['a redirection', '<meta http-equiv="refresh" content="0; url=URL/k.html">', ''],
    ['a page held in a frame', '<iframe src="data:text/html,<img src=URL/o.png>"></iframe>', ''],
    ['a style sheet held in a data URL', '<link rel="stylesheet" href="data:text/css,@import%20%22URL/p.css%22;">', ''],
    ['another scheme', '<img src="ftp://127.0.0.1/l.png" alt="">', ''],
  ])('with %s is refused, and nothing leaves the machine', async (_what, body, style) => {
    const put = (text: string) => text.replaceAll('URL', address);
    await expect(print(scratch(), put(body), put(style))).rejects.toThrow(
      /did not load cleanly: .*refused: (http|ftp):/,
    );
    expect(connections).toBe(0);
  });

  test('by hints alone opens no connection either', async () => {
    const { printed } = await print(
      scratch(),
      `<link rel="preconnect" href="${address}"><link rel="dns-prefetch" href="${address}"><a href="${address}/m" ping="${address}/n">a link to follow by hand</a>`,
    );
    expect(printed.pages).toBe(1);
    expect(connections).toBe(0);
  });
});

describe('files', () => {
  test('outside the folder are refused, by path and by symbolic link', async () => {
    const folder = scratch();
    const inside = join(folder, 'inside');
    mkdirSync(inside);
    writeFileSync(join(folder, 'secret.png'), 'secret');
    symlinkSync(join(folder, 'secret.png'), join(inside, 'link.png'));
    // A folder that begins with the same letters is another folder.
    mkdirSync(join(folder, 'inside-out'));
    writeFileSync(join(folder, 'inside-out/secret.png'), 'secret');
    for (const source of [
      '../secret.png',
      'link.png',
      '../inside-out/secret.png',
      'file:///etc/passwd',
      `${pathToFileURL(inside).href}/%2e%2e/secret.png`,
    ]) {
      await expect(print(inside, `<img src="${source}" alt="">`)).rejects.toThrow(
        /refused: file:.* lies outside the document's folders/,
      );
    }
  });

  test('inside it, and data URLs, are read', async () => {
    const folder = scratch();
    writeFileSync(join(folder, 'style.css'), 'p::after { content: " from a file" }');
    const { out } = await print(
      folder,
      '<link rel="stylesheet" href="style.css"><img alt="" src="data:image/svg+xml,%3Csvg xmlns=%22http://www.w3.org/2000/svg%22 width=%2210%22 height=%2210%22/%3E">',
    );
    expect((await textOfPages(await readPdf(out)))[0]).toContain('Text from a file');
  });
});

test("the page's own scripts do not run", async () => {
  const scripts =
    '<script>document.getElementById("p").textContent = "changed"</script><details open ontoggle="document.getElementById(\'p\').textContent = 1"></details>';
  const { out } = await print(scratch(), `<p id="p">as written</p>${scripts}`);
  expect((await textOfPages(await readPdf(out)))[0]).toContain('as written');
});
