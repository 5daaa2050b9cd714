import { MachineFailure } from './failure.js';

/** A file whose contents are no longer those that were read first: the document would not be of one state of the build. */
export const changed = (path: string): MachineFailure =>
  new MachineFailure({
    found: `${path} was saved while the document was being made`,
    expected: 'files that stay as they are until it is done',
    todo: 'give the command again',
  });
