import { join, relative } from 'node:path';
import { watch } from 'chokidar';
import { MachineFailure, wordsOf } from '../print/failure.js';

/** Files that systems and editors put beside the notes for a moment, and folders that hold nothing of a build. */
const passing = /^(?:\..*|.*~|#.*#|4913|.*\.(?:sw[a-z]|tmp|bak|partial|crdownload)|out|node_modules)$/i;

/** A save is over when nothing has happened for so long, in milliseconds. */
const quiet = 30;

/**
 * Follows the files of a build and the limits of the workshop beside it. `saved` is called with the paths (relative to
 * the build) that were saved, came or went since the last call; a call that is still running is waited for. `failed` is
 * told once when the system can follow no longer.
 */
export async function follow(folder: string, saved: (paths: string[]) => Promise<void>, failed: (failure: Error) => void): Promise<{ close: () => Promise<void> }> {
  const within = (path: string) => relative(folder, path).split('\\').join('/');
  const watcher = watch([folder, join(folder, '..', 'limits.yaml')], {
    ignoreInitial: true,
    ignored: (path) => within(path).split('/').some((part) => part !== '..' && passing.test(part)),
  });
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
  watcher.on('all', (_, path) => {
    waiting.add(within(path));
    clearTimeout(timer);
    timer = setTimeout(settle, quiet);
  });
  await new Promise<void>((resolve, reject) => {
    let tell = reject;
    watcher.on('error', (cause) => tell(cannotFollow(folder, cause)));
    watcher.once('ready', () => {
      tell = failed;
      resolve();
    });
  });
  return {
    close: async () => {
      clearTimeout(timer);
      await watcher.close();
      await running;
    },
  };
}

function cannotFollow(folder: string, cause: unknown): MachineFailure {
  return new MachineFailure({
    found: `the files of ${folder} can be followed no longer: ${wordsOf(cause)}`,
    expected: 'a system that tells when files are saved',
    todo: 'close programs that follow many files, or set CHOKIDAR_USEPOLLING=1 and start again, which looks at the files from time to time',
    cause,
  });
}
