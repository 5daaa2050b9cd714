/**
 * Something of the machine failed (no browser, no disk, a browser that died): not the notes' fault. Exit code 3.
 * `found`, `expected` and `todo` are whole phrases in plain English; the message joins them.
 */
export class MachineFailure extends Error {
  override readonly name = 'MachineFailure';
  readonly exitCode = 3;
  readonly found: string;
  readonly expected: string;
  readonly todo: string;

  constructor(what: { found: string; expected: string; todo: string; cause?: unknown }) {
    super(`${what.found}\n  expected: ${what.expected}\n  to do: ${what.todo}`, { cause: what.cause });
    this.found = what.found;
    this.expected = what.expected;
    this.todo = what.todo;
  }
}

const refusals = new Set([
  'ENOSPC',
  'EDQUOT',
  'EROFS',
  'EIO',
  'EACCES',
  'EPERM',
  'EBUSY',
  'EEXIST',
  'ENOTDIR',
  'EISDIR',
  'ENAMETOOLONG',
  'EMFILE',
  'ENFILE',
  'ENOMEM',
]);

/** Whether the system refused to read or write: no space, no permission, no such kind of place. */
export const refusedBySystem = (cause: unknown): boolean =>
  refusals.has((cause as NodeJS.ErrnoException | undefined)?.code ?? '');

/** The words of anything thrown. */
export const wordsOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
