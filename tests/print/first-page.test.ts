import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { degrees, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withClosedPage } from '../../src/print/closed-page.js';
import { drawFirstPage } from '../../src/print/first-page.js';
import { firstPages, keptPages, type Paper } from '../../src/print/first-pages.js';
import { launchBrowser, type RunningBrowser } from '../../src/print/launch.js';
import { emptyPdf } from '../history/invented.js';
import { scratch } from './fixtures.js';

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
const draw = (bytes: Uint8Array, milliseconds?: number) => drawFirstPage(browser.browser, bytes, 420, 594, milliseconds);

/** Share of dots that are darker than the middle, in a part of the picture that is given in shares of its sides. */
async function dark(picture: Uint8Array | string, left: number, top: number, width: number, height: number): Promise<number> {
  const whole = await sharp(picture).metadata();
  const part = { left: Math.round(left * whole.width), top: Math.round(top * whole.height), width: Math.round(width * whole.width), height: Math.round(height * whole.height) };
  const dots = await sharp(picture).extract(part).flatten({ background: '#fff' }).greyscale().raw().toBuffer();
  return dots.filter((grey) => grey < 128).length / dots.length;
}

describe('the first page of a PDF', () => {
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

  it('comes out the same from another page of the browser', async () => {
    const bytes = await certificate();
    const [one, other] = [await draw(bytes), await draw(bytes)];
    expect(one).toEqual(other);
  });

  const script = (pdf: PDFDocument) => pdf.catalog.set(PDFName.of('OpenAction'), pdf.context.obj({ S: 'JavaScript', JS: PDFString.of('app.alert(1)') } as never));
  it.each<[string, () => Promise<Uint8Array>, string]>([
    ['runs a script', () => certificate(script), 'the file runs a script'],
    ['is cut short', async () => (await certificate()).subarray(0, 300), 'the file is no whole PDF'],
    ['is something else', async () => Buffer.from('not a paper at all'), 'the file is no whole PDF'],
    ['has a password', () => certificate((pdf) => pdf.encrypt({ userPassword: 'a', ownerPassword: 'b' })), 'the file has a password, so that nobody can look into it'],
    ['has no pages', async () => Buffer.from(emptyPdf), 'the file has no pages'],
  ])('of a file that %s is not drawn, and the reason told', async (_, make, reason) => expect(await draw(await make())).toEqual({ ok: false, reason }));

  it('is given up after a while, however busy the page is, and the next one is drawn', async () => {
    const endless = await certificate((pdf) => pdf.getPage(0).node.set(PDFName.of('Contents'), pdf.context.register(pdf.context.flateStream('0 0 m 500 800 l 10 400 l S\n'.repeat(4e6)))));
    const from = Date.now();
    expect(await draw(endless, 1500)).toEqual({ ok: false, reason: 'its first page was not drawn within 1.5 s' });
    expect(Date.now() - from).toBeLessThan(15_000);
    expect(await draw(await certificate())).toMatchObject({ ok: true });
  });
});

it('the page that draws runs no script but what it was given, and reaches nothing', async () => {
  let connections = 0;
  const server = createServer((_request, response) => response.end('x')).on('connection', () => (connections += 1));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const elsewhere = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  const given = async (path: string) => (path === '/' ? { mime: 'text/html', bytes: Buffer.from('<title>x</title><script>document.title = "ran"</script>') } : undefined);
  const told = await withClosedPage(browser.browser, given, 20_000, (page) =>
    page.evaluate(`(async () => {
      const tried = (url) => fetch(url).then(() => 'reached', () => 'refused');
      return [document.title, await tried(${JSON.stringify(elsewhere)}), await tried('/other'), await tried('file:///etc/hostname')];
    })()`),
  );
  server.close();
  expect(told).toEqual(['x', 'refused', 'refused', 'refused']);
  expect(connections).toBe(0);
});

describe('first pages that are kept', () => {
  const paperOf = (bytes: Uint8Array): Paper => ({ sha256: createHash('sha256').update(bytes).digest('hex'), read: async () => bytes });
  const unread = ({ sha256 }: Paper): Paper => ({ sha256, read: () => Promise.reject(new Error('was read')) });
  const none = (version: string): RunningBrowser => ({ version, browser: undefined as never, close: async () => {} });

  it('are drawn once, told of one by one, and then need neither browser nor file', async () => {
    const folder = scratch();
    const papers = [paperOf(await certificate(undefined, 2)), paperOf(Buffer.from('no PDF')), paperOf(await certificate((pdf) => pdf.getPage(0).drawText('Another', { x: 60, y: 300 })))];
    const said: string[] = [];
    const drawn = await firstPages([...papers, papers[0]!], browser, folder, (done, total) => said.push(`${done} of ${total}`));
    expect(said).toEqual(['1 of 3', '2 of 3', '3 of 3']);
    const [one, broken, other] = papers.map((p) => drawn.get(p.sha256)!);
    if (!one?.ok || !other?.ok) throw new Error('not drawn');
    expect(one).toMatchObject({ mime: 'image/png', pages: 2, height: 944 });
    expect(await dark(one.prepared, 60 / 595, 1 - 776 / 842, 220 / 595, 16 / 842)).toBeGreaterThan(0.1);
    expect(broken).toEqual({ ok: false, reason: 'the file is no whole PDF' });
    expect(readdirSync(folder).length).toBe(2);
    const again = await firstPages([papers[0]!, papers[2]!].map(unread), none(browser.version), folder);
    expect([...again.values()]).toEqual([one, other]);
    const kept = await keptPages(folder);
    expect(kept(papers[0]!.sha256)).toEqual(one);
    expect(kept(papers[1]!.sha256)).toBeUndefined();
  });

  it('are drawn again by another version of the browser', async () => {
    const folder = scratch();
    const paper = paperOf(await certificate());
    await firstPages([paper], browser, folder);
    await expect(firstPages([unread(paper)], none('HeadlessChrome/999.0.0.0'), folder)).rejects.toThrow('was read');
    expect((await keptPages(folder))(paper.sha256, 'HeadlessChrome/999.0.0.0')).toBeUndefined();
  });

  it('tell of a page with nothing on it', async () => {
    const pdf = await PDFDocument.create();
    pdf.addPage();
    const paper = paperOf(await pdf.save());
    expect((await firstPages([paper], browser, scratch())).get(paper.sha256)).toEqual({ ok: false, reason: 'its first page came out empty' });
  });
});
