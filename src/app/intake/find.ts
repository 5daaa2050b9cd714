import type { Dirent } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { readExif } from '../../print/exif.js';
import { readPhoto } from '../../print/photo.js';
import type { Build } from '../../project/model.js';
import { isPicture } from '../../project/picture-name.js';

export interface FoundPhoto {
  file: string;
  sha256: string;
  /** By the camera's clock, or else when the file was written. */
  takenAt: string;
  /** The file itself says when it was taken. */
  dated: boolean;
}

export interface Refused {
  file: string;
  reason: string;
  hint: string;
  /** It should have been taken in. */
}

const raw = new Set(['.dng', '.cr2', '.nef', '.arw']);

/** New photos of a folder and the folders in it, by content; those that the build has already are counted. */
export async function findPhotos(
  folder: string,
  build: Build,
  say: (text: string) => void,
): Promise<{ photos: FoundPhoto[]; known: number; refused: Refused[] }> {
  const kept = await Promise.all((await files(join(build.directory, 'photos'))).map(sourceHash));
  const here = new Set(kept.filter((hash) => hash !== undefined));
  const photos: FoundPhoto[] = [];
  const refused: Refused[] = [];
  let known = 0;
  for (const entry of await entriesOf(folder))
    if (!entry.isFile() && !entry.isDirectory() && (entry.isSymbolicLink() || isPicture(entry.name)))
      refused.push({
        file: pathOf(entry),
        reason: entry.isSymbolicLink() ? 'a link, which is not followed' : 'no plain file',
        hint: 'name the folder that holds the photos themselves',
      });
  const all = await files(folder);
  for (const [i, file] of all.entries()) {
    say(`looking at photo ${i + 1} of ${all.length}`);
    const kind = extname(file).toLowerCase();
    if (raw.has(kind)) refused.push({ file, reason: 'a raw file of a camera', hint: 'export it as JPEG' });
    if (!isPicture(file)) continue;
    const content = await readPhoto(file);
    if ('ok' in content) {
      refused.push({ file, reason: content.reason, hint: content.hint });
      continue;
    }
    const { bytes, sha256 } = content;
    if (here.has(sha256) || photos.some((p) => p.sha256 === sha256)) {
      known++;
      continue;
    }
    const taken = readExif(bytes).takenAt;
    photos.push({
      file,
      sha256,
      takenAt: taken ?? (await stat(file)).mtime.toISOString().slice(0, 19),
      dated: taken !== undefined,
    });
  }
  return { photos: photos.sort((a, b) => a.takenAt.localeCompare(b.takenAt)), known, refused };
}

async function files(folder: string): Promise<string[]> {
  return (await entriesOf(folder)).filter((e) => e.isFile()).map(pathOf);
}

async function entriesOf(folder: string): Promise<Dirent[]> {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true }).catch(() => []);
  return entries.filter((e) => !e.name.startsWith('.')).sort((a, b) => (pathOf(a) < pathOf(b) ? -1 : 1));
}

const pathOf = (entry: Dirent): string => join(entry.parentPath, entry.name);

/** Hash of the original that a photo of the build was taken in from: kept in its own metadata, since the copy has other bytes. */
async function sourceHash(file: string): Promise<string | undefined> {
  const content = await readPhoto(file);
  if ('ok' in content) return undefined;
  const { bytes, sha256 } = content;
  const kept = /gusset-original:([0-9a-f]{64})/.exec(Buffer.from(bytes.subarray(0, 64 * 1024)).toString('latin1'));
  return kept?.[1] ?? sha256;
}
