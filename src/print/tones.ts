import sharp from 'sharp';

/** A picture in greys, as small as it stays legible. */
export interface Greys {
  bytes: Buffer;
  mime: 'image/png' | 'image/jpeg';
  width: number;
  height: number;
}

/** Beyond this share of pixels that are neither black nor white it is a photograph or a scan. */
const mostBetween = 0.25;
/** White, black and two greys between, which keep the edges of letters smooth. */
const step = 255 / 3;

/** A page in greys: text and lines in four of them without loss, a scan in all of them as JPEG; undefined where all is white. */
export async function linesOrTones(picture: Uint8Array): Promise<Greys | undefined> {
  const { data, info } = await sharp(picture)
    .flatten({ background: '#ffffff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const { width, height } = info;
  const greys = () => sharp(data, { raw: { width, height, channels: 1 } });
  const between = data.reduce((count, grey) => (grey > 48 && grey < 208 ? count + 1 : count), 0);
  if (between > mostBetween * data.length)
    return { bytes: await greys().jpeg({ quality: 60, mozjpeg: true }).toBuffer(), mime: 'image/jpeg', width, height };
  data.forEach((grey, i) => (data[i] = Math.round(grey / step) * step));
  if (data.every((grey) => grey === 255)) return undefined;
  return {
    bytes: await greys().png({ palette: true, colours: 4, dither: 0, compressionLevel: 9 }).toBuffer(),
    mime: 'image/png',
    width,
    height,
  };
}
