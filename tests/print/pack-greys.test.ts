import { deflateSync, inflateSync } from 'node:zlib';
import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { expect, it } from 'vitest';
import { packGreys } from '../../src/print/pack-greys.js';

/** A picture as the browser writes it: three bytes a dot. */
async function packed(width: number, dots: readonly (readonly [number, number, number])[], more: object = {}) {
  const pdf = await PDFDocument.create();
  const dict = {
    Type: 'XObject',
    Subtype: 'Image',
    Width: width,
    Height: dots.length / width,
    ColorSpace: 'DeviceRGB',
    BitsPerComponent: 8,
    Filter: 'FlateDecode',
    ...more,
  };
  const ref = pdf.context.register(
    PDFRawStream.of(pdf.context.obj(dict as unknown as Record<string, string>), deflateSync(Buffer.from(dots.flat()))),
  );
  packGreys(pdf);
  const stream = pdf.context.lookup(ref) as PDFRawStream;
  return {
    space: stream.dict.get(PDFName.of('ColorSpace'))!.toString(),
    bits: Number(stream.dict.get(PDFName.of('BitsPerComponent'))!.toString()),
    bytes: [...inflateSync(stream.contents)],
  };
}
const greys = (...of: number[]) => of.map((g) => [g, g, g] as const);

// ISO 32000-1:2008, 8.9.3: the first dot in the highest bits, each row from a new byte on.
it.each([
  ['black and white', greys(0, 255, 255, 0, 0, 255), { bits: 1, bytes: [0b01100000, 0b00100000] }],
  ['four greys', greys(0, 85, 170, 255, 255, 0), { bits: 2, bytes: [0b00011000, 0b11110000] }],
  ['sixteen greys', greys(0, 17, 34, 255, 238, 85), { bits: 4, bytes: [0x01, 0x20, 0xfe, 0x50] }],
  ['other greys', greys(1, 2, 3, 4, 5, 6), { bits: 8, bytes: [1, 2, 3, 4, 5, 6] }],
])('a picture of %s takes no more bits than tell them apart', async (_, dots, expected) => {
  expect(await packed(3, dots)).toEqual({ space: '/DeviceGray', ...expected });
});

it('a picture with one dot in colour stays as it is, and one with a mask', async () => {
  const dots = [...greys(0, 255, 0), [0, 0, 1] as const];
  expect(await packed(2, dots)).toEqual({ space: '/DeviceRGB', bits: 8, bytes: dots.flat() });
  expect(await packed(2, greys(0, 0, 0, 0), { SMask: 'None' })).toMatchObject({ space: '/DeviceRGB' });
});
