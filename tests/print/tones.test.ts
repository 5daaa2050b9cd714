import sharp from 'sharp';
import { expect, it } from 'vitest';
import { linesOrTones } from '../../src/print/tones.js';

const svg = (inside: string) =>
  Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="300" height="200"><defs><linearGradient id="g"><stop offset="0"/><stop offset="1" stop-color="#fff"/></linearGradient></defs>${inside}</svg>`,
  );
const greysOf = async (bytes: Uint8Array) =>
  [...new Set(await sharp(bytes).greyscale().raw().toBuffer())].sort((a, b) => a - b);

it('text and lines are kept in white, black and two greys, a coloured line as one of them', async () => {
  const made = (await linesOrTones(
    await sharp(
      svg(
        '<circle cx="150" cy="100" r="80" fill="none" stroke="#000" stroke-width="3"/><path d="M5 5h100" stroke="#a00" stroke-width="6"/>',
      ),
    )
      .png()
      .toBuffer(),
  ))!;
  expect(made).toMatchObject({ mime: 'image/png', width: 300, height: 200 });
  expect(await greysOf(made.bytes)).toEqual([0, 85, 170, 255]);
  const [line] = await sharp(made.bytes)
    .extract({ left: 50, top: 5, width: 1, height: 1 })
    .greyscale()
    .raw()
    .toBuffer();
  expect(line).toBe(85);
});

it('what has tones all over keeps them', async () => {
  const made = (await linesOrTones(
    await sharp(svg('<rect width="300" height="200" fill="url(#g)"/>')).png().toBuffer(),
  ))!;
  expect(made.mime).toBe('image/jpeg');
  expect((await greysOf(made.bytes)).length).toBeGreaterThan(100);
});

it('of what is all white nothing is made', async () => {
  expect(await linesOrTones(await sharp(svg('')).png().toBuffer())).toBeUndefined();
});
