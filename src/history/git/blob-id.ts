import { webcrypto } from 'node:crypto';
import type { Repository } from './repository.js';

/** The id under which git would keep these bytes, without filters (as `git hash-object --no-filters`). */
export async function blobId(bytes: Uint8Array, format: Repository['objectFormat']): Promise<string> {
  const object = Buffer.concat([Buffer.from(`blob ${bytes.length}\0`), bytes]);
  return Buffer.from(await webcrypto.subtle.digest(format === 'sha1' ? 'SHA-1' : 'SHA-256', object)).toString('hex');
}
