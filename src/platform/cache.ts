import { AsyncLocalStorage } from 'node:async_hooks';
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { basename, join } from 'node:path';
import { writeFileWhole } from './whole.js';

const another = new AsyncLocalStorage<string>();

/** What is costly to make is kept here between runs, by the content that it was made from. */
export function cacheDirectory(): string {
  return (
    another.getStore() ??
    (process.env['GUSSET_CACHE'] || join(process.env['XDG_CACHE_HOME'] || join(homedir(), '.cache'), 'gusset'))
  );
}

/** Runs something with another cache, such as an empty one, so that nothing that was kept earlier comes into it. */
export const withCache = <T>(directory: string, run: () => Promise<T>): Promise<T> => another.run(directory, run);

/** The digest of an entry and of the name under which it is kept, which tells what it was made from. */
const digestOf = (file: string, bytes: Uint8Array): string =>
  createHash('sha256').update(basename(file)).update('\0').update(bytes).digest('hex');
const digestFile = (file: string): string => `${file}.sha256`;

/** Keeps an entry with its digest. Throws MachineFailure if the disk refuses. */
export async function keep(file: string, bytes: Uint8Array): Promise<void> {
  await writeFileWhole(file, bytes);
  await writeFileWhole(digestFile(file), digestOf(file, bytes));
}

/** An entry as it was kept; none where it is not there, cut short, altered, or under another name. */
export async function kept(file: string): Promise<Uint8Array | undefined> {
  try {
    const [bytes, digest] = await Promise.all([readFile(file), readFile(digestFile(file), 'utf8')]);
    return digest === digestOf(file, bytes) ? bytes : undefined;
  } catch {
    return undefined;
  }
}
