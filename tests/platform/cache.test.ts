import { copyFileSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { cacheDirectory, keep, kept, withCache } from '../../src/platform/cache.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'gusset-cache-'));
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

describe('where the cache is', () => {
  it.each([
    ['GUSSET_CACHE', '/elsewhere', '/elsewhere'],
    ['XDG_CACHE_HOME', '/xdg', '/xdg/gusset'],
  ])('is said by %s', (name, value, found) => {
    vi.stubEnv('GUSSET_CACHE', undefined);
    vi.stubEnv(name, value);
    expect(cacheDirectory()).toBe(found);
  });
  it('is the usual place where these are empty', () => {
    vi.stubEnv('GUSSET_CACHE', '');
    vi.stubEnv('XDG_CACHE_HOME', '');
    expect(cacheDirectory()).toBe(join(homedir(), '.cache/gusset'));
  });
  it('is another one while something runs with it', async () => {
    expect(await withCache('/for/this', async () => cacheDirectory())).toBe('/for/this');
    expect(cacheDirectory()).not.toBe('/for/this');
  });
});

describe('an entry of the cache', () => {
  const entry = () => join(folder, 'a-1.bin');
  it('is given back as it was kept, and none is where nothing was', async () => {
    await keep(entry(), Buffer.from('content'));
    expect(Buffer.from((await kept(entry()))!).toString()).toBe('content');
    expect(await kept(join(folder, 'b-1.bin'))).toBeUndefined();
  });
  it.each<[string, (file: string) => void]>([
    ['altered by a byte', (file) => writeFileSync(file, 'cantent')],
    ['cut short', (file) => truncateSync(file, 3)],
    ['empty', (file) => truncateSync(file, 0)],
    ['without its digest', (file) => rmSync(`${file}.sha256`)],
    ['beside another digest', (file) => writeFileSync(`${file}.sha256`, '0'.repeat(64))],
    ['gone', (file) => rmSync(file)],
  ])('is none when %s', async (_, harm) => {
    await keep(entry(), Buffer.from('content'));
    harm(entry());
    expect(await kept(entry())).toBeUndefined();
  });
  it('is none under the name of another, digest and all', async () => {
    await keep(entry(), Buffer.from('content'));
    const other = join(folder, 'b-1.bin');
    copyFileSync(entry(), other);
    copyFileSync(`${entry()}.sha256`, `${other}.sha256`);
    expect(await kept(other)).toBeUndefined();
    expect(readFileSync(other, 'utf8')).toBe('content');
  });
});
