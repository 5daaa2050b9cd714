import { rmSync } from 'node:fs';

/** In milliseconds: so long others may go on writing into a folder that is removed. */
const patience = 10_000;

/**
 * Removes a file or folder, whatever is in it. What another thread or process was about to write may come into a folder
 * while it is emptied: then it is emptied again.
 */
export function remove(path: string): void {
  for (const began = performance.now(); ; ) {
    try {
      return rmSync(path, { recursive: true, force: true, maxRetries: 3, retryDelay: 50 });
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code !== 'ENOTEMPTY' || performance.now() - began > patience) throw cause;
    }
  }
}
