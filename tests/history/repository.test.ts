import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { openRepository } from '../../src/history/git/repository.js';
import { configure, history, temporary, throwaway } from './throwaway.js';

function withNote(): ReturnType<typeof throwaway> {
  const repo = throwaway();
  history(repo, [{ parents: [], files: { 'builds/demo/notes/010.md': 'one\n' } }]);
  mkdirSync(join(repo.dir, 'builds/demo'), { recursive: true });
  return repo;
}

describe('openRepository', () => {
  it('finds the root and the folder below it', async () => {
    const repo = withNote();
    expect(await openRepository(join(repo.dir, 'builds/demo'))).toEqual({
      kind: 'repository',
      root: repo.dir,
      prefix: 'builds/demo',
      branch: 'main',
      objectFormat: 'sha1',
      bare: false,
      shallow: false,
      detached: false,
      empty: false,
      partial: false,
      ignored: false,
      limits: [],
    });
    expect(await repo.open()).toMatchObject({ root: repo.dir, prefix: '' });
  });

  it('is not misled by the variables that git sets for its hooks', async () => {
    const repo = withNote();
    process.env.GIT_DIR = '/nowhere';
    expect(await repo.open()).toMatchObject({ root: repo.dir });
  });
  afterEach(() => {
    delete process.env.GIT_DIR;
  });

  it('says why there is none: outside git, no folder, no git', async () => {
    const outside = temporary();
    expect(await openRepository(outside)).toMatchObject({
      kind: 'none',
      reason: expect.stringContaining('in no git repository'),
    });
    expect(await openRepository(join(outside, 'nothing'))).toMatchObject({
      kind: 'none',
      reason: expect.stringContaining('no folder'),
    });
    const path = process.env.PATH;
    process.env.PATH = outside;
    const without = await openRepository(outside).finally(() => {
      process.env.PATH = path;
    });
    expect(without).toMatchObject({ kind: 'none', reason: expect.stringContaining('Install git') });
    expect(await openRepository(join(withNote().dir, '.git'))).toMatchObject({
      kind: 'none',
      reason: expect.stringContaining("git's own folder"),
    });
  });

  it('says what an empty repository cannot tell', async () => {
    expect(await throwaway().open()).toMatchObject({
      empty: true,
      detached: false,
      branch: 'main',
      limits: [expect.stringContaining('Nothing is committed yet')],
    });
  });

  it('says what a detached head means', async () => {
    const repo = withNote();
    repo.git('checkout', '--quiet', '--detach');
    expect(await repo.open()).toMatchObject({
      detached: true,
      branch: undefined,
      limits: [expect.stringContaining('not a branch')],
    });
  });

  it('says what a shallow clone cannot tell', async () => {
    const repo = withNote();
    repo.commit('Second');
    const clone = throwaway(temporary(), false);
    clone.git('clone', '--quiet', '--depth=1', `file://${repo.dir}`, 'clone');
    expect(await clone.open('clone')).toMatchObject({ shallow: true, limits: [expect.stringContaining('cut off')] });
  });

  it('says what a partial clone and a bare repository cannot tell', async () => {
    const repo = withNote();
    configure(repo.dir, '[uploadpack]\nallowFilter = true\n');
    const clone = throwaway(temporary(), false);
    clone.git('clone', '--quiet', '--filter=blob:none', `file://${repo.dir}`, 'partial');
    clone.git('clone', '--quiet', '--bare', repo.dir, 'bare');
    expect(await clone.open('partial')).toMatchObject({
      partial: true,
      limits: [expect.stringContaining('at its origin')],
    });
    expect(await clone.open('bare')).toMatchObject({
      bare: true,
      root: join(clone.dir, 'bare'),
      prefix: '',
      limits: [expect.stringContaining('no working tree')],
    });
  });

  it('opens a further working tree', async () => {
    const repo = withNote();
    const tree = join(temporary(), 'second tree');
    repo.git('worktree', 'add', '--quiet', tree, '-b', 'second');
    expect(await openRepository(join(tree, 'builds'))).toMatchObject({
      root: tree,
      prefix: 'builds',
      branch: 'second',
      limits: [],
    });
  });

  it('says that git does not record an ignored folder', async () => {
    const repo = withNote();
    repo.write('.gitignore', 'out/\n');
    mkdirSync(join(repo.dir, 'out'));
    expect(await repo.open('out')).toMatchObject({ ignored: true, limits: [expect.stringContaining('.gitignore')] });
  });

  it('opens folders whose names would be options or patterns', async () => {
    const repo = withNote();
    for (const name of ['--help', ' a*[b] Größe', 'line\nend\n']) {
      mkdirSync(join(repo.dir, name));
      expect(await repo.open(name)).toMatchObject({ prefix: name, ignored: false });
    }
  });
});
