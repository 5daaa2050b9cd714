import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { objectId } from './object-id.js';
import { mustBe, type ObjectType, objectTypes } from './objects.js';
import { command, type GitFolder, gitFails, patience } from './run.js';

export type Found =
  | { id: string; state: 'read'; type: ObjectType; size: number; data: Buffer }
  /** The repository does not hold it: a damaged or partial clone. */
  | { id: string; state: 'missing' }
  | { id: string; state: 'too-large'; type: ObjectType; size: number };

export interface ReadOptions {
  /** Larger contents are skipped, in bytes. */
  maxBytes?: number;
}

/**
 * Reads objects in the order of their ids through one `git cat-file --batch`. The process ends with the iteration, also
 * where that is left early or fails. What is read is hashed: throws AlteredObject where its id is another.
 */
export async function* readObjects(
  repo: GitFolder,
  ids: Iterable<string>,
  options: ReadOptions = {},
): AsyncGenerator<Found> {
  const wanted = [...ids].map(objectId);
  if (wanted.length === 0) return;
  const { child, source, end } = await started(repo, ['--buffer']);
  try {
    child.stdin.end(`${wanted.join('\n')}\n`);
    for (const id of wanted) yield await next(source, id, options);
  } finally {
    await end();
  }
}

/** Lends a reader of single objects, for following one to another; each is hashed as it is read. */
export async function withObjects<T>(
  repo: GitFolder,
  use: (read: (id: string) => Promise<Found>) => Promise<T>,
): Promise<T> {
  const { child, source, end } = await started(repo, []);
  try {
    return await use((id) => {
      child.stdin.write(`${objectId(id)}\n`);
      return next(source, id, {});
    });
  } finally {
    await end();
  }
}

async function started(repo: GitFolder, options: readonly string[]) {
  const run = command(repo, ['cat-file', '--batch', ...options]);
  const child = spawn('git', run.args, { env: run.env, stdio: ['pipe', 'pipe', 'ignore'] });
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()).once('error', () => resolve()));
  child.stdin.on('error', () => undefined);
  const end = async () => {
    child.stdin.destroy();
    child.stdout.destroy();
    child.kill('SIGKILL');
    await ended;
  };
  await once(child, 'spawn');
  return { child, source: pieces(child.stdout), end };
}

async function next(
  source: ReturnType<typeof pieces>,
  id: string,
  { maxBytes = Infinity }: ReadOptions,
): Promise<Found> {
  const header = await source.line();
  const [, type, length] = /^[0-9a-f]+ (?:(\w+) (\d+)|missing)$/.exec(header) ?? garbled();
  if (type === undefined) return { id, state: 'missing' };
  if (!isType(type)) garbled();
  const size = Number(length);
  const fits = size <= maxBytes;
  const data = await source.take(size, fits);
  await source.take(1, false);
  if (!fits) return { id, state: 'too-large', type, size };
  mustBe(id, type, data);
  return { id, state: 'read', type, size, data };
}

const isType = (word: string): word is ObjectType => (objectTypes as readonly string[]).includes(word);

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
