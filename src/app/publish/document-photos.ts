import { statSync } from 'node:fs';
import { copyFile, link } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { TakenAt } from '../../checks/engine/proofs.js';
import { cacheDirectory } from '../../platform/cache.js';
import type { LinkedFile } from '../../platform/self-contained.js';
import { type PhotoResult, preparePhotos } from '../../print/photos.js';
import { afresh } from '../../project/memory.js';
import type { Build } from '../../project/model.js';
import type { Problem } from '../../project/problem.js';
import type { Picture } from '../../render/subject.js';

export type Prepared = ReadonlyMap<string, PhotoResult>;

/** Size of photos in the document: for print, or small enough for mail and still legible. */
const photoSizes = {
  print: { printWidthMm: 85, ppi: 240, quality: 80 },
  mail: { printWidthMm: 85, ppi: 170, quality: 68 },
} as const;
export type PhotoSize = keyof typeof photoSizes;

/** With a memory, files as they were the last time are not read again; nor is one of a known SHA-256 that was prepared before. */
export async function prepareAll(
  build: Build,
  size: PhotoSize,
  say: (says: string) => void,
  recall = afresh,
  hashesOf: ReadonlyMap<string, string> = new Map(),
): Promise<Prepared> {
  const paths = [...new Set(ownersOf(build).flatMap((o) => (o.data.photos ?? []).map((p) => p.file)))];
  const kept = paths.map((path) => {
    const { absolute } = build.files.get(path)!;
    const { mtimeMs, ctimeMs, size: bytes } = statSync(absolute);
    return recall<{ absolute: string; result?: PhotoResult }>(
      `photo ${size} ${path}`,
      `${mtimeMs} ${ctimeMs} ${bytes}`,
      () => ({ absolute }),
    );
  });
  const waiting = kept.filter((k) => !k.result);
  const hashes = new Map(
    [...hashesOf].flatMap(([path, sha256]): [string, string][] =>
      build.files.has(path) ? [[build.files.get(path)!.absolute, sha256]] : [],
    ),
  );
  const results = await preparePhotos(
    waiting.map((k) => k.absolute),
    {
      ...photoSizes[size],
      cacheDirectory: join(cacheDirectory(), 'photos'),
      hashes,
      onProgress: (done, total) => say(`photos ${done} of ${total}`),
    },
  );
  waiting.forEach((k, i) => (k.result = results[i]!));
  return new Map(kept.map((k, i) => [paths[i]!, k.result!]));
}

/** What names photos: `build.md` those of the whole vehicle, each note its own. */
const ownersOf = (build: Build): readonly Pick<Build | Build['notes'][number], 'data' | 'front' | 'file'>[] => [
  build,
  ...build.notes,
];

/** Photos that cannot be used, where they are named. */
export function brokenPhotos(build: Build, photos: Prepared): Problem[] {
  return ownersOf(build).flatMap((owner) =>
    (owner.data.photos ?? []).flatMap((photo, i): Problem[] => {
      const result = photos.get(photo.file);
      if (!result || result.ok) return [];
      const range = owner.front.locate(['photos', i, 'file']);
      return [
        {
          code: 'photo-broken',
          file: owner.file,
          ...range,
          source: owner.front.sourceLine(range.line),
          found: `\`${photo.file}\`: ${result.reason}`,
          expected: 'a picture that can be shown',
          hint: result.hint,
        },
      ];
    }),
  );
}

/** Pictures for the tree, linked into the folder that the browser may read. */
export async function pictures(photos: Prepared, takenAt: TakenAt, folder: string): Promise<Map<string, Picture>> {
  const entries = await Promise.all(
    [...photos].map(async ([path, photo]): Promise<[string, Picture][]> => {
      if (!photo.ok) return [];
      const url = await placed(photo.prepared, folder);
      return [
        [path, { url, width: photo.width, height: photo.height, sha256: photo.sha256, takenAt: takenAt.get(path) }],
      ];
    }),
  );
  return new Map(entries.flat());
}

/** The prepared files by the addresses of their pictures. */
export function pictureFiles(photos: Prepared, pictures: ReadonlyMap<string, Picture>): Map<string, LinkedFile> {
  return new Map(
    [...photos].flatMap(([path, photo]) =>
      photo.ok ? [[pictures.get(path)!.url, { path: photo.prepared, mime: photo.mime }] as const] : [],
    ),
  );
}

/** The address of a prepared picture, linked into the folder that the browser may read. */
export async function placed(prepared: string, folder: string): Promise<string> {
  const target = join(folder, basename(prepared));
  await link(prepared, target).catch(async (cause: NodeJS.ErrnoException) => {
    if (cause.code !== 'EEXIST') await copyFile(prepared, target);
  });
  return pathToFileURL(target).href;
}
