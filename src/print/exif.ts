import ExifReader from 'exifreader';

/** What a photo's own metadata tell; of the camera and its owner nothing is read. */
export interface PhotoFacts {
  /** When it was taken, by the camera's clock: `2026-03-12T14:05:33`, with `+10:00` if the camera noted its offset. */
  takenAt?: string;
  /** EXIF orientation, 1 (upright) to 8. */
  orientation: number;
  /** Pixels as stored, before it is turned upright. */
  width?: number;
  height?: number;
  /** Whether it tells where it was taken. */
  hasPosition: boolean;
}

type Tags = Record<string, { value?: unknown; description?: unknown } | undefined>;

/** Reads a photo's metadata. Missing, damaged or nonsensical ones are left out; nothing is thrown. */
export function readExif(bytes: Uint8Array): PhotoFacts {
  let tags: Record<string, Tags | undefined>;
  try {
    tags = ExifReader.load(Buffer.from(bytes), { expanded: true }) as unknown as typeof tags;
  } catch {
    return { orientation: 1, hasPosition: false };
  }
  const { exif = {}, xmp = {} } = tags;
  const takenAt = timeOf(exif);
  const [width, height] = sizeOf(tags);
  const orientation = Number(exif['Orientation']?.value);
  return {
    ...(takenAt === undefined ? {} : { takenAt }),
    orientation: Number.isInteger(orientation) && orientation >= 1 && orientation <= 8 ? orientation : 1,
    ...(width === undefined ? {} : { width }),
    ...(height === undefined ? {} : { height }),
    hasPosition: [...Object.keys(exif), ...Object.keys(xmp)].some((name) =>
      /GPS(Dest)?(Latitude|Longitude|Position|Coordinates)/i.test(name),
    ),
  };
}

function timeOf(exif: Tags): string | undefined {
  const written = exif['DateTimeOriginal']
    ? ['DateTimeOriginal', 'OffsetTimeOriginal']
    : ['DateTimeDigitized', 'OffsetTimeDigitized'];
  const parts = /^(\d{4}):(\d\d):(\d\d)[ T](\d\d:\d\d:\d\d)/.exec(textOf(exif[written[0] as string]));
  if (!parts) return undefined;
  const local = `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}`;
  const instant = new Date(`${local}Z`);
  // An impossible date (month 0, 31 April) is a clock that was never set.
  if (Number.isNaN(instant.getTime()) || instant.toISOString().slice(0, 19) !== local) return undefined;
  const offset = /^[+-]\d\d:\d\d/.exec(textOf(exif[written[1] as string]))?.[0];
  return local + (offset ?? '');
}

const textOf = (tag: Tags[string]): string => {
  const value = Array.isArray(tag?.value) ? tag.value[0] : tag?.value;
  return typeof value === 'string' ? value.trim() : '';
};

function sizeOf(tags: Record<string, Tags | undefined>): [width: number | undefined, height: number | undefined] {
  for (const group of ['file', 'pngFile', 'png', 'riff', 'gif', 'exif']) {
    const found = tags[group] ?? {};
    const [width, height] = ['Width', 'Length', 'Height'].flatMap((side) =>
      numberOf(found[`Image ${side}`] ?? found[`Image${side}`]),
    );
    if (width !== undefined && height !== undefined) return [width, height];
  }
  return [undefined, undefined];
}

const numberOf = (tag: Tags[string]): number[] => (typeof tag?.value === 'number' && tag.value > 0 ? [tag.value] : []);
