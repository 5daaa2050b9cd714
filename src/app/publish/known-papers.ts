import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { cacheDirectory, keep, kept } from '../../platform/cache.js';

/** Raised when `activeContent` should say something else of the same paper than before. */
const rules = 3;

/**
 * What `activeContent` says of a paper. It is kept by content: reading PDF takes longer to load than a small build takes
 * to check, and papers seldom change.
 */
export async function knownContent(bytes: Uint8Array): Promise<string | undefined> {
  const file = join(cacheDirectory(), 'papers', `${createHash('sha256').update(bytes).digest('hex')}-${rules}.json`);
  const known = await readKept(file);
  if (known) return known.does ?? undefined;
  const { activeContent } = await import('../../print/active-pdf.js');
  const does = await activeContent(bytes);
  // Where nothing can be kept, it is looked into every time.
  await keep(file, Buffer.from(JSON.stringify({ does: does ?? null }))).catch(() => {});
  return does;
}

/** Undefined where nothing is kept, or it is not as it was kept. */
async function readKept(path: string): Promise<{ does: string | null } | undefined> {
  const bytes = await kept(path);
  return bytes && (JSON.parse(Buffer.from(bytes).toString('utf8')) as { does: string | null });
}
