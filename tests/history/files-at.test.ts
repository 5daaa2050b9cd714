import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Blob, readBlobs } from '../../src/history/git/blobs.js';
import { commitDate, headCommit, resolveCommit } from '../../src/history/git/commits.js';
import { extractAt, unsafePath } from '../../src/history/git/extract.js';
import { fileAt, treeAt } from '../../src/history/git/tree.js';
import { configure, mika, type Throwaway, temporary, throwaway } from './throwaway.js';

const names = [
  'build.md',
  'notes/010 a.md',
  'notes/line\nend.md',
  'notes/-rf.md',
  'photos/Träger.jpg',
  '*[a].md',
  ':(top).md',
];
const bytes = Buffer.from(Array.from({ length: 70_000 }, (_, index) => (index * 7919) % 256));

function build(): { repo: Throwaway; commit: string } {
  const repo = throwaway();
  for (const name of names) repo.write(`builds/demo/${name}`, Buffer.concat([Buffer.from(name), bytes]));
  repo.write('builds/demo/empty.csv', '');
  repo.write('builds/demonstration/x.md', 'another build');
  return { repo, commit: repo.commit('All', mika) };
}
async function all(blobs: AsyncIterable<Blob>): Promise<Blob[]> {
  const read: Blob[] = [];
  for await (const blob of blobs) read.push(blob);
  return read;
}

/** One for all tests that only read. */
const shared = build();

describe('commits', () => {
  it('gives head and date, and nothing where there is none', async () => {
    const { repo, commit } = shared;
    const found = repo.place;
    expect(await headCommit(found)).toBe(commit);
    expect(await commitDate(found, commit)).toBe('2026-02-03T09:00:00+00:00');
    expect(await resolveCommit(found, commit.slice(0, 8))).toBe(commit);
    expect(await resolveCommit(found, 'nowhere')).toBeUndefined();
    expect(await resolveCommit(found, '--help')).toBeUndefined();
    expect(await headCommit(throwaway().place)).toBeUndefined();
    await expect(commitDate(found, '0'.repeat(40))).rejects.toThrow('bad object');
    await expect(commitDate(found, 'HEAD')).rejects.toThrow('full git object id');
  });
});

describe('readBlobs', () => {
  it('reads in the order asked, binary, empty, twice the same and missing', async () => {
    const { repo } = shared;
    const found = repo.place;
    const [binary = '', empty = '', tree = ''] = repo
      .git('rev-parse', ...['build.md', 'empty.csv', 'notes'].map((path) => `HEAD:builds/demo/${path}`))
      .split('\n');
    const gone = 'f'.repeat(40);
    const read = await all(readBlobs(found, [binary, empty, gone, tree, binary]));
    expect(read).toEqual([
      { id: binary, state: 'read', size: bytes.length + 8, data: Buffer.concat([Buffer.from('build.md'), bytes]) },
      { id: empty, state: 'read', size: 0, data: Buffer.alloc(0) },
      { id: gone, state: 'missing' },
      { id: tree, state: 'missing' },
      read[0],
    ]);
    expect(await all(readBlobs(found, [binary, empty], { maxBytes: bytes.length + 7 }))).toMatchObject([
      { state: 'too-large' },
      { state: 'read' },
    ]);
    expect(await all(readBlobs(found, [binary], { maxBytes: bytes.length + 8 }))).toMatchObject([{ state: 'read' }]);
    expect(await all(readBlobs(found, []))).toEqual([]);
    await expect(all(readBlobs(found, ['HEAD:builds']))).rejects.toThrow('full git object id');
  });

  it('ends its process when the reader leaves early', async () => {
    const { repo } = shared;
    const found = repo.place;
    const id = repo.git('rev-parse', 'HEAD:builds/demo/build.md');
    const many = Array.from({ length: 500 }, () => id);
    function children(): string {
      return execFileSync('ps', ['-o', 'args=', '--ppid', String(process.pid)], { encoding: 'utf8' });
    }
    for await (const blob of readBlobs(found, many)) {
      expect(blob.state).toBe('read');
      expect(children()).toContain('cat-file');
      break;
    }
    expect(children()).not.toContain('cat-file');
  });
});

describe('treeAt and fileAt', () => {
  it('lists the files of one folder by path relative to it', async () => {
    const { repo, commit } = shared;
    const tree = await treeAt(repo.place, commit, 'builds/demo');
    expect([...tree.keys()].sort()).toEqual([...names, 'empty.csv'].sort());
    expect(tree.get('empty.csv')).toEqual({
      kind: 'file',
      blob: repo.git('hash-object', '-t', 'blob', '/dev/null'),
    });
    expect((await treeAt(repo.place, commit, 'builds/nothing')).size).toBe(0);
    expect((await treeAt(repo.place, commit, '')).size).toBe(names.length + 2);
  });

  it('reads one file as it was, and nothing where there was none', async () => {
    const { repo, commit } = shared;
    const found = repo.place;
    for (const name of names.slice(1, 3)) {
      repo.write(`builds/demo/${name}`, 'changed since');
      expect(await fileAt(found, commit, `builds/demo/${name}`)).toEqual(Buffer.concat([Buffer.from(name), bytes]));
    }
    expect(await fileAt(found, commit, 'builds/demo/notes')).toBeUndefined();
    expect(await fileAt(found, commit, '../x')).toBeUndefined();
    expect(await fileAt(found, commit, `${repo.dir}/builds/demo/build.md`)).toBeUndefined();
  });
});

describe('extractAt', () => {
  it('writes what was committed, byte for byte, whatever the settings for line ends', async () => {
    const { repo, commit } = build();
    configure(repo.dir, '[core]\nautocrlf = true\n');
    const target = join(temporary(), 'new', 'place');
    const { written, refused } = await extractAt(repo.place, commit, 'builds/demo', target);
    expect([written, refused]).toEqual([[...names, 'empty.csv'].sort(), []]);
    for (const name of names)
      expect(readFileSync(join(target, name)).equals(Buffer.concat([Buffer.from(name), bytes]))).toBe(true);
    await expect(extractAt(repo.place, commit, 'builds/demo', target)).rejects.toThrow('not empty');
  });

  it('takes contents that lie elsewhere from there, and from git where they are gone', async () => {
    const { repo, commit } = build();
    const tree = await treeAt(repo.place, commit, 'builds/demo');
    const elsewhere = join(temporary(), 'copy');
    writeFileSync(elsewhere, Buffer.concat([Buffer.from('build.md'), bytes]));
    const other = names.find((name) => name !== 'build.md') ?? '';
    const have = new Map([
      [tree.get('build.md')?.blob ?? '', elsewhere],
      [tree.get(other)?.blob ?? '', `${elsewhere}-gone`],
    ]);
    const target = join(temporary(), 'place');
    const { written, refused } = await extractAt(repo.place, commit, 'builds/demo', target, have);
    expect([written, refused]).toEqual([[...names, 'empty.csv'].sort(), []]);
    for (const name of names)
      expect(readFileSync(join(target, name)).equals(Buffer.concat([Buffer.from(name), bytes]))).toBe(true);
    expect(statSync(join(target, 'build.md')).ino).toBe(statSync(elsewhere).ino);
  });

  it('refuses links and nested repositories and writes nothing through them', async () => {
    const { repo } = build();
    const outside = temporary();
    symlinkSync(outside, join(repo.dir, 'builds/demo/link'));
    const commit = repo.commit('A link');
    repo.git('update-index', '--add', '--cacheinfo', `160000,${commit},builds/demo/nested`);
    const tree = repo.git('write-tree');
    const made = repo.git('commit-tree', tree, '-m', 'Nested');
    const target = temporary();
    const { refused } = await extractAt(repo.place, made, 'builds/demo', target);
    expect(refused).toEqual([
      { path: 'link', reason: 'a symbolic link' },
      { path: 'nested', reason: 'a repository of its own' },
    ]);
    expect(existsSync(join(target, 'link'))).toBe(false);
  });

  it('refuses paths that lead out, which only a made-up tree can hold', async () => {
    const repo = throwaway();
    const blob = repo.git('hash-object', '-w', '/dev/null');
    const entry = (mode: string, name: string, id: string): Buffer =>
      Buffer.concat([Buffer.from(`${mode} ${name}\0`), Buffer.from(id, 'hex')]);
    const object = (content: Buffer): string => {
      writeFileSync(join(repo.dir, 'object'), content);
      return repo.git('hash-object', '-w', '-t', 'tree', '--literally', 'object');
    };
    const inner = object(entry('100644', 'escaped.md', blob));
    const tree = object(
      Buffer.concat([entry('40000', '..', inner), entry('40000', '.GIT', inner), entry('100644', 'fine.md', blob)]),
    );
    const commit = repo.git('commit-tree', tree, '-m', 'Made up');
    const target = join(temporary(), 'inside');
    const { written, refused } = await extractAt(repo.place, commit, '', target);
    expect(written).toEqual(['fine.md']);
    expect(refused.map(({ path }) => path)).toEqual(['../escaped.md', '.GIT/escaped.md']);
    expect(readdirSync(join(target, '..'))).toEqual(['inside']);
  });

  it('knows an unsafe path', () => {
    for (const path of ['../a', 'a/../../b', '/etc/x', 'a//b', './a', '.git/config', 'a/.Git./x', 'a\ufffd'])
      expect(unsafePath(path, '/t')).toBeDefined();
    for (const path of ['a', 'a/b..c', '.gitignore', '..a/b', '-rf']) expect(unsafePath(path, '/t')).toBeUndefined();
  });
});
