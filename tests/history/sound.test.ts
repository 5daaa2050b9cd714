import { createHash } from 'node:crypto';
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBlobs } from '../../src/history/git/blobs.js';
import { checkChain } from '../../src/history/git/sound.js';
import { type Throwaway, throwaway } from './throwaway.js';

/** A repository whose pack gives other contents under an id: the index is altered, and no object is. */

const made = (): Throwaway => {
  const repo = throwaway();
  repo.write('builds/t/notes/010-a.md', 'wall: 2.48 mm\n');
  repo.write('builds/t/notes/020-b.md', 'wall: 9.48 mm\n');
  repo.write('builds/u/notes/010-a.md', 'wall: 9.99 mm\n');
  repo.commit('Measured');
  repo.git('gc', '--quiet', '--prune=now');
  return repo;
};
const idOf = (repo: Throwaway, path: string): string => repo.git('rev-parse', `HEAD:${path}`).trim();

/** Lets the index of the pack find the contents of `other` under the id `id` (pack index, version 2: gitformat-pack). */
function forge(repo: Throwaway, id: string, other: string): void {
  const folder = join(repo.dir, '.git/objects/pack');
  const name = readdirSync(folder).find((file) => file.endsWith('.idx'))!;
  const index = readFileSync(join(folder, name));
  const count = index.readUInt32BE(8 + 4 * 255);
  const [names, offsets] = [8 + 1024, 8 + 1024 + 24 * count];
  const at = (wanted: string): number =>
    Array.from({ length: count }, (_, i) => i).find(
      (i) => index.toString('hex', names + 20 * i, names + 20 * i + 20) === wanted,
    )!;
  index.copy(index, offsets + 4 * at(id), offsets + 4 * at(other), offsets + 4 * at(other) + 4);
  createHash('sha1')
    .update(index.subarray(0, index.length - 20))
    .digest()
    .copy(index, index.length - 20);
  chmodSync(join(folder, name), 0o644);
  writeFileSync(join(folder, name), index);
  for (const file of readdirSync(folder).filter((f) => f.endsWith('.rev'))) rmSync(join(folder, file), { force: true });
}

const read = async (repo: Throwaway, id: string) => {
  for await (const blob of readBlobs({ root: repo.dir }, [id])) return blob;
};
const chain = (repo: Throwaway, folder = 'builds/t') =>
  checkChain({ root: repo.dir }, repo.git('rev-parse', 'HEAD').trim(), folder);

describe('what a repository gives under an id', () => {
  it('is what has that id', async () => {
    const repo = made();
    expect(await read(repo, idOf(repo, 'builds/t/notes/010-a.md'))).toMatchObject({ state: 'read' });
    for (const folder of ['builds/t', 'builds', '', 'none/there']) await chain(repo, folder);
  });
  it('is refused where it is another file', async () => {
    const repo = made();
    const [id, other] = ['builds/t/notes/010-a.md', 'builds/t/notes/020-b.md'].map((path) => idOf(repo, path));
    forge(repo, id!, other!);
    // git itself believes the index.
    expect(repo.git('cat-file', 'blob', id!)).toContain('9.48');
    await expect(read(repo, id!)).rejects.toThrow(`contents for ${id!.slice(0, 12)} that have another id`);
  });
  it('is refused where it is another folder, on the way or below', async () => {
    for (const path of ['builds/t/notes', 'builds/t']) {
      const repo = made();
      forge(repo, idOf(repo, path), idOf(repo, path.replace('/t', '/u')));
      await expect(chain(repo)).rejects.toThrow('that have another id');
      await expect(chain(repo, '')).rejects.toThrow('that have another id');
    }
  });
  it('is refused in a repository of SHA-256, too', async () => {
    const repo = throwaway(undefined, false);
    mkdirSync(repo.dir, { recursive: true });
    repo.git('init', '--quiet', '--object-format=sha256');
    repo.write('a/b', 'x');
    repo.commit('One');
    await chain(repo, 'a');
    expect(await read(repo, idOf(repo, 'a/b'))).toMatchObject({ state: 'read', size: 1 });
  });
});
