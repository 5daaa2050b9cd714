import sharp from 'sharp';
import { several } from '../platform/several.js';
import { keptPhoto, type PhotoSettings, type PreparedPhoto, preparePhoto, readPhoto } from './photo.js';

export type { PhotoSettings } from './photo.js';

/** The result for one file. */
export type PhotoResult = { file: string } & PreparedPhoto;

/**
 * Prepares photos for printing, as many at a time as the machine has cores; photos of the same content share one result.
 * Results come in the order of `files`; one whose SHA-256 is in `hashes` and that was prepared before is not read. A file that cannot be used gives `ok: false` with reason and hint; only a cache that
 * cannot be written throws (MachineFailure).
 */
export async function preparePhotos(
  files: readonly string[],
  settings: PhotoSettings & {
    hashes?: ReadonlyMap<string, string>;
    onProgress?: (done: number, total: number) => void;
  },
): Promise<PhotoResult[]> {
  const byContent = new Map<string, Promise<PreparedPhoto>>();
  let done = 0;

  async function one(file: string): Promise<PreparedPhoto> {
    const sha256 = settings.hashes?.get(file);
    const kept = sha256 === undefined ? undefined : await keptPhoto(sha256, settings);
    if (kept) return kept;
    const content = await readPhoto(file);
    if ('ok' in content) return content;
    const preparing = byContent.get(content.sha256) ?? preparePhoto(content, settings);
    byContent.set(content.sha256, preparing);
    return preparing;
  }

  // As many threads at once as photos: a large one takes a few hundred megabytes while it is decoded.
  const threads = sharp.concurrency();
  sharp.concurrency(1);
  try {
    return await several(files, async (file) => {
      const result = { file, ...(await one(file)) };
      settings.onProgress?.(++done, files.length);
      return result;
    });
  } finally {
    sharp.concurrency(threads);
  }
}
