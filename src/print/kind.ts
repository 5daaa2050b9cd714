/** Pictures that can be prepared for printing. */
export type PictureKind = 'jpeg' | 'png' | 'webp' | 'tiff' | 'gif' | 'avif';

/** What a file holds, told from its first bytes, whatever its name says; `other` in words where it is no usable picture. */
export type FileKind = { picture: PictureKind } | { other: string; hint: string };

const singleFrame = 'take a single frame from it and save that as JPEG';
const exportAsJpeg = 'export it as JPEG and put that in its place';

/** Tells what the file holds. Of an unknown file it says no more than that. */
export function kindOf(bytes: Uint8Array): FileKind {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, 64)).toString('latin1');
  if (head.startsWith('\xff\xd8\xff')) return { picture: 'jpeg' };
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return { picture: 'png' };
  if (head.startsWith('RIFF') && head.slice(8, 12) === 'WEBP') return { picture: 'webp' };
  if (head.startsWith('II*\0') || head.startsWith('MM\0*')) return { picture: 'tiff' };
  if (head.startsWith('GIF8')) return { picture: 'gif' };
  if (head.slice(4, 8) === 'ftyp') return boxed(head.slice(8));
  if (head.startsWith('%PDF')) return { other: 'a PDF', hint: 'list it under papers, or export the page as JPEG' };
  if (/^\s*<(\?xml|svg|!doctype|html)/i.test(head))
    return { other: 'an SVG drawing or a web page', hint: exportAsJpeg };
  return {
    other: 'something that is no picture',
    hint: 'look at it in another program; copy the photo again from the camera or phone',
  };
}

/** Files of the ISO base media family tell their brands first. */
function boxed(brands: string): FileKind {
  if (brands.includes('avis')) return { other: 'a moving picture', hint: singleFrame };
  if (brands.includes('avif')) return { picture: 'avif' };
  if (/hei[cxms]|hev[cxms]|mif1|msf1/.test(brands)) {
    return {
      other: 'a HEIC photo, which cannot be read here',
      hint: `${exportAsJpeg}, or set the phone's camera to its most compatible format`,
    };
  }
  return { other: 'a video', hint: singleFrame };
}
