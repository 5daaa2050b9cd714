import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBlobs } from '../../src/history/git/blobs.js';
import { commitDate } from '../../src/history/git/commits.js';
import { createTag } from '../../src/history/git/create-tag.js';
import { extractAt } from '../../src/history/git/extract.js';
import { AlteredObject } from '../../src/history/git/objects.js';
import { issueTags, tagNamed } from '../../src/history/git/tags.js';
import { fileAt, treeAt } from '../../src/history/git/tree.js';
import { loose, replaceLoose, swapInIndex } from './forge-objects.js';
import { jo, type Throwaway, temporary, throwaway } from './throwaway.js';

/*
 * A repository in which an id stands for other bytes than it was made of. git looks an object up by its id and does not
 * hash what it finds (gitformat-pack(5): an index of a pack only says where an object lies).
 */

function build(format: 'sha1' | 'sha256' = 'sha1'): { repo: Throwaway; commit: string } {
  const repo = throwaway();
  if (format === 'sha256')
    writeFileSync(
      join(repo.dir, '.git/config'),
      `[core]\nrepositoryformatversion = 1\nbare = false\n[extensions]\nobjectFormat = sha256\n[user]\nname = ${jo.name}\nemail = ${jo.email}\n`,
    );
  repo.write('builds/t/build.md', 'The build');
  repo.write('builds/t/notes/010.md', 'wall: 2.50 mm');
  repo.write('builds/t/notes/020.md', 'wall: 1.20 mm');
  return { repo, commit: repo.commit('All') };
}
const note = 'builds/t/notes/010.md';
const altered = { name: 'MachineFailure', found: expect.stringContaining('other contents than the id') };

describe.each(['sha1', 'sha256'] as const)('in a repository of %s ids', (format) => {
  it('reads what was committed', async () => {
    const { repo, commit } = build(format);
    expect(commit).toHaveLength(format === 'sha1' ? 40 : 64);
    expect((await fileAt(repo.place, commit, note))?.toString()).toBe('wall: 2.50 mm');
    expect([...(await treeAt(repo.place, commit, 'builds/t')).keys()]).toEqual([
      'build.md',
      'notes/010.md',
      'notes/020.md',
    ]);
  });

  it.each<[string, string, string]>([
    ['a file', `HEAD:${note}`, 'blob'],
    ['a folder', 'HEAD:builds/t/notes', 'tree'],
    ['the root', 'HEAD^{tree}', 'tree'],
    ['the commit', 'HEAD', 'commit'],
  ])('refuses other bytes under the id of %s', async (_, of, type) => {
    const { repo, commit } = build(format);
    const other = build(format);
    other.repo.write(note, 'wall: 2.90 mm');
    other.repo.commit('Other');
    const content = execFileSync('git', ['cat-file', type, of], { cwd: other.repo.dir });
    // All that the other one is made of is there too.
    for (const line of other.repo.git('cat-file', '--batch-check', '--batch-all-objects').split('\n')) {
      const id = line.split(' ')[0]!;
      mkdirSync(dirname(loose(repo.dir, id)), { recursive: true });
      rmSync(loose(repo.dir, id), { force: true });
      writeFileSync(loose(repo.dir, id), readFileSync(loose(other.repo.dir, id)));
    }
    replaceLoose(repo.dir, repo.git('rev-parse', of), type, content);
    await expect(fileAt(repo.place, commit, note)).rejects.toMatchObject(altered);
    await expect(fileAt(repo.place, commit, note)).rejects.toBeInstanceOf(AlteredObject);
    await expect(extractAt(repo.place, commit, 'builds/t', temporary())).rejects.toMatchObject(altered);
    if (type === 'commit') await expect(commitDate(repo.place, commit)).rejects.toMatchObject(altered);
  });

  it('refuses another message under the id of a tag', async () => {
    const { repo, commit } = build(format);
    const { object } = await createTag(repo.place, { name: 't/issue-A', message: 'Issue A', commit, sign: 'no' });
    expect((await tagNamed(repo.place, 't/issue-A'))?.message).toBe('Issue A');
    const raw = `${repo.git('cat-file', 'tag', object)}\n`;
    replaceLoose(repo.dir, object, 'tag', raw.replace('Issue A', 'Issue B'));
    await expect(tagNamed(repo.place, 't/issue-A')).rejects.toMatchObject(altered);
    await expect(issueTags(repo.place, 't')).rejects.toMatchObject(altered);
  });
});

describe('the index of a pack', () => {
  it('that leads from one id to the contents of another is noticed', async () => {
    const { repo, commit } = build();
    repo.git('repack', '-a', '-d', '-q');
    repo.git('prune-packed', '-q');
    const [one, other] = ['010', '020'].map((n) => repo.git('rev-parse', `HEAD:builds/t/notes/${n}.md`)) as [
      string,
      string,
    ];
    swapInIndex(repo.dir, one, other);
    // git itself does not see it.
    expect(repo.git('cat-file', 'blob', one)).toBe('wall: 1.20 mm');
    await expect(fileAt(repo.place, commit, note)).rejects.toMatchObject(altered);
    await expect(
      (async () => {
        for await (const _ of readBlobs(repo.place, [one])) void _;
      })(),
    ).rejects.toMatchObject(altered);
  });
});
