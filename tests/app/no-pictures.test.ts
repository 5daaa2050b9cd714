import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { loadWithPapers } from '../../src/app/publish/document-papers.js';
import { buildFile, folderWith } from '../project/scratch.js';

const picture = await sharp({ create: { width: 8, height: 6, channels: 3, background: '#888' } })
  .jpeg()
  .toBuffer();
const note = (file: string) =>
  `---\nkind: fuel-system\ntitle: Tried\nphotos:\n  - { file: ${file}, shows: The marking of the tank }\n---\n\nWords.\n`;

async function problems(content: string | Uint8Array, file = 'tank.jpg') {
  const folder = folderWith({ 'build.md': buildFile, 'notes/010-a.md': note(file), [`photos/${file}`]: content });
  return (await loadWithPapers(folder)).problems;
}

describe('what is named as a photo is a picture by its bytes, for every check', () => {
  it('a picture is taken, whatever its name ends in', async () => {
    expect((await problems(picture)).filter((p) => p.code === 'photo-broken')).toEqual([]);
    expect((await problems(picture, 'tank.txt')).filter((p) => p.code === 'photo-broken')).toEqual([]);
  });

  it.each([
    ['words', 'the marking is there, believe me', 'something that is no picture'],
    ['a PDF', '%PDF-1.4 and so on', 'a PDF'],
    ['a web page', '<html></html>', 'an SVG drawing or a web page'],
    ['one byte', 'x', 'something that is no picture'],
  ])('%s under the name of a photo is an error at its place', async (_, content, holds) => {
    expect(await problems(content)).toMatchObject([
      {
        code: 'photo-broken',
        line: 5,
        column: 13,
        found: `\`photos/tank.jpg\` as a photo, which holds ${holds}`,
        expected: 'a picture',
      },
    ]);
  });
});
