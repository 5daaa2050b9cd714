import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { readBuild } from '../../src/project/read.js';
import { buildFile, folderWith } from './scratch.js';

const note = '---\nkind: plain\ntitle: A note\n---\n\nWords.\n';
const shapes = new Map([['plain', {} as z.ZodRawShape]]);
const read = (files: Record<string, string>, change: (folder: string) => void = () => {}) => {
  const folder = folderWith({ 'build.md': buildFile, 'notes/010-a.md': note, ...files });
  change(folder);
  return readBuild(folder, shapes, folder);
};
const problemsOf = (files: Record<string, string>, change?: (folder: string) => void) =>
  read(files, change).problems.map((p) => `${p.file}: ${p.code}, ${p.found}`);

describe('what looks like a note, a query or limits and is not read is an error', () => {
  it.each([
    ['notes/020-b.MD', /ending/],
    ['notes/020-b.markdown', /ending/],
    ['queries/001-a.mkd', /ending/],
    ['notes/old/020-b.md', /notes\/old: file-unread, a folder with Markdown files/],
    ['notes/old/older/020-b.markdown', /folder with Markdown/],
    ['queries/more/001-a.md', /folder/],
    ['limits.yml', /`limits.yml`/],
    ['Limits.yaml', /`Limits.yaml`/],
    ['build.markdown', /`build.markdown`/],
  ])('%s', (path, says) => {
    expect(problemsOf({ [path]: note })).toEqual([expect.stringMatching(says)]);
  });
  it('a link to a note', () => {
    const problems = problemsOf({}, (folder) => symlinkSync(join(folder, 'build.md'), join(folder, 'notes/020-b.md')));
    expect(problems).toEqual([expect.stringContaining('a link, which is not followed')]);
  });
  it('where there is no other note, and where the folder itself is spelled otherwise', () => {
    const folder = folderWith({ 'build.md': buildFile, 'notes/010-a.MD': note });
    expect(readBuild(folder, shapes, folder).problems).toMatchObject([{ code: 'file-unread', file: 'notes/010-a.MD' }]);
    const other = folderWith({ 'build.md': buildFile, 'Notes/010-a.md': note });
    expect(readBuild(other, shapes, other).problems).toMatchObject([{ code: 'file-unread', file: 'Notes' }]);
  });
});

describe('other files that nothing names', () => {
  it('are listed', () => {
    const { build } = read(
      {
        'notes/photo.jpg': '',
        'notes/010-a.md~': note,
        'photos/one.jpg': 'x',
        'papers/letter.pdf': 'x',
        'notes/020-b.md': '---\nkind: plain\ntitle: A note\nphotos: [{ file: two.jpg, shows: Two }]\n---\n',
        'photos/two.jpg': 'x',
        'photos/deep/three.jpg': 'x',
      },
      (folder) => mkdirSync(join(folder, 'notes/empty')),
    );
    expect(build?.unread).toEqual([
      'notes/010-a.md~',
      'notes/empty/',
      'notes/photo.jpg',
      'papers/letter.pdf',
      'photos/deep/',
      'photos/one.jpg',
    ]);
  });
  it('are none where all is read, and hidden files are left alone', () => {
    expect(read({ 'notes/.010-a.md.swp': '', 'photos/.gitkeep': '' }).build?.unread).toEqual([]);
  });
});
