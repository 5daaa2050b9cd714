import { cpSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { standingOf } from '../../src/app/repository/standing.js';
import { createTag } from '../../src/history/git/create-tag.js';
import { gusset } from '../commands/run.js';
import { buildFile, floorNote } from '../history/invented.js';
import { type Throwaway, throwaway } from '../history/throwaway.js';
import { folderWith } from '../project/scratch.js';

function built(id?: string): Throwaway {
  const repo = throwaway();
  repo.write(
    'builds/t/build.md',
    id === undefined ? buildFile : buildFile.replace('document:', `id: ${id}\ndocument:`),
  );
  repo.write('builds/t/notes/010-floor.md', floorNote());
  repo.commit('Begun');
  return repo;
}
const issued = async (repo: Throwaway, name: string, folder = 'builds/t') =>
  createTag(repo.place, {
    name,
    message: `Issue A\n\nBuild: ${folder}`,
    commit: repo.git('rev-parse', 'HEAD'),
    sign: 'no',
  });
function renamed(repo: Throwaway): string {
  renameSync(join(repo.dir, 'builds/t'), join(repo.dir, 'builds/u'));
  repo.commit('Renamed');
  return join(repo.dir, 'builds/u');
}
const next = async (folder: string): Promise<string> =>
  (await gusset('issue', folder, '--dry-run', '--with-open')).out.replace(
    /[^]*make (issue \w+):.* tag ([^ ]*) on[^]*/,
    '$1 $2',
  );

describe('the issues of a build', () => {
  it('are found by its id where its folder gets another name', async () => {
    const repo = built('t-1a2b3c');
    await issued(repo, 't-1a2b3c/issue-A');
    const folder = renamed(repo);
    expect(await next(folder)).toBe('issue B t-1a2b3c/issue-B');
    expect((await gusset('history', folder, '--from', 'A')).code).toBe(0);
  });

  it('are found by the name of the folder where it has none', async () => {
    const repo = built();
    await issued(repo, 't/issue-A');
    expect(await next(join(repo.dir, 'builds/t'))).toBe('issue B t/issue-B');
    expect(await next(renamed(repo))).toBe('issue A u/issue-A');
  });

  it('keep the name that they have once `note --update` has stated it', async () => {
    const repo = built();
    await issued(repo, 't/issue-A');
    const told = await gusset('note', join(repo.dir, 'builds/t'), '--update');
    expect(told).toMatchObject({ code: 0, out: expect.stringContaining('id t\n') });
    expect(readFileSync(join(repo.dir, 'builds/t/build.md'), 'utf8')).toContain('\nid: t\n');
    expect((await gusset('note', join(repo.dir, 'builds/t'), '--update')).out).toBe('Nothing was rewritten.\n');
    repo.commit('With an id');
    expect(await next(renamed(repo))).toBe('issue B t/issue-B');
  });

  it('are not those of a build from which it was copied', async () => {
    const repo = built('t-1a2b3c');
    cpSync(join(repo.dir, 'builds/t'), join(repo.dir, 'builds/copy'), { recursive: true });
    repo.commit('Copied');
    await issued(repo, 't-1a2b3c/issue-A');
    const issueOf = async (name: string) => {
      const loaded = await load(join(repo.dir, 'builds', name));
      if (!('build' in loaded)) throw new Error('cannot be read');
      return (await standingOf(loaded.build)).standing?.issue?.letter;
    };
    expect([await issueOf('t'), await issueOf('copy')]).toEqual(['A', undefined]);
    const { code, out } = await gusset('issue', join(repo.dir, 'builds/copy'), '--dry-run', '--with-open');
    expect([code, out]).toEqual([1, expect.stringMatching(/✗ id: another build has the id t-1a2b3c too[^]*\n {4}t\n/)]);
  });
});

it('is made by `start`, and differs where two builds begin under one name', async () => {
  const folder = folderWith({});
  const before = process.cwd();
  process.chdir(folder);
  try {
    for (const name of ['a/Red wagon', 'b/Red wagon']) expect((await gusset('start', name)).code).toBe(0);
  } finally {
    process.chdir(before);
  }
  const ids = ['a', 'b'].map(
    (name) => /^id: (.+)$/m.exec(readFileSync(join(folder, name, 'Red wagon/build.md'), 'utf8'))?.[1],
  );
  expect(ids).toEqual([
    expect.stringMatching(/^red-wagon-[0-9a-f]{6}$/),
    expect.stringMatching(/^red-wagon-[0-9a-f]{6}$/),
  ]);
  expect(ids[0]).not.toBe(ids[1]);
});

it.each(['a/b', '', 'x'.repeat(101), '"a\\u0007"'])('is no %j', async (id) => {
  const repo = built();
  writeFileSync(join(repo.dir, 'builds/t/build.md'), buildFile.replace('document:', `id: ${id}\ndocument:`));
  const loaded = await load(join(repo.dir, 'builds/t'));
  expect(id === '' ? 'build' in loaded : loaded.problems.length > 0).toBe(true);
});
