import { basename, dirname, relative } from 'node:path';
import { watch } from 'chokidar';
import { MachineFailure, wordsOf } from '../platform/failure.js';

/** Files that systems and editors put beside the notes for a moment, and folders that hold nothing of a build. */
const passing = /^(?:\..*|.*~|#.*#|4913|.*\.(?:sw[a-z]|tmp|bak|partial|crdownload)|out|node_modules)$/i;

/** Without waiting for a file to be written out, chokidar passes over what follows a save within 50 ms. */
const usual = { ignoreInitial: true, awaitWriteFinish: { stabilityThreshold: 40, pollInterval: 10 } } as const;

/** Files that are saved together are told together, when nothing has happened for so long, in milliseconds. */
const quiet = 15;

/**
 * Follows the files of a build and the limits of the workshop beside it. `saved` is called with the paths (relative to
 * the build) that were saved, came or went since the last call; a call that is still running is waited for. `failed` is
 * told once when the system can follow no longer.
 */
export async function follow(
  folder: string,
  saved: (paths: string[]) => Promise<void>,
  failed: (failure: Error) => void,
): Promise<{ close: () => Promise<void> }> {
  const within = (path: string) => relative(folder, path).split('\\').join('/');
  const around = dirname(folder);
  const watchers = [
    watch(folder, {
      ...usual,
      ignored: (path) =>
        within(path)
          .split('/')
          .some((part) => passing.test(part)),
    }),
    watch(around, { ...usual, depth: 0, ignored: (path) => path !== around && basename(path) !== 'limits.yaml' }),
  ];
  const waiting = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  let running: Promise<void> | undefined;
  const pass = async () => {
    while (waiting.size > 0) {
      const paths = [...waiting].sort();
      waiting.clear();
      await saved(paths);
    }
  };
  const settle = () => {
    running ??= pass()
      .catch(failed)
      .finally(() => (running = undefined));
  };
  let tell = failed;
  const ready = watchers.map(
    (watcher) =>
      new Promise<void>((resolve) => {
        watcher.once('ready', resolve);
        watcher.on('error', (cause) => tell(cannotFollow(folder, cause)));
        watcher.on('all', (_, path) => {
          waiting.add(within(path));
          clearTimeout(timer);
          timer = setTimeout(settle, quiet);
        });
      }),
  );
  const close = async () => {
    clearTimeout(timer);
    await Promise.all(watchers.map((watcher) => watcher.close()));
    await running;
  };
  try {
    await Promise.race([Promise.all(ready), new Promise<never>((_, reject) => (tell = reject))]);
  } catch (cause) {
    await close();
    throw cause;
  }
  tell = failed;
  return { close };
}

function cannotFollow(folder: string, cause: unknown): MachineFailure {
  return new MachineFailure({
    found: `the files of ${folder} can be followed no longer: ${wordsOf(cause)}`,
    expected: 'a system that tells when files are saved',
    todo: 'close programs that follow many files, or set CHOKIDAR_USEPOLLING=1 and start again, which looks at the files from time to time',
    cause,
  });
}
