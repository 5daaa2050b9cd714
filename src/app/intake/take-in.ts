import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import sharp from 'sharp';
import { writeNewFileWhole } from '../../platform/whole.js';
import { pictureIn } from '../../print/photo.js';
import type { Build } from '../../project/model.js';
import type { FoundPhoto, Refused } from './find.js';
import { withOnlyExif } from './jpeg.js';
import type { Proposal } from './propose.js';

export interface Taken {
  from: string;
  name: string;
  note?: string | undefined;
  /** The entry for the note's frontmatter. */
  yaml: string;
}

/** One photo that cannot be taken in; the others can. */
export class UnreadablePhoto extends Error {
  readonly refused: Refused;

  constructor(refused: Refused, cause?: unknown) {
    super(refused.reason, { cause });
    this.refused = refused;
  }
}

/**
 * Copies a photo into the build without position data or camera data; capture time and orientation stay, and the hash of
 * the original, so that the same photo is known again. The picture of a JPEG is copied as it is; other files are coded anew.
 *
 * @throws UnreadablePhoto where the picture cannot be read
 * @throws MachineFailure where it cannot be written
 */
export async function takeIn(
  photo: FoundPhoto,
  chosen: Proposal | undefined,
  proves: readonly string[],
  build: Build,
  dry: boolean,
): Promise<Taken> {
  const folder = join(build.directory, 'photos');
  const content = await copyWithoutPosition(photo);
  let name = '';
  for (name of freeNames(photo, chosen, folder)) {
    // Another run may take the name at the same moment: then it is the next one.
    if (dry || (await writeNewFileWhole(join(folder, name), content))) break;
  }
  const yaml = [
    `  - file: ${name}`,
    '    shows: # what it shows',
    ...(chosen?.stage ? [`    stage: ${chosen.stage}`] : []),
    ...provesLine(proves, chosen?.open ?? []),
    ...(photo.dated ? [] : [`    taken-on: # the file does not say; it was written ${photo.takenAt.slice(0, 10)}`]),
    '',
  ].join('\n');
  return { from: photo.file, name, note: chosen?.note, yaml };
}

/** What was confirmed; otherwise the key stays empty, with what it could name behind it. */
function provesLine(proves: readonly string[], open: Proposal['open']): string[] {
  if (proves.length > 0) return [`    proves: [${proves.join(', ')}]`];
  if (open.length === 0) return [];
  const names = open.slice(0, most).map(({ name }) => name);
  return [`    proves: # what it shows of: ${names.join(', ')}${open.length > most ? ', …' : ''}`];
}
const most = 6;

async function copyWithoutPosition(photo: FoundPhoto): Promise<Uint8Array> {
  const bytes = await readFile(photo.file);
  const heic = /\.hei[cf]$/i.test(photo.file);
  try {
    const found = await pictureIn(bytes);
    if ('ok' in found && heic) throw new Error(found.reason);
    if ('ok' in found) throw new UnreadablePhoto({ file: photo.file, reason: found.reason, hint: found.hint });
    const { orientation } = found.about;
    const exif = {
      IFD0: { ImageDescription: `gusset-original:${photo.sha256}` },
      IFD2: photo.dated ? { DateTimeOriginal: photo.takenAt.slice(0, 19).replaceAll('-', ':').replace('T', ' ') } : {},
    };
    const same = await withOnlyExif(bytes, exif, orientation);
    if (same) return same;
    // Coded anew, it is turned upright; of what came with it only the colour profile stays.
    const picture = sharp(bytes, { limitInputPixels: 210e6 }).autoOrient().keepIccProfile().withExif(exif);
    return await (/\.png$/i.test(photo.file)
      ? picture.png()
      : picture.jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
    ).toBuffer();
  } catch (cause) {
    if (cause instanceof UnreadablePhoto) throw cause;
    throw new UnreadablePhoto(
      {
        file: photo.file,
        reason: `cannot be read as a picture here${heic ? ' (HEIC, as phones write it)' : ''}; expected JPEG, PNG, WebP, TIFF or AVIF`,
        hint: heic
          ? 'set the phone to write JPEG ("most compatible"), or export the photo as JPEG'
          : 'copy it again from the phone',
      },
      cause,
    );
  }
}

/** `020-crossmember-welded-2026-03-14-1020.jpg`: note, stage and time, with a number behind where that is taken. */
function* freeNames(photo: FoundPhoto, chosen: Proposal | undefined, folder: string): Generator<string> {
  const time = photo.takenAt.slice(0, 16).replace('T', '-').replace(':', '');
  const stem = [chosen?.note, chosen?.stage, time].filter(Boolean).join('-').toLowerCase();
  const ending = /\.png$/i.test(extname(photo.file)) ? '.png' : '.jpg';
  for (let n = 1; ; n++) {
    const name = `${stem}${n === 1 ? '' : `-${n}`}${ending}`;
    if (!existsSync(join(folder, name))) yield name;
  }
}
