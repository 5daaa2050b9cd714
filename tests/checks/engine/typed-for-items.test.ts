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
const own = (raisedBy: string) =>
  `items:\n  - { id: own.gap, title: Gap, section: own, asks: A gap of at least 10 mm., kind: limit, unit: mm, raised-by: [${raisedBy}], rests: { document: Own rules, edition: '1', clause: '1', basis: own-copy, read-by: JO, on: 2026-01-01 }, cases: [{ min: 10 mm }] }\n`;

describe('a value under `measured:`', () => {
  it('is judged in each note that has one, so that the worst governs', async () => {
    const loaded = await read(
      {
        '010-a': note('general', 'measured: { own.gap: 12 ± 0.1 mm }'),
        '020-b': note('general', 'measured: { own.gap: 2 ± 0.1 mm }'),
      },
      { 'limits.yaml': own('general') },
    );
    if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
    expect(loaded.evaluation.findings.filter((f) => f.item === 'own.gap').map((f) => [f.note, f.outcome])).toEqual([
      ['010-a', 'conforms'],
      ['020-b', 'does-not-conform'],
    ]);
  });
  it('is an error for an item that its note does not raise', async () => {
    expect(
      await problemsOf({ '010-a': note('general', 'measured: { own.gap: 12 mm }') }, { 'limits.yaml': own('exhaust') }),
    ).toEqual(['notes/010-a.md:4 a value measured for `own.gap`, which is not asked of this note']);
  });
  it('is an error for an item that asks for no value', async () => {
    expect(await problemsOf({ '010-a': note('exhaust', 'measured: { engine.brakes: 12 mm }') })).toEqual([
      'notes/010-a.md:4 a value measured for `engine.brakes`, which asks for no value',
    ]);
  });
  it('is an error for an item that its kind measures in a field of its own', async () => {
    const [problem] = await problemsOf({
      '010-a': note('exhaust', 'outlet: { height: 700 mm }\nmeasured: { exhaust.outlet-height: 400 mm }'),
    });
    expect(problem).toMatch(/exhaust|outlet/);
  });
});

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
