import { type ReadOptions, readObjects } from './cat-file.js';
import type { GitFolder } from './run.js';

export type Blob =
  | { id: string; state: 'read'; size: number; data: Buffer }
  /** The repository does not hold it (a damaged or partial clone), or it is no file. */
  | { id: string; state: 'missing' }
  | { id: string; state: 'too-large'; size: number };

/** Reads file contents in the order of their ids. Throws AlteredObject where an id is not that of what is found under it. */
export async function* readBlobs(
  repo: GitFolder,
  ids: Iterable<string>,
  options: ReadOptions = {},
): AsyncGenerator<Blob> {
  for await (const found of readObjects(repo, ids, options)) {
    const { id, state } = found;
    if (state === 'missing' || found.type !== 'blob') yield { id, state: 'missing' };
    else if (state === 'read') yield { id, state, size: found.size, data: found.data };
    else yield { id, state, size: found.size };
  }
}
