import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { writeFileWhole } from '../print/whole.js';
import { cacheDirectory } from './document-photos.js';

/** Page numbers of the last print to the same folder: tried first and verified, so that an unchanged document is printed once. */
const place = (out: string) => join(cacheDirectory(), 'pages', `${createHash('sha256').update(out).digest('hex').slice(0, 32)}.json`);

export async function recallPages(out: string): Promise<ReadonlyMap<string, number>> {
  try {
    const known: unknown = JSON.parse(await readFile(place(out), 'utf8'));
    return new Map(Object.entries(known as Record<string, unknown>).filter((e): e is [string, number] => Number.isInteger(e[1])));
  } catch {
    return new Map();
  }
}

export async function rememberPages(out: string, pageOf: ReadonlyMap<string, number>): Promise<void> {
  await writeFileWhole(place(out), JSON.stringify(Object.fromEntries(pageOf)));
}
