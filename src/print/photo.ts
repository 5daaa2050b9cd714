import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import sharp, { type Metadata } from 'sharp';
import { keep, kept } from '../platform/cache.js';
import { MachineFailure, wordsOf } from '../platform/failure.js';
import { sha256Beside } from '../platform/sha256.js';
import { kindOf, type PictureKind } from './kind.js';

export interface PhotoSettings {
  /** The widest it is printed, in millimetres. */
  printWidthMm: number;
  /** Printed pixels per inch: 200 to 300 show no loss. */
  ppi: number;
  /** JPEG quality, 1 to 100; about 82 shows no loss. */
  quality: number;
  cacheDirectory: string;
}

/** A photo made ready to print, or why it could not be. `sha256` is that of the file as it lies there. */
export type PreparedPhoto =
  | { ok: true; prepared: string; mime: 'image/jpeg' | 'image/png'; width: number; height: number; sha256: string }
  | { ok: false; reason: string; hint: string };

const copyAgain = 'copy it again from the camera or phone';
const mostBytes = 256 * 2 ** 20;
/** Beyond the largest phone photos (200 megapixels); decoding more would take the machine's memory. */
const mostPixels = 210e6;
/** Raised when the same photo and settings should give another picture than before. */
const recipe = 2;

export type Content = { bytes: Uint8Array; sha256: string };

/** The content of a photo's file, or why it has none that can be used. */
export async function readPhoto(file: string): Promise<Content | Extract<PreparedPhoto, { ok: false }>> {
  try {
    const state = await stat(file);
    if (!state.isFile()) return { ok: false, reason: 'is not a file', hint: 'name a photo' };
    if (state.size === 0) return { ok: false, reason: 'is empty (zero bytes)', hint: copyAgain };
    if (state.size > mostBytes)
      return {
        ok: false,
        reason: `is ${Math.round(state.size / 2 ** 20)} MB, more than a photo can be (256 MB)`,
        hint: 'export it smaller',
      };
    const bytes = await readFile(file);
    return { bytes, sha256: await sha256Beside(bytes) };
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return {
      ok: false,
      reason: missing ? 'is not there' : `cannot be read: ${wordsOf(error)}`,
      hint: missing ? 'check its name and folder' : 'check its permissions',
    };
  }
}

/**
 * Turns a photo upright, brings it to print size (never larger), sRGB and JPEG (a drawing stays lossless where that is
 * smaller) and leaves every bit of its metadata behind; the result is kept in the cache under content and settings.
 */
export async function preparePhoto({ bytes, sha256 }: Content, settings: PhotoSettings): Promise<PreparedPhoto> {
  try {
    const made =
      (await keptPhoto(sha256, settings)) ??
      (await make(bytes, stem(sha256, settings), widthOf(settings), settings.quality));
    return made.ok ? { ...made, sha256 } : made;
  } catch (error) {
    if (error instanceof MachineFailure) throw error;
    // The decoder's own words are of no use: photos decoded at the same time share one place for them.
    return {
      ok: false,
      reason: 'is cut short or damaged: the picture cannot be read to its end',
      hint: `${copyAgain}, or export it as JPEG`,
    };
  }
}

const widthOf = ({ printWidthMm, ppi }: PhotoSettings): number => Math.ceil((printWidthMm / 25.4) * ppi);
const stem = (sha256: string, settings: PhotoSettings): string =>
  join(
    settings.cacheDirectory,
    `${sha256.slice(0, 24)}-${widthOf(settings)}-${settings.quality}-${recipe}-${sharp.versions.vips}`,
  );

type Made = Extract<PreparedPhoto, { ok: false }> | Omit<Extract<PreparedPhoto, { ok: true }>, 'sha256'>;

const formats = [
  ['.jpg', 'image/jpeg'],
  ['.png', 'image/png'],
] as const;

/** The photo of this content as an earlier run made it ready. */
export async function keptPhoto(sha256: string, settings: PhotoSettings): Promise<PreparedPhoto | undefined> {
  for (const [extension, mime] of formats) {
    const prepared = stem(sha256, settings) + extension;
    const bytes = await kept(prepared);
    const found = bytes && (await sharp(bytes).metadata());
    if (found) return { ok: true, prepared, mime, width: found.width, height: found.height, sha256 };
  }
  return undefined;
}

/**
 * What a picture is, or why it cannot be used: it is none, moves, or is too large.
 *
 * @throws Error where its head cannot be read
 */
export async function pictureIn(
  bytes: Uint8Array,
): Promise<{ kind: PictureKind; about: Metadata } | Extract<PreparedPhoto, { ok: false }>> {
  const kind = kindOf(bytes);
  if ('other' in kind) return { ok: false, reason: `holds ${kind.other}`, hint: kind.hint };
  const about = await sharp(bytes, { limitInputPixels: false }).metadata();
  const refusal = refusalOf(about, framesOf(bytes, kind.picture) ?? about.pages ?? 1);
  return refusal ? { ok: false, ...refusal } : { kind: kind.picture, about };
}

async function make(bytes: Uint8Array, stem: string, width: number, quality: number): Promise<Made> {
  const found = await pictureIn(bytes);
  if ('ok' in found) return found;
  const { kind } = found;
  const picture = sharp(bytes, { failOn: 'error', limitInputPixels: mostPixels })
    .autoOrient()
    .resize({ width, height: Math.ceil(width * 1.5), fit: 'inside', withoutEnlargement: true })
    .toColourspace('srgb');
  const jpeg = await picture
    .clone()
    .flatten({ background: '#ffffff' })
    .jpeg({ quality })
    .toBuffer({ resolveWithObject: true });
  const lossless =
    kind === 'png' || kind === 'gif'
      ? await picture.png({ compressionLevel: 9 }).toBuffer({ resolveWithObject: true })
      : undefined;
  const smaller = lossless && lossless.data.length < jpeg.data.length ? lossless : jpeg;
  const [extension, mime] = formats[smaller === jpeg ? 0 : 1];
  await keep(stem + extension, smaller.data);
  return { ok: true, prepared: stem + extension, mime, width: smaller.info.width, height: smaller.info.height };
}

type Refusal = { reason: string; hint: string };

function refusalOf({ width, height, pageHeight }: Metadata, pages: number): Refusal | undefined {
  if (pages > 1)
    return { reason: `holds ${pages} pictures or frames`, hint: 'save the one that shows the work as JPEG' };
  const pixels = width * (pageHeight ?? height);
  if (pixels <= mostPixels) return undefined;
  return {
    reason: `is ${width} × ${height} pixels (${Math.round(pixels / 1e6)} megapixels), more than the ${mostPixels / 1e6} that are read`,
    hint: 'export it smaller',
  };
}

/** How many frames a PNG says it has (PNG specification, third edition, 11.3.4): what decodes it here sees the first alone. */
function framesOf(bytes: Uint8Array, kind: PictureKind): number | undefined {
  if (kind !== 'png') return undefined;
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 12 <= file.length; at += 12 + file.readUInt32BE(at)) {
    const type = file.toString('latin1', at + 4, at + 8);
    // The picture of a PNG that moves need not be one of its frames.
    if (type === 'acTL') return file.readUInt32BE(at + 8) + 1;
    if (type === 'IDAT') return undefined;
  }
  return undefined;
}
