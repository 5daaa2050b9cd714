import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { cacheDirectory } from '../../platform/cache.js';
import { changed } from '../../platform/changed.js';
import type { LinkedFile } from '../../platform/self-contained.js';
import { type FirstPage, firstPages, keptPages } from '../../print/first-pages.js';
import type { RunningBrowser } from '../../print/launch.js';
import { preparePhotos } from '../../print/photos.js';
import type { Build } from '../../project/model.js';
import { isPicture } from '../../project/picture-name.js';
import type { PaperPage } from '../../render/subject.js';
import { placed } from './document-photos.js';

/** First pages by the paths of their papers. */
export type DrawnPapers = ReadonlyMap<string, FirstPage>;
type Hashes = ReadonlyMap<string, string>;

/** The first page of each PDF paper, drawn where no earlier print has kept it, and papers that are pictures. One that cannot be drawn tells why, and keeps nothing from being printed. */
export async function drawPapers(
  build: Build,
  hashes: Hashes,
  browser: RunningBrowser,
  say: (says: string) => void,
): Promise<DrawnPapers> {
  const read = async (path: string) => {
    const bytes = await readFile(build.files.get(path)!.absolute);
    if (createHash('sha256').update(bytes).digest('hex') !== hashes.get(path)) throw changed(path);
    return bytes;
  };
  const papers = pdfPapers(build).map((path) => ({ path, sha256: hashes.get(path)!, read: () => read(path) }));
  const pages = await firstPages(papers, browser, directory(), (done, total) =>
    say(`first pages of papers ${done} of ${total}`),
  );
  return new Map([
    ...papers.map(({ path, sha256 }): [string, FirstPage] => [path, pages.get(sha256)!]),
    ...(await picturePapers(build, hashes)),
  ]);
}

/** The first pages that earlier prints have kept, and papers that are pictures; no browser is needed for these. */
export async function keptPapers(build: Build, hashes: Hashes): Promise<DrawnPapers> {
  const keptPage = await keptPages(directory());
  const pages: [string, FirstPage][] = [];
  for (const path of pdfPapers(build)) {
    const page = await keptPage(hashes.get(path) ?? '');
    if (page) pages.push([path, page]);
  }
  return new Map([...pages, ...(await picturePapers(build, hashes))]);
}

/** Scans and photos of papers, made ready like photos: what a camera wrote into them stays behind. */
async function picturePapers(build: Build, hashes: Hashes): Promise<[string, FirstPage][]> {
  const paths = papersOf(build).filter(isPicture);
  const prepared = await preparePhotos(
    paths.map((path) => build.files.get(path)!.absolute),
    { printWidthMm: 83.5, ppi: 240, quality: 80, cacheDirectory: directory() },
  );
  return prepared.map((picture, index): [string, FirstPage] => {
    const path = paths[index]!;
    if (!picture.ok) return [path, { ok: false, reason: picture.reason }];
    if (picture.sha256 !== hashes.get(path)) throw changed(path);
    return [path, { ...picture, pages: 1 }];
  });
}

/** First pages for the tree; `address` gives that of a prepared picture. */
export function paperPages(drawn: DrawnPapers, address: (prepared: string) => string): Map<string, PaperPage> {
  return new Map(
    [...drawn].map(([path, page]): [string, PaperPage] => [
      path,
      page.ok
        ? { url: address(page.prepared), width: page.width, height: page.height, pages: page.pages }
        : { reason: page.reason },
    ]),
  );
}

/** The same, linked into the folder that the browser may read. */
export async function placedPages(drawn: DrawnPapers, folder: string): Promise<Map<string, PaperPage>> {
  const files = [...new Set([...drawn.values()].flatMap((page) => (page.ok ? [page.prepared] : [])))];
  const urls = new Map(await Promise.all(files.map(async (file) => [file, await placed(file, folder)] as const)));
  return paperPages(drawn, (prepared) => urls.get(prepared)!);
}

/** The prepared files by the addresses of their pictures. */
export function pageFiles(drawn: DrawnPapers, shown: ReadonlyMap<string, PaperPage>): Map<string, LinkedFile> {
  return new Map(
    [...drawn].flatMap(([path, page]) => {
      const picture = shown.get(path);
      return page.ok && picture && 'url' in picture
        ? [[picture.url, { path: page.prepared, mime: page.mime }] as const]
        : [];
    }),
  );
}

const papersOf = (build: Build): string[] => [
  ...new Set(build.notes.flatMap((note) => (note.data.papers ?? []).map((p) => p.file))),
];
const pdfPapers = (build: Build): string[] => papersOf(build).filter((path) => /\.pdf$/i.test(path));
const directory = (): string => join(cacheDirectory(), 'first-pages');
