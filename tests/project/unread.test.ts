import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shapes } from '../../src/app/load.js';
import { readBuild } from '../../src/project/read.js';
import { unreadFiles } from '../../src/project/unread.js';
import { gusset } from '../commands/run.js';
import { buildFile, folderWith } from './scratch.js';

const note = '---\nkind: general\ntitle: Something\n---\n\nWords.\n';
const query = '---\nfrom: R. Ansell\ndate: 2026-03-01\nabout: 010-a\nquestion: Which?\nstate: open\n---\n';
const base = { 'b/build.md': buildFile, 'b/notes/010-a.md': note, 'b/photos/.gitkeep': '', 'b/papers/.gitkeep': '' };

const read = (folder: string) => readBuild(join(folder, 'b'), shapes, folder);
const look = (more: Record<string, string>, make: (folder: string) => void = () => {}) => {
  const folder = folderWith({ ...base, ...more });
  make(folder);
  return read(folder);
};

describe('what looks like something that was typed, and is not read, is an error', () => {
  it.each<[string, Record<string, string>, RegExp]>([
    ['a note in capitals', { 'b/notes/020-b.MD': note }, /`020-b\.md`/],
    ['another ending of Markdown', { 'b/notes/020-b.markdown': 'Only words.' }, /`020-b\.md`/],
    ['a note with an ending behind its own', { 'b/notes/020-b.md.txt': note }, /`020-b\.md`/],
    ['a note without an ending', { 'b/notes/020-b': note }, /md`/],
    ['a note in a folder', { 'b/notes/rear/020-b.md': note }, /move it into `notes\/` itself/],
    ['a note in a folder of a folder', { 'b/notes/rear/more/020-b.md': note }, /move it into `notes\/` itself/],
    ['a hidden note', { 'b/notes/.020-b.md': note }, /dot/],
    ['a note of another line end', { 'b/notes/020-b.text': note.replaceAll('\n', '\r\n') }, /md`/],
    ['a query in capitals', { 'b/queries/1.MD': query }, /`1\.md`/],
    ['a query in a folder', { 'b/queries/old/1.md': query }, /`queries\/` itself/],
    ['a query as text', { 'b/queries/1.txt': query }, /`1\.md`/],
    ['a note among the photos', { 'b/photos/020-b.md': note }, /move it into/],
    ['a note among the documents', { 'b/papers/020-b.txt': note }, /move it into/],
    ['a note beside build.md', { 'b/020-b.md': note }, /move it into `notes\/`/],
    ['limits.yml', { 'b/limits.yml': 'figures: []\n' }, /name it `limits\.yaml`/],
    ['Limits.yaml', { 'b/Limits.yaml': 'figures: []\n' }, /name it `limits\.yaml`/],
    ['limits.yml of the workshop', { 'limits.yml': 'figures: []\n' }, /name it `limits\.yaml`/],
    ['build.markdown', { 'b/build.markdown': buildFile }, /build\.md/],
    ['a folder called Notes', { 'b/Notes/020-b.md': note }, /name it `notes`/],
    ['a folder called query', { 'b/query/1.md': query }, /name it `queries`/],
  ])('%s', (_, more, hint) => {
    const { build, problems } = look(more);
    expect(build).toBeUndefined();
    expect(problems).toHaveLength(1);
    const [path = ''] = Object.keys(more);
    const folder = hint.source.includes('name it `notes`') || hint.source.includes('`queries`/');
    expect(problems[0]).toMatchObject({ code: 'file-unread', hint: expect.stringMatching(hint) });
    if (!folder && !/Notes|query\//.test(path)) expect(problems[0]!.file).toBe(path);
  });

  it.skipIf(process.platform === 'win32')('a link, also to a note of the build itself', () => {
    for (const [from, name] of [
      ['010-a.md', 'b/notes/020-b.md'],
      ['nowhere.md', 'b/notes/020-b.md'],
      ['../notes', 'b/queries/more'],
    ] as const) {
      const { problems } = look({ 'b/queries/.gitkeep': '' }, (folder) => symlinkSync(from, join(folder, name)));
      expect(problems).toMatchObject([{ code: 'file-unread', file: name, found: expect.stringContaining('a link') }]);
    }
    const { problems } = look({ 'elsewhere/1.md': query }, (folder) =>
      symlinkSync(join(folder, 'elsewhere'), join(folder, 'b/queries')),
    );
    expect(problems).toMatchObject([{ file: 'b/queries', found: expect.stringContaining('a link') }]);
  });

  it('where nothing else is there to be read', () => {
    const folder = folderWith({ 'b/build.md': buildFile, 'b/notes/010-a.MD': note });
    expect(read(folder).problems.map((p) => p.code)).toEqual(['build-empty', 'file-unread']);
  });
});

describe('what else is not read is said in a line', () => {
  it.each<[string, Record<string, string>, string[]]>([
    [
      'an earlier state that an editor kept',
      { 'b/notes/010-a.md~': note, 'b/notes/010-a.md.bak': note },
      ['notes/010-a.md.bak', 'notes/010-a.md~'],
    ],
    ['a picture among the notes', { 'b/notes/a.jpg': 'x' }, ['notes/a.jpg']],
    [
      'photos that no note names',
      { 'b/photos/a.jpg': 'x', 'b/photos/left/b.jpg': 'x' },
      ['photos/a.jpg', 'photos/left/b.jpg'],
    ],
    ['a document that no note names', { 'b/papers/a.pdf': 'x' }, ['papers/a.pdf']],
    ['text among the documents', { 'b/papers/a.txt': 'the kind: is not known' }, ['papers/a.txt']],
  ])('%s', (_, more, paths) => {
    const { build, problems } = look(more);
    expect(problems).toEqual([]);
    expect(build!.unread.map((u) => u.path).sort()).toEqual(paths);
  });

  it('with a count where they are many', async () => {
    const photos = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`b/photos/${10 + i}.jpg`, 'x']));
    const folder = folderWith({ ...base, ...photos, 'b/notes/010-a.md~': note });
    const { out, err } = await gusset('check', join(folder, 'b'), '--allow', 'all');
    expect(err).toBe('');
    expect(out).toContain('Not read, and not named by a note');
    expect(out).toContain('photos/: a file: 10.jpg, 11.jpg, 12.jpg and 9 more');
    expect(out).toContain('notes/: an earlier state: 010-a.md~');
    const json = await gusset('check', join(folder, 'b'), '--allow', 'all', '--format', 'json');
    expect(JSON.parse(json.out).unread).toHaveLength(13);
    expect((await gusset('check', join(folder, 'b'), '--allow', 'all', '--format', 'sarif')).out).toContain(
      'file-unread',
    );
  });

  it('and not what systems, git and an open editor keep there, or what a note names', () => {
    const { build, problems } = look({
      'b/notes/.010-a.md.swp': 'x',
      'b/notes/.DS_Store': '',
      'b/photos/Thumbs.db': '',
      'b/photos/._a.jpg': '',
      'b/queries/.gitignore': '',
      'b/photos/left/a.jpg': 'x',
      'b/papers/letter.md': note,
      'b/notes/020-b.md':
        '---\nkind: general\ntitle: Other\nphotos: [{ file: left/a.jpg, shows: all of it }]\npapers: [{ file: letter.md, shows: all of it }]\n---\n',
      'b/sketches/a.svg': 'x',
      'b/README.md': '# About this car',
    });
    expect(problems).toEqual([]);
    expect(build!.unread).toEqual([]);
  });
});

// Law: of whatever lies in the four folders nothing is passed over: it is read, an error, a line, or of a system.
it('passes nothing over', () => {
  const name = fc.constantFrom('a', '020', '.x', 'b c', '_', 'ü');
  const ending = fc.constantFrom('.md', '.MD', '.markdown', '', '.txt', '.jpg', '.md~', '.yml', '.md.txt', '.PDF');
  const folder = fc.constantFrom('notes', 'queries', 'photos', 'papers', 'notes/x', 'photos/x/y');
  const content = fc.constantFrom(note, query, 'words', '', '---\n');
  fc.assert(
    fc.property(fc.array(fc.tuple(folder, name, ending, content), { minLength: 1, maxLength: 6 }), (entries) => {
      const at = folderWith({});
      for (const [where, stem, end, text] of entries) {
        mkdirSync(join(at, where), { recursive: true });
        writeFileSync(join(at, where, stem + end), text);
      }
      const isRead = (path: string) => /^(?:notes|queries)\/[^./][^/]*\.md$/.test(path);
      const all = (readdirSync(at, { recursive: true, withFileTypes: true }) as import('node:fs').Dirent[])
        .filter((e) => e.isFile())
        .map((e) => join(e.parentPath, e.name).slice(at.length + 1));
      const { problems, unread } = unreadFiles(at, new Set(all.filter(isRead)), (path) => path);
      const said = new Set([...problems.map((p) => p.file), ...unread.map((u) => u.path)]);
      for (const path of all) expect([path, said.has(path)]).toEqual([path, !isRead(path)]);
      for (const { path } of unread) {
        const typed = /^(?:notes|queries)\/(?:.*\/)?[^./][^/]*\.(?:md|markdown)$/i.test(path);
        expect([path, typed]).toEqual([path, false]);
        if (!/\.(?:jpg|pdf|md~)$/i.test(path))
          expect([note, query]).not.toContain(readFileSync(join(at, path), 'utf8'));
      }
    }),
    { numRuns: 200 },
  );
});
