import { relative } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { MachineFailure, wordsOf } from '../platform/failure.js';
import type { Problem } from '../project/problem.js';

/** Pauses between looks at files that are being saved, in milliseconds: an editor is done within the sum of them. */
const pauses = [50, 200, 500];

/**
 * Looks at files that somebody may be saving, renaming or taking away at this moment: where one goes while it is read, the
 * look is taken again. What the system refuses for longer is a problem of that file, until it is saved again.
 */
export async function amidSaves<T>(look: () => Promise<T>): Promise<T | { problems: Problem[] }> {
  for (const ms of pauses) {
    try {
      return await look();
    } catch (cause) {
      if (!ofTheSystem(cause)) throw cause;
      await pause(ms);
    }
  }
  try {
    return await look();
  } catch (cause) {
    if (!ofTheSystem(cause)) throw cause;
    return { problems: [unread(cause)] };
  }
}

/** Thrown by the system or of the machine, and no fault of the program. */
export const ofTheSystem = (cause: unknown): boolean =>
  cause instanceof MachineFailure || typeof (cause as NodeJS.ErrnoException | undefined)?.syscall === 'string';

function unread(cause: unknown): Problem {
  const { path, code } = cause as NodeJS.ErrnoException;
  const machine = cause instanceof MachineFailure ? cause : undefined;
  return {
    code: 'file-unreadable',
    file: path === undefined ? '.' : relative(process.cwd(), path) || '.',
    line: 0,
    column: 0,
    found: machine?.found ?? (code === 'ENOENT' ? 'a file that was there a moment ago' : wordsOf(cause)),
    expected: machine?.expected ?? 'a file that can be read',
    hint: machine?.todo ?? 'save it again, or put it back',
  };
}
