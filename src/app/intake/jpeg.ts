import sharp from 'sharp';

/** JPEG files by their segments (ITU-T T.81, Annex B): metadata are exchanged, the picture itself is not decoded. */

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP1 = 0xe1;
/** JFIF, colour profile and Adobe's colour transform are needed to show the picture; other application data are not. */
const kept = new Map([
  [0xe0, 'JFIF\0'],
  [0xe2, 'ICC_PROFILE\0'],
  [0xee, 'Adobe'],
]);

/** The same picture with `exif` as its only metadata; whatever follows its end is left out. Undefined for what is no whole JPEG. */
export async function withOnlyExif(
  bytes: Uint8Array,
  exif: Record<string, Record<string, string>>,
  orientation = 1,
): Promise<Uint8Array | undefined> {
  const parts = segments(bytes);
  if (!parts) return undefined;
  const own = segments(
    await sharp({ create: { width: 1, height: 1, channels: 3, background: '#fff' } })
      .withExif(exif)
      .withMetadata({ orientation })
      .jpeg()
      .toBuffer(),
  );
  const metadata = own?.filter((s) => s.marker === APP1) ?? [];
  const [start, ...rest] = parts;
  const picture = rest.filter((s) => !isMetadata(s)).map(withoutThumbnail);
  return Buffer.concat([start!, ...metadata, ...picture].map((s) => s.bytes));
}

interface Segment {
  marker: number;
  bytes: Uint8Array;
}

const isMetadata = ({ marker, bytes }: Segment) => {
  if (marker === 0xfe) return true;
  if (marker < 0xe0 || marker > 0xef) return false;
  const name = kept.get(marker);
  return name === undefined || Buffer.from(bytes.subarray(4, 4 + name.length)).toString('latin1') !== name;
};

/** JFIF may carry a small picture of its own, of what the large one may no longer show: its two sides and its pixels go. */
function withoutThumbnail({ marker, bytes }: Segment): Segment {
  if (marker !== 0xe0 || bytes.length < jfifLength + 2) return { marker, bytes };
  const bare = Buffer.from(bytes.subarray(0, jfifLength + 2));
  bare.writeUInt16BE(jfifLength, 2);
  bare.writeUInt16BE(0, jfifLength);
  return { marker, bytes: bare };
}
/** ITU-T T.871, 10.1: length, `JFIF`, version, units, two densities, and the two sides of the thumbnail. */
const jfifLength = 16;

/** Segments from start to end of the picture, with what the encoder wrote behind each start of scan. */
function segments(bytes: Uint8Array): Segment[] | undefined {
  if (bytes[0] !== 0xff || bytes[1] !== SOI) return undefined;
  const found: Segment[] = [{ marker: SOI, bytes: bytes.subarray(0, 2) }];
  let at = 2;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === EOI) return [...found, { marker, bytes: bytes.subarray(at, at + 2) }];
    let end = at + 2 + (bytes[at + 2]! << 8) + bytes[at + 3]!;
    if (marker === SOS) end = endOfScan(bytes, end);
    if (!(end > at) || end > bytes.length) return undefined;
    found.push({ marker, bytes: bytes.subarray(at, end) });
    at = end;
  }
  return undefined;
}

/** Coded data run to the next marker that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1]!;
    if (next !== 0 && !(next >= 0xd0 && next <= 0xd7) && next !== 0xff) return at;
  }
  return bytes.length + 1;
}
