import { describe, expect, it } from 'vitest';
import { fileVersions, type VersionsOptions } from '../../src/history/git/versions.js';
import { chains } from './chains.js';
import { configure, history, jo, mika, note, type Throwaway, temporary, throwaway } from './throwaway.js';

const md = { endings: ['.md'] };
const walk = async (repo: Throwaway, folder = 'demo', options: VersionsOptions = md, place = repo.place) =>
  fileVersions(place, folder, options);
const subjects = (links: readonly { version: { subject: string } }[] | undefined): string[] =>
  (links ?? []).map(({ version }) => version.subject);
const wall = (value: string): string => note({ wall: value, piece: 'crossmember', steel: 'S355', on: '2026-03-10' });

describe('fileVersions', () => {
  it('gives author, dates, subject and changes, oldest first', async () => {
    const repo = throwaway();
    repo.write('demo/010.md', wall('2.5 mm'));
    const first = repo.commit('First');
    repo.write('demo/010.md', wall('2.4 mm'));
    const second = repo.commit('Überarbeitet: "Rohr"\n\nMore words.', mika);
    const { versions } = await walk(repo);
    expect(versions).toMatchObject([
      {
        commit: first,
        parents: [],
        author: jo,
        date: '2026-02-03T09:00:00+00:00',
        committed: '2026-02-03T09:00:00+00:00',
        subject: 'First',
        boundary: false,
      },
      { commit: second, parents: [first], author: mika, subject: 'Überarbeitet: "Rohr"' },
    ]);
    const [made, changed] = versions.map(({ changes }) => changes[0]);
    expect(made).toMatchObject({ status: 'added', path: 'demo/010.md', previousBlob: undefined });
    expect(changed).toEqual({
      status: 'modified',
      path: 'demo/010.md',
      previousBlob: made?.blob,
      blob: repo.git('rev-parse', 'HEAD:demo/010.md'),
    });
  });

  it('reads names with spaces, line ends, leading hyphens, tabs, quotes and letters of all kinds', async () => {
    const repo = throwaway();
    const names = [
      'a b.md',
      'line\nend.md',
      '-rf.md',
      '--all.md',
      'tab\t.md',
      '"quoted".md',
      'Träger Größe.md',
      '横梁.md',
      ':100644 100644 a b M.md',
      '*.md',
      ':(top)x.md',
    ];
    for (const name of names) repo.write(`demo/${name}`, name);
    repo.commit('All', { name: 'Ødegård 山', email: 'ø@workshop.example' });
    const { versions } = await walk(repo);
    expect(versions[0]?.changes.map(({ path }) => path).sort()).toEqual(names.map((name) => `demo/${name}`).sort());
    expect(versions[0]?.author.name).toBe('Ødegård 山');
    expect([...chains(await walk(repo)).keys()]).toHaveLength(names.length);
  });

  it('does not depend on the settings of the repository', async () => {
    const repo = throwaway();
    configure(
      repo.dir,
      [
        '[log]\nfollow = true\nshowRoot = false\nmailmap = true\ndate = relative',
        '[diff]\nrenames = false\nexternal = false\nnoprefix = true\nrelative = true\n[color]\nui = always',
        '[core]\nabbrev = 4\nquotepath = true\n[pager]\nlog = false\n',
      ].join('\n'),
    );
    repo.write('demo/010.md', wall('2.5 mm'));
    repo.write('.mailmap', 'Somebody Else <jo@workshop.example>\n');
    repo.commit('First');
    repo.git('mv', 'demo/010.md', 'demo/020.md');
    repo.commit('Renamed');
    const { versions } = await walk(repo);
    expect(versions.map(({ changes, author }) => [author.name, changes[0]?.status])).toEqual([
      ['Jo Ashdown', 'added'],
      ['Jo Ashdown', 'renamed'],
    ]);
  });

  it('is empty in an empty repository, and ends at the commit asked for', async () => {
    const repo = throwaway();
    expect((await walk(repo, '', md, await repo.open())).versions).toEqual([]);
    const [first = ''] = history(repo, [
      { parents: [], files: {} },
      { parents: [0], files: {} },
    ]);
    expect((await walk(repo, '', { at: first })).versions).toHaveLength(1);
    await expect(walk(repo, '', { at: '--output=x' })).rejects.toThrow('full git object id');
  });

  it('marks where a shallow clone is cut off', async () => {
    const repo = throwaway();
    history(repo, [
      { parents: [], files: { 'demo/010.md': 'one' } },
      { parents: [0], files: { 'demo/010.md': 'two' } },
      { parents: [1], files: { 'demo/010.md': 'three' } },
    ]);
    const clone = throwaway(temporary(), false);
    clone.git('clone', '--quiet', '--depth=2', `file://${repo.dir}`, '.');
    const { versions } = await walk(clone, 'demo', md, await clone.open());
    expect(versions.map(({ subject, boundary }) => [subject, boundary])).toEqual([
      ['Commit 1', true],
      ['Commit 2', false],
    ]);
  });
});

describe('chains', () => {
  it('follows a file through renames as `git log --follow` does', async () => {
    const repo = throwaway();
    history(repo, [
      { parents: [], files: { 'demo/a.md': wall('2.5 mm') } },
      { parents: [0], files: { 'demo/b b.md': wall('2.5 mm') } },
      { parents: [1], files: { 'demo/b b.md': wall('2.4 mm') }, by: mika },
      { parents: [2], files: { 'demo/c.md': wall('2.3 mm'), 'demo/other.md': 'something quite different\n' } },
    ]);
    const chain = chains(await walk(repo)).get('demo/c.md') ?? [];
    expect(chain.map(({ version }) => version.commit)).toEqual(
      repo.git('log', '--follow', '--format=%H', 'main', '--', 'demo/c.md').split('\n').reverse(),
    );
    expect(chain.map(({ path, from }) => [path, from])).toEqual([
      ['demo/a.md', undefined],
      ['demo/b b.md', 'demo/a.md'],
      ['demo/b b.md', undefined],
      ['demo/c.md', 'demo/b b.md'],
    ]);
  });

  it('follows two files that swap names and a folder that moves', async () => {
    const repo = throwaway();
    const [one, other] = [wall('1 mm'), 'Another text altogether,\nof two lines.\n'];
    history(repo, [
      { parents: [], files: { 'builds/old/a.md': one, 'builds/old/b.md': other } },
      { parents: [0], files: { 'builds/new/b.md': one, 'builds/new/a.md': other } },
    ]);
    const found = chains(await walk(repo, 'builds/new'));
    expect(found.get('builds/new/b.md')?.map(({ path }) => path)).toEqual(['builds/old/a.md', 'builds/new/b.md']);
    expect(found.get('builds/new/a.md')?.map(({ path }) => path)).toEqual(['builds/old/b.md', 'builds/new/a.md']);
  });

  it('lists both sides of a merge, and the merge itself only if it differs from both', async () => {
    const repo = throwaway();
    history(repo, [
      { parents: [], files: { 'demo/a.md': 'base', 'demo/b.md': 'base' } },
      { parents: [0], files: { 'demo/a.md': 'ours', 'demo/b.md': 'base' } },
      { parents: [0], files: { 'demo/a.md': 'theirs', 'demo/b.md': 'theirs' }, by: mika },
      { parents: [1, 2], files: { 'demo/a.md': 'both', 'demo/b.md': 'theirs' } },
    ]);
    const found = chains(await walk(repo));
    expect(subjects(found.get('demo/a.md'))).toEqual(['Commit 0', 'Commit 1', 'Commit 2', 'Commit 3']);
    expect(subjects(found.get('demo/b.md'))).toEqual(['Commit 0', 'Commit 2']);
  });

  it('follows a rename on one side and a change on the other into one chain', async () => {
    const repo = throwaway();
    const long = (value: string): string => wall(value) + 'Words that stay as they are.\n'.repeat(20);
    for (const renamedFirst of [true, false]) {
      const renamed = { parents: [0], files: { 'demo/b.md': long('1 mm') } };
      const changed = { parents: [0], files: { 'demo/a.md': long('2 mm') } };
      history(repo, [
        { parents: [], files: { 'demo/a.md': long('1 mm') } },
        ...(renamedFirst ? [renamed, changed] : [changed, renamed]),
        { parents: [1, 2], files: { 'demo/b.md': long('2 mm') } },
      ]);
      const found = chains(await walk(repo));
      expect([...found.keys()]).toEqual(['demo/b.md']);
      expect(subjects(found.get('demo/b.md')).slice(0, 3)).toEqual(['Commit 0', 'Commit 1', 'Commit 2']);
    }
  });

  it('sees that a photo was replaced under the same name, and follows one that was only renamed', async () => {
    const repo = throwaway();
    repo.write('demo/photos/wall.jpg', Buffer.from([255, 216, 1, 2, 3]));
    repo.write('demo/photos/tack.jpg', Buffer.from([255, 216, 9, 9, 9]));
    repo.commit('Photos');
    repo.write('demo/photos/wall.jpg', Buffer.from([255, 216, 4, 5, 6]));
    repo.git('mv', 'demo/photos/tack.jpg', 'demo/photos/weld.jpg');
    repo.commit('Another photo', mika);
    const found = chains(await walk(repo, 'demo', {}));
    const replaced = found.get('demo/photos/wall.jpg') ?? [];
    expect(subjects(replaced)).toEqual(['Photos', 'Another photo']);
    expect(replaced[1]?.previousBlob).toBe(replaced[0]?.blob);
    expect(replaced[1]?.blob).not.toBe(replaced[0]?.blob);
    expect(found.get('demo/photos/weld.jpg')?.map(({ from }) => from)).toEqual([undefined, 'demo/photos/tack.jpg']);
  });

  it('takes a file made again under its name for the same, and a link for no file', async () => {
    const repo = throwaway();
    history(repo, [
      { parents: [], files: { 'demo/a.md': 'one' } },
      { parents: [0], files: {} },
      { parents: [1], files: { 'demo/a.md': 'two' } },
    ]);
    expect(
      chains(await walk(repo))
        .get('demo/a.md')
        ?.map(({ version, blob }) => [version.subject, blob !== undefined]),
    ).toEqual([
      ['Commit 0', true],
      ['Commit 1', false],
      ['Commit 2', true],
    ]);
    repo.git('update-index', '--add', '--cacheinfo', `120000,${repo.git('rev-parse', 'HEAD:demo/a.md')},demo/a.md`);
    repo.git('commit', '--quiet', '-m', 'A link');
    expect([...chains(await walk(repo)).keys()]).toEqual([]);
  });
});
