import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { load } from '../../src/app/load.js';
import { activePapers } from '../../src/app/publish/document-papers.js';
import { viewState } from '../../src/app/view-state.js';
import { gusset } from '../commands/run.js';
import { running } from '../commands/running.js';
import { buildFile, emptyPdf } from '../history/invented.js';
import { folderWith } from '../project/scratch.js';

/** How often PDF was looked into, and whether what reads it was loaded at all. */
const looks = vi.hoisted(() => ({ count: 0, loaded: false }));
vi.mock(import('../../src/print/active-pdf.js'), async (original) => {
  const { activeContent } = await original();
  looks.loaded = true;
  return { activeContent: async (bytes: Uint8Array) => ((looks.count += 1), activeContent(bytes)) };
});

const note =
  '---\nkind: general\ntitle: Roof\npapers:\n  - { file: letter.txt, shows: the letter }\n  - { file: a.pdf, shows: the receipt }\n  - { file: b.pdf, shows: the certificate }\n---\n';
const folder = (paper: string | Uint8Array) =>
  folderWith({
    'build.md': buildFile,
    'notes/010-roof.md': note,
    'papers/letter.txt': 'Yes.',
    'papers/a.pdf': emptyPdf,
    'papers/b.pdf': paper,
  });
async function scripted(): Promise<Uint8Array> {
  const made = await PDFDocument.create();
  made.addPage([200, 100]);
  made.catalog.set(PDFName.of('OpenAction'), made.context.obj({ S: 'JavaScript', JS: PDFString.of('app.alert(1)') }));
  return made.save();
}

let cache = '';
beforeEach(() => {
  cache = folderWith({});
  vi.stubEnv('GUSSET_CACHE', cache);
  looks.count = 0;
});

describe('a check', () => {
  it('loads nothing that reads PDF where no note names one', async () => {
    const build = folderWith({
      'build.md': buildFile,
      'notes/010-roof.md': note.replace(/.*\.pdf.*\n/g, ''),
      'papers/letter.txt': 'Yes.',
    });
    expect((await gusset('check', build, '--allow', 'all')).code).toBe(0);
    expect(looks).toEqual({ count: 0, loaded: false });
  });

  it('refuses a paper that does more than show, where the note names it', async () => {
    const build = folder(await scripted());
    const { code, err } = await gusset('check', build, '--allow', 'all');
    expect(code).toBe(2);
    expect(err).toMatch(
      /notes\/010-roof\.md:7:13: found `papers\/b\.pdf`, which runs a script, expected a PDF that only shows its pages\n.*\n.*\^{5}\n {4}hint: print it to a new PDF[^]*1 problem\(s\) keep/,
    );
    const { code: ofJson, out } = await gusset('check', build, '--format', 'json');
    expect([ofJson, JSON.parse(out)]).toMatchObject([
      2,
      { form: 'gusset-problems/2', problems: [{ code: 'paper-refused', line: 7, column: 13 }] },
    ]);
  });

  it('looks into the same content once, wherever it lies', async () => {
    const build = folder(await scripted());
    for (const place of [build, build, folder(await scripted())])
      expect((await gusset('check', place)).err).toContain('runs a script');
    expect(looks.count).toBe(2);
    writeFileSync(join(build, 'papers/b.pdf'), emptyPdf);
    expect((await gusset('check', build, '--allow', 'all')).code).toBe(0);
    expect(looks.count).toBe(2);
    writeFileSync(join(build, 'papers/b.pdf'), emptyPdf.replace('        >>', '/AA<<>> >>'));
    expect((await gusset('check', build)).err).toContain('`papers/b.pdf`, which does something when it is opened');
  });

  it.each(['', '{', 'null', '1', '[]', '{}', '{"does":1}', '{"did":null}'])(
    'does not believe `%s` where a verdict was kept',
    async (text) => {
      const build = folder(await scripted());
      await gusset('check', build);
      const papers = join(cache, 'papers');
      const verdicts = () => readdirSync(papers).filter((name) => name.endsWith('.json'));
      expect(verdicts()).toHaveLength(2);
      for (const name of verdicts()) writeFileSync(join(papers, name), text);
      expect((await gusset('check', build)).err).toContain('runs a script');
      for (const name of verdicts())
        expect(['{"does":null}', '{"does":"runs a script"}']).toContain(readFileSync(join(papers, name), 'utf8'));
    },
  );

  it('goes on where nothing can be kept', async () => {
    vi.stubEnv('GUSSET_CACHE', join(folderWith({ file: '' }), 'file'));
    const build = folder(emptyPdf);
    for (const _ of [1, 2]) expect(await gusset('check', build, '--allow', 'all')).toMatchObject({ code: 0, err: '' });
    expect(looks.count).toBe(4);
  });

  it('that watches says so when a paper is put in its place, and when it is mended', { timeout: 60_000 }, async () => {
    const build = folder(emptyPdf);
    const command = running('check', build, '--watch');
    await command.said(/Ctrl-C ends it/);
    writeFileSync(join(build, 'papers/b.pdf'), await scripted());
    await command.said(/b\.pdf`, which runs a script[^]*1 problem\(s\) keep/);
    writeFileSync(join(build, 'papers/b.pdf'), emptyPdf);
    await command.said(/The notes can be read again/);
  });
});

it('a preview says so', async () => {
  const state = viewState(folder(await scripted()), 'submission', () => {});
  await state.look([]);
  expect(state.shown().problems).toMatchObject([{ code: 'paper-refused', line: 7 }]);
});

it('a paper that was taken away or cannot be read is told as such', async () => {
  const directory = folder(emptyPdf);
  const loaded = await load(directory);
  if (!('build' in loaded)) throw new Error('not read');
  rmSync(join(directory, 'papers/b.pdf'));
  expect(await activePapers(loaded.build)).toMatchObject([
    {
      code: 'file-unreadable',
      line: 7,
      found: expect.stringMatching(/^`papers\/b\.pdf`, which cannot be read \(ENOENT/),
    },
  ]);
  mkdirSync(join(directory, 'papers/b.pdf'));
  expect(await activePapers(loaded.build)).toMatchObject([
    { code: 'file-unreadable', found: expect.stringContaining('EISDIR') },
  ]);
});
