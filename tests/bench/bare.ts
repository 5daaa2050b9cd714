import { spawnSync } from 'node:child_process';
import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** What the parts of a print take by themselves, with nothing of ours around them. All in seconds. */

const own = (file: string) => import(new URL(`../../dist/${file}`, import.meta.url).href);

export async function barePreparation(files: readonly string[], cacheDirectory: string): Promise<number> {
  const { preparePhotos } = await own('print/photos.js');
  const { photoSizes } = await own('app/publish/document-photos.js');
  return seconds(() => preparePhotos(files, { ...photoSizes.print, cacheDirectory }));
}

/** What the browser alone takes: start, load, one PDF. */
export async function barePrint(html: string, work: string): Promise<number> {
  const { launchBrowser } = await own('print/launch.js');
  copyFileSync(html, join(work, 'bare.html'));
  return seconds(async () => {
    const running = await launchBrowser();
    const page = await running.browser.newPage();
    await page.goto(pathToFileURL(join(work, 'bare.html')).href, { waitUntil: 'load' });
    writeFileSync(
      join(work, 'bare.pdf'),
      await page.pdf({ preferCSSPageSize: true, tagged: true, outline: true, timeout: 0 }),
    );
    await running.close();
  });
}

/**
 * What a general-purpose converter takes with the same browser for the same notes: one HTML file of their words, photos and
 * contents, printed once. It checks, calculates, draws and numbers nothing. Nothing where it is not installed.
 */
export async function convertedPrint(build: string, work: string): Promise<number | undefined> {
  if (spawnSync('pandoc', ['--version']).error) return undefined;
  const [markdown, html] = [join(work, 'converted.md'), join(work, 'converted.html')];
  writeFileSync(
    markdown,
    readdirSync(join(build, 'notes'))
      .sort()
      .map((name) => wordsAndPhotos(readFileSync(join(build, 'notes', name), 'utf8'), join(build, 'photos')))
      .join('\n\n'),
  );
  const converting = await seconds(async () => {
    const ran = spawnSync(
      'pandoc',
      ['--standalone', '--toc', '--metadata', 'title=Notes', '--output', html, markdown],
      { encoding: 'utf8' },
    );
    if (ran.status !== 0) throw new Error(`pandoc ended with ${ran.status}: ${ran.stderr.slice(-300)}`);
  });
  return converting + (await barePrint(html, work));
}

function wordsAndPhotos(note: string, folder: string): string {
  const [, front = '', words = ''] = /^---\n([^]*?)\n---\n([^]*)$/.exec(note) ?? [];
  const photos = [...front.matchAll(/file: ([^,\s]+)/g)].map(
    ([, file = '']) => `![](${pathToFileURL(join(folder, file)).href}){width=85mm}`,
  );
  return [`# ${/^title: (.*)$/m.exec(front)?.[1]}`, words, ...photos].join('\n\n');
}

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return (performance.now() - from) / 1000;
}
