import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isClean } from '../../src/history/git/clean.js';
import { configure, throwaway } from './throwaway.js';

function build(): ReturnType<typeof throwaway> {
  const repo = throwaway();
  for (const name of ['010.md', '020.md', '030 two.md']) repo.write(`builds/demo/notes/${name}`, `${name}\n`);
  repo.write('builds/other/build.md', 'other\n');
  repo.write('.gitignore', '*.tmp\n');
  repo.commit('Notes');
  return repo;
}
const check = async (repo: ReturnType<typeof throwaway>, folder = 'builds/demo') => isClean(repo.place, folder);

describe('isClean', () => {
  it('is clean after a commit, with changes in another build, and with ignored files, which it lists', async () => {
    const repo = build();
    expect(await check(repo)).toEqual({ clean: true, dirty: [], ignored: [] });
    repo.write('builds/other/build.md', 'changed\n');
    repo.write('builds/demo/notes/x.tmp', 'scratch\n');
    expect(await check(repo)).toEqual({ clean: true, dirty: [], ignored: ['builds/demo/notes/x.tmp'] });
    expect(await check(repo, '')).toMatchObject({
      clean: false,
      dirty: [{ path: 'builds/other/build.md', state: 'changed' }],
    });
  });

  it('names each file that differs, and how', async () => {
    const repo = build();
    repo.write('builds/demo/notes/010.md', 'changed\n');
    rmSync(join(repo.dir, 'builds/demo/notes/020.md'));
    repo.write('builds/demo/notes/-é \n.md', 'new\n');
    repo.write('builds/demo/staged file.md', 'new\n');
    repo.git('add', 'builds/demo/staged file.md');
    expect(await check(repo)).toMatchObject({
      clean: false,
      dirty: [
        { path: 'builds/demo/notes/-é \n.md', state: 'untracked' },
        { path: 'builds/demo/notes/010.md', state: 'changed' },
        { path: 'builds/demo/notes/020.md', state: 'deleted' },
        { path: 'builds/demo/staged file.md', state: 'added' },
      ],
    });
  });

  it('names both ends of a staged rename', async () => {
    const repo = build();
    repo.git('mv', 'builds/demo/notes/030 two.md', 'builds/demo/notes/040.md');
    expect((await check(repo)).dirty).toEqual([
      { path: 'builds/demo/notes/030 two.md', state: 'deleted' },
      { path: 'builds/demo/notes/040.md', state: 'added' },
    ]);
  });

  it('names a conflict', async () => {
    const repo = build();
    repo.git('checkout', '--quiet', '-b', 'side');
    repo.write('builds/demo/notes/030 two.md', 'side\n');
    repo.commit('Side');
    repo.git('checkout', '--quiet', 'main');
    repo.write('builds/demo/notes/030 two.md', 'main\n');
    repo.commit('Main');
    expect(() => repo.git('merge', 'side')).toThrow();
    expect((await check(repo)).dirty).toEqual([{ path: 'builds/demo/notes/030 two.md', state: 'conflict' }]);
  });

  it('does not take for clean what git was told not to watch', async () => {
    const repo = build();
    repo.git('update-index', '--assume-unchanged', 'builds/demo/notes/010.md');
    repo.git('update-index', '--skip-worktree', 'builds/demo/notes/020.md');
    repo.write('builds/demo/notes/010.md', 'changed in secret\n');
    expect((await check(repo)).dirty.map(({ state }) => state)).toEqual(['unwatched', 'unwatched']);
  });

  it('is not clean where nothing is committed', async () => {
    const repo = build();
    repo.write('builds/new/x.tmp', 'ignored\n');
    expect(await check(repo, 'builds/new')).toEqual({
      clean: false,
      dirty: [{ path: 'builds/new', state: 'nothing committed' }],
      ignored: ['builds/new/x.tmp'],
    });
    expect((await check(throwaway(), '')).clean).toBe(false);
  });

  it('takes a checkout with CRLF line ends for what was committed', async () => {
    const repo = build();
    configure(repo.dir, '[core]\nautocrlf = true\n');
    rmSync(join(repo.dir, 'builds/demo/notes/010.md'));
    repo.git('checkout', '--', 'builds/demo/notes/010.md');
    repo.write('builds/demo/notes/020.md', '020.md\r\n');
    expect((await check(repo)).clean).toBe(true);
  });

  it('leaves the index and a lock of another git alone', async () => {
    const repo = build();
    repo.write('.git/index.lock', '');
    expect((await check(repo)).clean).toBe(true);
  });
});
