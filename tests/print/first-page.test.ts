import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import {
  concatTransformationMatrix,
  degrees,
  drawObject,
  PDFDocument,
  PDFName,
  PDFRawStream,
  PDFString,
  popGraphicsState,
  pushGraphicsState,
} from '@cantoo/pdf-lib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withClosedPage } from '../../src/print/closed-page.js';
import { drawFirstPage } from '../../src/print/first-page.js';
import { firstPages, keptPages, type Paper } from '../../src/print/first-pages.js';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import { PageCrashed } from '../../src/print/page.js';
import { pagesOnly } from '../../src/print/pages-only.js';
import { pagelessPdf } from '../history/invented.js';
import { scratch } from './fixtures.js';
import { good, stream, updated, written } from './written-pdf.js';

let browser: RunningBrowser;
beforeAll(async () => void (browser = await launchBrowser()));
afterAll(() => browser.close());

/** A4 (210 mm × 297 mm, in points) with words near its top left corner, and more pages after it. */
async function certificate(change: (pdf: PDFDocument) => unknown = () => {}, pages = 1): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.addPage([595, 842]).drawText('Mill certificate, invented', { x: 60, y: 760, size: 20 });
  for (let n = 1; n < pages; n += 1) pdf.addPage([595, 842]);
  await change(pdf);
  return pdf.save();
}
const draw = (bytes: Uint8Array, milliseconds?: number) =>
  drawFirstPage(browser.browser, bytes, 420, 594, milliseconds);

/** Share of dots that are darker than the middle, in a part of the picture that is given in shares of its sides. */
async function dark(
  picture: Uint8Array | string,
  left: number,
  top: number,
  width: number,
  height: number,
): Promise<number> {
  const whole = await sharp(picture).metadata();
  const part = {
    left: Math.round(left * whole.width),
    top: Math.round(top * whole.height),
    width: Math.round(width * whole.width),
    height: Math.round(height * whole.height),
  };
  const dots = await sharp(picture).extract(part).flatten({ background: '#fff' }).greyscale().raw().toBuffer();
  return dots.filter((grey) => grey < 128).length / dots.length;
}

describe('the first page of a PDF', () => {
  it('is drawn from what its table leads to, as it is attached', async () => {
    const black = (gray: number) => stream('', `${gray} g 0 0 99 99 re f`);
    const paper = written({ ...good, 4: black(1) }, { after: `4 0 obj\n${black(0)}\nendobj\n` });
    for (const [bytes, share] of [
      [paper, 0],
      [updated(paper, { 4: black(0) }), 1],
    ] as const) {
      const drawn = await draw(bytes);
      expect(drawn.ok && (await dark(drawn.png, 0.1, 0.1, 0.8, 0.8))).toBe(share);
      const copy = await draw(await pagesOnly(bytes));
      expect(copy).toEqual(drawn);
    }
  });
  it('is drawn as large as it fits, with its text where it stands, and no other', async () => {
    const drawn = await draw(await certificate(undefined, 3));
    if (!drawn.ok) throw new Error(drawn.reason);
    expect(drawn.pages).toBe(3);
    expect(await sharp(drawn.png).metadata()).toMatchObject({ width: 419, height: 594 });
    // The line of text: 60 to about 290 points from the left, 762 to 776 points from the foot.
    expect(await dark(drawn.png, 60 / 595, 1 - 776 / 842, 220 / 595, 16 / 842)).toBeGreaterThan(0.1);
    expect(await dark(drawn.png, 0, 0, 1, 1 - 790 / 842)).toBe(0);
    expect(await dark(drawn.png, 0, 1 - 750 / 842, 1, 745 / 842)).toBe(0);
  });

  it('is drawn upright where it lies on its side', async () => {
    const drawn = await draw(await certificate((pdf) => pdf.getPage(0).setRotation(degrees(90))));
    if (!drawn.ok) throw new Error(drawn.reason);
    expect(await sharp(drawn.png).metadata()).toMatchObject({ width: 420, height: 296 });
    expect(await dark(drawn.png, 1 - 82 / 842, 0, 82 / 842, 0.6)).toBeGreaterThan(0.02);
    expect(await dark(drawn.png, 0, 0, 1 - 92 / 842, 1)).toBe(0);
  });

  it('shows what was filled into a form', async () => {
    const fill = (pdf: PDFDocument) => {
      const field = pdf.getForm().createTextField('heat');
      field.setText('HEAT 7714-22');
      field.addToPage(pdf.getPage(0), { x: 60, y: 400, width: 400, height: 40, borderWidth: 0 });
    };
    const drawn = await draw(await certificate(fill));
    if (!drawn.ok) throw new Error(drawn.reason);
    expect(await dark(drawn.png, 60 / 595, 1 - 440 / 842, 400 / 595, 40 / 842)).toBeGreaterThan(0.02);
  });

  it('shows what a copier has scanned', async () => {
    // ISO/IEC 14492, 7.2 and 7.4.8: the one segment of a picture of 64 by 64 dots, white unless something else is said.
    const picture = Buffer.from(
      '00000000 30 00 01 00000013 00000040 00000040 00000000 00000000 00 0000'.replaceAll(' ', ''),
      'hex',
    );
    const scan = (pdf: PDFDocument) => {
      const image = PDFRawStream.of(
        pdf.context.obj({
          Type: 'XObject',
          Subtype: 'Image',
          Width: 64,
          Height: 64,
          ColorSpace: 'DeviceGray',
          BitsPerComponent: 1,
          Filter: 'JBIG2Decode',
        }),
        picture,
      );
      const name = pdf.getPage(0).node.newXObject('Scan', pdf.context.register(image));
      pdf.getPage(0).drawRectangle({ x: 50, y: 150, width: 500, height: 500 });
      pdf
        .getPage(0)
        .pushOperators(
          pushGraphicsState(),
          concatTransformationMatrix(400, 0, 0, 400, 100, 200),
          drawObject(name),
          popGraphicsState(),
        );
    };
    const drawn = await draw(await certificate(scan));
    if (!drawn.ok) throw new Error(drawn.reason);
    expect(await dark(drawn.png, 120 / 595, 1 - 580 / 842, 360 / 595, 360 / 842)).toBe(0);
    expect(await dark(drawn.png, 60 / 595, 1 - 640 / 842, 30 / 595, 480 / 842)).toBe(1);
  });

  it('comes out the same from another page of the browser', async () => {
    const bytes = await certificate();
    const [one, other] = [await draw(bytes), await draw(bytes)];
    expect(one).toEqual(other);
  });

  const script = (pdf: PDFDocument) =>
    pdf.catalog.set(
      PDFName.of('OpenAction'),
      pdf.context.obj({ S: 'JavaScript', JS: PDFString.of('app.alert(1)') } as never),
    );
  it.each<[string, () => Promise<Uint8Array>, string]>([
    ['runs a script', () => certificate(script), 'the file runs a script'],
    ['is cut short', async () => (await certificate()).subarray(0, 300), 'the file is no whole PDF'],
    ['is something else', async () => Buffer.from('not a paper at all'), 'the file is no whole PDF'],
    [
      'has a password',
      () => certificate((pdf) => pdf.encrypt({ userPassword: 'a', ownerPassword: 'b' })),
      'the file has a password, so that nobody can look into it',
    ],
    ['has no pages', async () => Buffer.from(pagelessPdf), 'the file has no pages'],
  ])('of a file that %s is not drawn, and the reason told', async (_, make, reason) =>
    expect(await draw(await make())).toEqual({ ok: false, reason }),
  );

  it('is given up after a while, however busy the page is, and the next one is drawn', async () => {
    const endless = await certificate((pdf) =>
      pdf
        .getPage(0)
        .node.set(
          PDFName.of('Contents'),
          pdf.context.register(pdf.context.flateStream('0 0 m 500 800 l 10 400 l S\n'.repeat(4e6))),
        ),
    );
    const from = Date.now();
    expect(await draw(endless, 1500)).toEqual({ ok: false, reason: 'its first page was not drawn within 1.5 s' });
    expect(Date.now() - from).toBeLessThan(15_000);
    expect(await draw(await certificate())).toMatchObject({ ok: true });
  });
});

it('a page that dies is not waited for', async () => {
  const given = async () => ({ mime: 'text/html', bytes: Buffer.from('<title>x</title>') });
  await expect(
    withClosedPage(browser.browser, given, 20_000, async (page) => (await page.createCDPSession()).send('Page.crash')),
  ).rejects.toThrow(PageCrashed);
  expect(await draw(await certificate())).toMatchObject({ ok: true });
});

it('the page that draws, and its worker, run nothing but what they were given, and reach nothing', async () => {
  let connections = 0;
  const server = createServer((_request, response) => response.end('x')).on('connection', () => (connections += 1));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const tries = `(async () => {
    // What a worker asks for before anybody listens to it is never answered: that reaches nothing either.
    const tried = (url) => Promise.race([fetch(url, { mode: 'no-cors' }).then(() => 'reached', () => 'refused'), new Promise((told) => setTimeout(told, 3000, 'refused'))]);
    const evaluated = () => { try { return globalThis.eval('"evaluated"'); } catch { return 'refused'; } };
    return [${`http://127.0.0.1:${(server.address() as AddressInfo).port}/`}', '/other', 'file:///etc/hostname'].reduce(async (told, url) => [...(await told), await tried(url)], [evaluated()]);
  })()`.replace('[http', "['http");
  const files: Record<string, [mime: string, text: string]> = {
    '/': ['text/html', '<title>x</title><script>document.title = "ran"</script><script src="/page.js"></script>'],
    '/page.js': ['text/javascript', `onload = () => (globalThis.told = ${tries})`],
    '/worker.js': ['text/javascript', `${tries}.then(postMessage)`],
  };
  const given = async (path: string) => files[path] && { mime: files[path][0], bytes: Buffer.from(files[path][1]) };
  const open = await launchBrowser(undefined, 'loopback');
  const told = await withClosedPage(open.browser, given, 20_000, (page) =>
    page.evaluate(
      `(async () => [document.title, await globalThis.told, await new Promise((told) => (new Worker('/worker.js').onmessage = (event) => told(event.data)))])()`,
    ),
  ).finally(open.close);
  server.close();
  const refused = ['refused', 'refused', 'refused', 'refused'];
  expect(told).toEqual(['x', refused, refused]);
  expect(connections).toBe(0);
});

describe('first pages that are kept', () => {
  const paperOf = (bytes: Uint8Array): Paper => ({
    sha256: createHash('sha256').update(bytes).digest('hex'),
    read: async () => bytes,
  });
  const unread = ({ sha256 }: Paper): Paper => ({ sha256, read: () => Promise.reject(new Error('was read')) });
  const none = (version: string): RunningBrowser => ({ version, browser: undefined as never, close: async () => {} });

  it('are drawn once, told of one by one, and then need neither browser nor file', async () => {
    const folder = scratch();
    const papers = [
      paperOf(await certificate(undefined, 2)),
      paperOf(Buffer.from('no PDF')),
      paperOf(await certificate((pdf) => pdf.getPage(0).drawText('Another', { x: 60, y: 300 }))),
    ];
    const said: string[] = [];
    const drawn = await firstPages([...papers, papers[0]!], browser, folder, (done, total) =>
      said.push(`${done} of ${total}`),
    );
    expect(said).toEqual(['1 of 3', '2 of 3', '3 of 3']);
    const [one, broken, other] = papers.map((p) => drawn.get(p.sha256)!);
    if (!one?.ok || !other?.ok) throw new Error('not drawn');
    expect(one).toMatchObject({ mime: 'image/png', pages: 2, height: 944 });
    expect(await dark(one.prepared, 60 / 595, 1 - 776 / 842, 220 / 595, 16 / 842)).toBeGreaterThan(0.1);
    expect(broken).toEqual({ ok: false, reason: 'the file is no whole PDF' });
    expect(readdirSync(folder).filter((name) => !name.endsWith('.sha256'))).toHaveLength(2);
    const again = await firstPages([papers[0]!, papers[2]!].map(unread), none(browser.version), folder);
    expect([...again.values()]).toEqual([one, other]);
    const kept = await keptPages(folder);
    expect(await kept(papers[0]!.sha256)).toEqual(one);
    expect(await kept(papers[1]!.sha256)).toBeUndefined();
  });

  it('are drawn again by another version of the browser', async () => {
    const folder = scratch();
    const paper = paperOf(await certificate());
    await firstPages([paper], browser, folder);
    await expect(firstPages([unread(paper)], none('HeadlessChrome/999.0.0.0'), folder)).rejects.toThrow('was read');
    expect(await (await keptPages(folder))(paper.sha256, 'HeadlessChrome/999.0.0.0')).toBeUndefined();
  });

  it('tell of a page with nothing on it', async () => {
    const pdf = await PDFDocument.create();
    pdf.addPage();
    const paper = paperOf(await pdf.save());
    expect((await firstPages([paper], browser, scratch())).get(paper.sha256)).toEqual({
      ok: false,
      reason: 'its first page came out empty',
    });
  });
});
