import { readdir } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { keep, kept } from '../platform/cache.js';
import type { RunningBrowser } from './launch.js';
import { readerVersion } from './pdf-reader.js';
import { linesOrTones } from './tones.js';

/** The picture of a PDF's first page, or in words why there is none. */
export type FirstPage = KeptPage | { ok: false; reason: string };
export interface KeptPage {
  ok: true;
  prepared: string;
  mime: 'image/png' | 'image/jpeg';
  width: number;
  height: number;
  /** How many pages the PDF has. */
  pages: number;
}

/** Two beside each other and two above each other on a page of the document, at 240 pixels per inch. */
const [width, height] = [83.5, 100].map((mm) => Math.floor((mm / 25.4) * 240)) as [number, number];
/** Raised when the same paper should give another picture than before. */
const recipe = 2;

/** A PDF by the SHA-256 of its content, which is read only where the page has to be drawn. */
export interface Paper {
  sha256: string;
  read: () => Promise<Uint8Array>;
}

/** At most so many at once: one browser draws them all. */
const mostAtOnce = 2;

/**
 * First pages of PDFs by their SHA-256, each drawn once by one version of the browser and then taken from the cache. Only
 * a cache that cannot be written (MachineFailure) and what `read` throws come out of it as errors.
 */
export async function firstPages(
  papers: readonly Paper[],
  running: RunningBrowser,
  directory: string,
  onProgress: (done: number, total: number) => void = () => {},
): Promise<Map<string, FirstPage>> {
  const keptPage = await keptPages(directory);
  const pages = new Map<string, FirstPage>();
  const missing = new Map<string, Paper>();
  for (const paper of papers) {
    const page = await keptPage(paper.sha256, running.version);
    if (page) pages.set(paper.sha256, page);
    else missing.set(paper.sha256, paper);
  }
  const waiting = [...missing.values()];
  let done = 0;
  const worker = async () => {
    for (let paper = waiting.shift(); paper; paper = waiting.shift()) {
      pages.set(paper.sha256, await draw(paper, running, directory));
      onProgress(++done, missing.size);
    }
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), mostAtOnce) }, worker));
  return pages;
}

/** Looks up pictures that were kept and are as they were, by the SHA-256 of the paper: those of one version of the browser, or of any. */
export async function keptPages(
  directory: string,
): Promise<(sha256: string, version?: string) => Promise<KeptPage | undefined>> {
  const names = (await readdir(directory).catch(() => [])).sort();
  return async (sha256, version) => {
    const name = names.findLast(
      (n) => n.startsWith(`${stem(sha256)}_${version === undefined ? '' : `${plain(version)}_`}`) && told.test(n),
    );
    const [, pages, across, down, extension] = told.exec(name ?? '') ?? [];
    return name === undefined || !(await kept(join(directory, name)))
      ? undefined
      : {
          ok: true,
          prepared: join(directory, name),
          mime: extension === 'png' ? 'image/png' : 'image/jpeg',
          width: Number(across),
          height: Number(down),
          pages: Number(pages),
        };
  };
}

/** What a name tells: the paper and what drew it; how many pages it has; how large the picture is. */
const told = /_(\d+)_(\d+)x(\d+)\.(png|jpg)$/;
const stem = (sha256: string): string =>
  [sha256.slice(0, 24), width, height, recipe, readerVersion, sharp.versions.vips].join('-');
const plain = (version: string): string => version.replace(/[^A-Za-z\d.]+/g, '-');

async function draw(
  { sha256, read }: Paper,
  { browser, version }: RunningBrowser,
  directory: string,
): Promise<FirstPage> {
  // Reading PDF takes long to load, and most papers have been drawn before.
  const { drawFirstPage } = await import('./first-page.js');
  const drawn = await drawFirstPage(browser, await read(), width, height);
  if (!drawn.ok) return drawn;
  const made = await linesOrTones(drawn.png);
  if (!made) return { ok: false, reason: 'its first page came out empty' };
  const prepared = join(
    directory,
    `${stem(sha256)}_${plain(version)}_${drawn.pages}_${made.width}x${made.height}.${made.mime === 'image/png' ? 'png' : 'jpg'}`,
  );
  await keep(prepared, made.bytes);
  return { ok: true, prepared, mime: made.mime, width: made.width, height: made.height, pages: drawn.pages };
}
