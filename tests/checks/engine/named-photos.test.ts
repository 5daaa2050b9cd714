import { describe, expect, it } from 'vitest';
import { loadWithPapers as load } from '../../../src/app/publish/document-papers.js';
import { buildFile, folderWith, pictureHead } from '../../project/scratch.js';

const note = (kind: string, more: string) => `---\nkind: ${kind}\ntitle: A note\n${more}\n---\n\nWords.\n`;
const read = async (notes: Record<string, string>, more: Record<string, string | Uint8Array> = {}) => {
  const folder = folderWith({
    'build.md': buildFile,
    ...Object.fromEntries(Object.entries(notes).map(([name, text]) => [`notes/${name}.md`, text])),
    ...more,
  });
  return load(folder);
};
const problemsOf = async (...args: Parameters<typeof read>) =>
  (await read(...args)).problems.map((p) => `${p.file.replace(/^.*(?=notes\/)/, '')}:${p.line} ${p.found}`);
describe('what is named as a photo', () => {
  it('has to be a picture, whatever it is called', async () => {
    const notes = { '010-a': note('general', 'photos:\n  - { file: weld.jpg, shows: The weld }') };
    expect(await problemsOf(notes, { 'photos/weld.jpg': 'no picture at all' })).toEqual([
      'notes/010-a.md:5 `photos/weld.jpg`, which holds something that is no picture',
    ]);
    expect(await problemsOf(notes, { 'photos/weld.jpg': '%PDF-1.4' })).toEqual([
      'notes/010-a.md:5 `photos/weld.jpg`, which holds a PDF',
    ]);
    expect(await problemsOf(notes, { 'photos/weld.jpg': pictureHead })).toEqual([]);
  });
});
