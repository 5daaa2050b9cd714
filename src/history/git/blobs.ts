import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { objectId } from './object-id.js';
import { command, type GitFolder, gitFails, patience } from './run.js';

export type Blob =
  | { id: string; state: 'read'; size: number; data: Buffer }
  /** The repository does not hold it (a damaged or partial clone), or it is no file. */
  | { id: string; state: 'missing' }
  | { id: string; state: 'too-large'; size: number };

export interface BlobOptions {
  /** Larger contents are skipped, in bytes. */
  maxBytes?: number;
}

/**
 * Reads file contents in the order of their ids through one `git cat-file --batch`. The process ends with the
 * iteration, also where that is left early or fails.
 */
export async function* readBlobs(
  repo: GitFolder,
  ids: Iterable<string>,
  options: BlobOptions = {},
): AsyncGenerator<Blob> {
  const wanted = [...ids].map(objectId);
  if (wanted.length === 0) return;
  const run = command(repo, ['cat-file', '--batch', '--buffer']);
  const child = spawn('git', run.args, { env: run.env, stdio: ['pipe', 'pipe', 'ignore'] });
  const started = once(child, 'spawn');
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()).once('error', () => resolve()));
  child.stdin.on('error', () => undefined);
  try {
    await started;
    child.stdin.end(`${wanted.join('\n')}\n`);
    const source = pieces(child.stdout);
    for (const id of wanted) {
      const header = await source.line();
      const [, type, length] = /^[0-9a-f]+ (?:(\w+) (\d+)|missing)$/.exec(header) ?? garbled();
      const size = Number(length);
      if (length === undefined) {
        yield { id, state: 'missing' };
        continue;
      }
      const fits = size <= (options.maxBytes ?? Infinity);
      const data = await source.take(size, fits && type === 'blob');
      await source.take(1, false);
      if (type !== 'blob') yield { id, state: 'missing' };
      else if (fits && !isOf(id, 'blob', data)) throw notWhatItIs(id);
      else yield fits ? { id, state: 'read', size, data } : { id, state: 'too-large', size };
    }
  } finally {
    child.stdin.destroy();
    child.stdout.destroy();
    child.kill('SIGKILL');
    await ended;
  }
}

/** Whether contents have this id: git trusts the index of a pack, and so gives whatever stands there. */
export function isOf(id: string, type: 'blob' | 'tree' | 'commit' | 'tag', data: Uint8Array): boolean {
  const algorithm = id.length === 64 ? 'sha256' : 'sha1';
  return createHash(algorithm).update(`${type} ${data.length}\0`).update(data).digest('hex') === id;
}

export const notWhatItIs = (id: string) =>
  gitFails(`the repository gives contents for ${id.slice(0, 12)} that have another id`);

function garbled(): never {
  throw gitFails('`git cat-file` answered with something else than file contents');
}

async function inTime<T>(answer: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(gitFails(`\`git cat-file\` gave nothing for ${patience() / 1000} s`)), patience());
  });
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}

/** Takes lines and counted bytes from a stream of chunks. */
function pieces(stream: AsyncIterable<Buffer>): {
  line: () => Promise<string>;
  take: (size: number, keep: boolean) => Promise<Buffer>;
} {
  const chunks = stream[Symbol.asyncIterator]();
  let held: Buffer = Buffer.alloc(0);
  const more = async (): Promise<Buffer> => {
    const next = await inTime(chunks.next());
    if (next.done === true) throw gitFails('git ended before it had given all file contents');
    return next.value;
  };
  return {
    line: async () => {
      let end = held.indexOf(10);
      for (; end === -1; end = held.indexOf(10)) held = Buffer.concat([held, await more()]);
      const found = held.toString('utf8', 0, end);
      held = held.subarray(end + 1);
      return found;
    },
    take: async (size, keep) => {
      const taken: Buffer[] = [];
      let left = size;
      for (;;) {
        const part = held.subarray(0, left);
        held = held.subarray(part.length);
        left -= part.length;
        if (keep) taken.push(part);
        if (left === 0) return Buffer.concat(taken);
        held = await more();
      }
    },
  };
}
