import { existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { realFolder, refuseToReplace } from '../../src/platform/own-output.js';
import { UsageError } from '../../src/platform/usage.js';
import { writeFolderWhole } from '../../src/platform/whole.js';
import { scratch } from '../print/fixtures.js';
import { written } from './written.js';

let at: string;
beforeEach(() => {
  const before = process.cwd();
  at = realpathSync(scratch());
  mkdirSync(join(at, 'work/build'), { recursive: true });
  process.chdir(join(at, 'work'));
  onTestFinished(() => process.chdir(before));
});
const build = () => join(at, 'work/build');
const put = (target: string) =>
  writeFolderWhole(target, async (folder) => written(folder, { 'a.pdf': 'new' }), [build()]);
/** Everything that lies anywhere, with what it holds. */
const all = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true }).map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [
        relative(folder, path),
        entry.isFile() ? readFileSync(path, 'utf8') : entry.isDirectory() ? 'folder' : 'link',
      ];
    }),
  );

describe('a folder may be replaced', () => {
  it.each<[string, () => void]>([
    ['is not there', () => {}],
    ['is empty', () => mkdirSync('out')],
    ['holds an earlier output', () => written('out', { 'a.pdf': 'old', 'b.html': 'b' })],
    [
      'lost a file of it',
      () => {
        written('out', { 'a.pdf': 'old' });
        writeFileSync(
          'out/manifest.json',
          readFileSync('out/manifest.json', 'utf8').replace('[{', '[{"path":"gone","sha256":"0"},{'),
        );
      },
    ],
    [
      'was looked at by a file manager',
      () => {
        written('out', { 'a.pdf': 'old' });
        for (const name of ['.DS_Store', 'Thumbs.db', 'desktop.ini']) writeFileSync(join('out', name), '');
      },
    ],
  ])('that %s', async (_, make) => {
    make();
    await put('out');
    expect(readdirSync('out').sort()).toEqual(['a.pdf', 'manifest.json']);
    expect(readFileSync('out/a.pdf', 'utf8')).toBe('new');
  });

  it('through a link to it, which stays', async () => {
    mkdirSync('elsewhere');
    symlinkSync('elsewhere', 'out');
    await put('out');
    expect(all(process.cwd())).toMatchObject({ out: 'link', 'elsewhere/a.pdf': 'new' });
  });
});

describe('nothing is replaced or lost', () => {
  it.each<[string, () => void, string | RegExp]>([
    [
      'a file beside the output',
      () => writeFileSync('out/notes.txt', 'mine'),
      /notes\.txt, which Gusset did not write/,
    ],
    ['a file that was written in', () => writeFileSync('out/a.pdf', 'with remarks'), /a\.pdf, which was changed/],
    ['a hidden file', () => writeFileSync('out/.keep', ''), /\.keep, which Gusset did not write/],
    ['a folder', () => mkdirSync('out/mine'), /the folder mine/],
    ['a repository', () => mkdirSync('out/.git'), /a git repository/],
    ['a link with the name of an output', () => symlinkSync('a.pdf', 'out/b.html'), /the link b\.html/],
    [
      'another manifest',
      () => writeFileSync('out/manifest.json', '{"name": "web app", "icons": []}'),
      /no manifest\.json of Gusset/,
    ],
    ['no manifest', () => writeFileSync('out/manifest.json', 'x'), /no manifest\.json of Gusset/],
  ])('where a folder has %s', async (_, make, says) => {
    written('out', { 'a.pdf': 'old' });
    make();
    const before = all(at);
    let begun = false;
    const refused = writeFolderWhole('out', async () => void (begun = true));
    await expect(refused).rejects.toBeInstanceOf(UsageError);
    await expect(put('out')).rejects.toThrow(says);
    expect([begun, all(at)]).toEqual([false, before]);
  });

  it.each<[string, string, string]>([
    ['the working folder', '.', 'working folder'],
    ['a folder above it', '..', 'working folder'],
    ['the build', 'build', 'build'],
    ['the root', '/', 'working folder'],
    ['a way through others', 'build/../../work', 'working folder'],
    ['a link to the build', 'link', 'build'],
    ['a link to the folder above', 'up', 'working folder'],
  ])('where it is %s, empty though it be', async (_, target, says) => {
    symlinkSync('build', 'link');
    symlinkSync('..', 'up');
    const before = all(at);
    await expect(put(target)).rejects.toThrow(says);
    expect(all(at)).toEqual(before);
  });

  it('where the working folder is an earlier output itself', async () => {
    written(join(at, 'out'), { 'a.pdf': 'old' });
    process.chdir(join(at, 'out'));
    await expect(put('.')).rejects.toThrow('the working folder');
    expect(readFileSync('a.pdf', 'utf8')).toBe('old');
  });

  it('where the name is that of a file, or of a link that leads nowhere', async () => {
    writeFileSync('file', 'mine');
    symlinkSync('nowhere', 'dangling');
    symlinkSync('round', 'round');
    for (const name of ['file', 'dangling', 'dangling/out', 'round', 'round/out'])
      await expect(put(name)).rejects.toBeInstanceOf(UsageError);
    expect(existsSync('nowhere')).toBe(false);
    expect(readFileSync('file', 'utf8')).toBe('mine');
  });

  it('where something came into it while the output was made', async () => {
    written('out', { 'a.pdf': 'old' });
    const made = writeFolderWhole('out', async (folder) => {
      written(folder, { 'a.pdf': 'new' });
      writeFileSync('out/mine.txt', 'mine');
    });
    await expect(made).rejects.toThrow('mine.txt');
    expect(all(join(at, 'work/out'))).toMatchObject({ 'a.pdf': 'old', 'mine.txt': 'mine' });
    expect(readdirSync('.').sort()).toEqual(['build', 'out']);
  });
});

// Law: whatever lies about, and whatever way the target is named, no file goes but those an output listed as they are.
it('loses no file of others, whatever lies there and however the folder is named', async () => {
  const name = fc.constantFrom('a.pdf', 'b.html', 'manifest.json', '.git', 'notes', 'x');
  const content = fc.constantFrom('old', 'mine', '');
  const tree = fc.array(fc.tuple(fc.array(name, { minLength: 1, maxLength: 3 }), content), { maxLength: 6 });
  const way = fc.array(fc.constantFrom('..', '.', 'out', 'work', 'link', 'notes'), { maxLength: 4 });
  let [done, refused] = [0, 0];
  await fc.assert(
    fc.asyncProperty(tree, fc.boolean(), way, async (files, isOutput, steps) => {
      const root = join(at, `${done + refused}-${Math.random()}`);
      mkdirSync(join(root, 'work/build'), { recursive: true });
      writeFileSync(join(root, 'work/build/build.md'), 'the build');
      if (isOutput) written(join(root, 'work/out'), { 'a.pdf': 'old', 'b.html': 'old' });
      for (const [path, text] of files) {
        const file = join(root, 'work/out', ...path);
        try {
          mkdirSync(dirname(file), { recursive: true });
          writeFileSync(file, text);
        } catch {
          // A file lies where a folder would have to be.
        }
      }
      symlinkSync('out', join(root, 'work/link'));
      process.chdir(join(root, 'work'));
      const before = all(root);
      const target = steps.join('/') || '.';
      try {
        await writeFolderWhole(target, async (folder) => written(folder, { 'c.pdf': 'new' }), [
          join(root, 'work/build'),
        ]);
        done++;
        const after = all(root);
        const gone = Object.keys(before).filter((path) => after[path] !== before[path] && before[path] !== 'folder');
        const replaced = relative(root, realFolder(target));
        for (const path of gone) {
          expect(isOutput && dirname(path) === replaced).toBe(true);
          expect(['old', before[join(replaced, 'manifest.json')]]).toContain(before[path]);
        }
      } catch (error) {
        if (!(error instanceof UsageError)) throw error;
        refused++;
        expect(all(root)).toEqual(before);
      }
      process.chdir(at);
    }),
    { numRuns: 300 },
  );
  expect(Math.min(done, refused)).toBeGreaterThan(20);
});

it('looks without changing anything', () => {
  written('out', { 'a.pdf': 'old' });
  expect(() => refuseToReplace('out', [build()])).not.toThrow();
  expect(() => refuseToReplace('nowhere')).not.toThrow();
  expect(all(join(at, 'work/out'))).toHaveProperty(['a.pdf'], 'old');
});
