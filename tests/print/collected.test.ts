import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { collected } from '../../src/print/collected.js';
import { scratch } from './fixtures.js';

it('gives all that came, in its order, and leaves no file', async () => {
  const folder = scratch();
  await fc.assert(
    fc.asyncProperty(fc.array(fc.uint8Array({ maxLength: 5000 }), { maxLength: 20 }), async (pieces) => {
      expect(
        (await collected(ReadableStream.from(pieces) as ReadableStream<Uint8Array>, folder)).equals(
          Buffer.concat(pieces),
        ),
      ).toBe(true);
      expect(readdirSync(folder)).toEqual([]);
    }),
    { numRuns: 40 },
  );
});

it('leaves no file where the stream breaks off', async () => {
  const folder = scratch();
  const broken = async function* () {
    yield new Uint8Array(10);
    expect(readdirSync(folder)).toEqual([]);
    throw new Error('broken off');
  };
  await expect(collected(ReadableStream.from(broken()) as ReadableStream<Uint8Array>, folder)).rejects.toThrow(
    'broken off',
  );
  expect(readdirSync(folder)).toEqual([]);
});
