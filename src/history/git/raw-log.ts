import { type Commit, commitFieldCount, commitFrom } from './commits.js';
import { fields } from './run.js';

export interface Change {
  status: 'added' | 'modified' | 'deleted' | 'renamed';
  /** Relative to the root of the repository. */
  path: string;
  /** The path before a rename. */
  from?: string;
  /** Id of the contents; none where no plain file is left (deleted, or turned into a link). */
  blob: string | undefined;
  previousBlob: string | undefined;
}

/** Reads `git log -z --raw --no-abbrev` printed in `commitFormat`: the fields of a commit, then its changes. */
export function parseLog(out: Buffer): (Commit & { changes: Change[] })[] {
  const tokens = fields(out);
  const commits: (Commit & { changes: Change[] })[] = [];
  let at = 0;
  while (at < tokens.length) {
    const commit = commitFrom(tokens.slice(at, at + commitFieldCount));
    at += commitFieldCount;
    const changes: Change[] = [];
    for (;;) {
      // A path never stands here: it was taken with the entry before it.
      const entry = /^\n?:\d+ (\d+) (\w+) (\w+) ([A-Z])/.exec(tokens[at] ?? '');
      if (entry === null) break;
      const [, mode = '', previous = '', blob = '', status = ''] = entry;
      const renamed = status === 'R';
      const paths = tokens.slice(at + 1, at + (renamed ? 3 : 2));
      at += 1 + paths.length;
      changes.push(change(status, paths, previous, mode, blob));
    }
    commits.push({ ...commit, changes });
  }
  return commits;
}

const statuses: Record<string, Change['status']> = { A: 'added', D: 'deleted', R: 'renamed' };

function change(status: string, paths: string[], previous: string, mode: string, blob: string): Change {
  const [first = '', second] = paths;
  return {
    status: statuses[status] ?? 'modified',
    path: second ?? first,
    ...(second === undefined ? {} : { from: first }),
    blob: mode.startsWith('100') ? blob : undefined,
    previousBlob: /^0+$/.test(previous) ? undefined : previous,
  };
}
