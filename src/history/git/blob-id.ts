import { createHash } from 'node:crypto';
import type { Repository } from './repository.js';

/** The id under which git would keep these bytes, without filters (as `git hash-object --no-filters`). */
export function blobId(bytes: Uint8Array, format: Repository['objectFormat']): string {
  return createHash(format).update(`blob ${bytes.length}\0`).update(bytes).digest('hex');
}
