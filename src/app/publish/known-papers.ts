import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { cacheDirectory } from '../../platform/cache.js';
import { writeFileWhole } from '../../platform/whole.js';

/** Raised when `activeContent` should say something else of the same paper than before. */
const rules = 1;

/**
 * What `activeContent` says of a paper. It is kept by content: reading PDF takes longer to load than a small build takes
 * to check, and papers seldom change.
 */
export async function knownContent(bytes: Uint8Array): Promise<string | undefined> {
  const kept = join(cacheDirectory(), 'papers', `${createHash('sha256').update(bytes).digest('hex')}-${rules}.json`);
  const known = await readKept(kept);
  if (known) return known.does ?? undefined;
  const { activeContent } = await import('../../print/active-pdf.js');
  const does = await activeContent(bytes);
  // Where nothing can be kept, it is looked into every time.
  await writeFileWhole(kept, JSON.stringify({ does: does ?? null })).catch(() => {});
  return does;
}

/** Undefined where nothing is kept, or something that was not written by the above. */
async function readKept(path: string): Promise<{ does: string | null } | undefined> {
  try {
    const { does } = JSON.parse(await readFile(path, 'utf8')) as { does?: unknown };
    return does === null || typeof does === 'string' ? { does } : undefined;
  } catch {
    return undefined;
  }
}
