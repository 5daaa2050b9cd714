import { rmSync } from 'node:fs';

/**
 * Removes a file or folder, whatever is in it. What another thread or process was about to write may come into a folder
 * while it is emptied: then it is emptied again.
 */
export function remove(path: string): void {
  for (let left = 4; ; left--) {
    try {
      return rmSync(path, { recursive: true, force: true, maxRetries: 3, retryDelay: 50 });
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code !== 'ENOTEMPTY' || left === 0) throw cause;
    }
  }
}
