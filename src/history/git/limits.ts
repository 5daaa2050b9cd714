/** What can keep a repository from telling all. */
export interface RepositoryState {
  /** No working tree: there are no files to be judged clean. */
  bare: boolean;
  /** The clone starts at a cut-off commit. */
  shallow: boolean;
  /** A commit is checked out, not a branch. */
  detached: boolean;
  /** No commit yet. */
  empty: boolean;
  /** File contents may be missing, because the clone left them at its origin. */
  partial: boolean;
  /** The folder itself is excluded by a `.gitignore`. */
  ignored: boolean;
}

const sentences: readonly (readonly [keyof RepositoryState, string])[] = [
  ['empty', 'Nothing is committed yet: there is no history, and no issue can be made. Commit the notes first.'],
  ['ignored', 'This folder is excluded by a .gitignore: git does not record its files. Take it out of the .gitignore.'],
  [
    'shallow',
    'This clone is cut off at its oldest commit: who recorded what was there before cannot be told. `git fetch --unshallow` brings the rest.',
  ],
  [
    'partial',
    'This clone left part of the file contents at its origin: older values or photos may be missing here. Clone it again without a filter.',
  ],
  [
    'detached',
    'A commit is checked out, not a branch: new commits may be lost. `git switch <branch>` goes back to a branch.',
  ],
  ['bare', 'This repository has no working tree: whether files differ from what is committed cannot be told.'],
];

/** What cannot be told in a repository in this state, in plain words, each with the way out. */
export function limitsOf(state: RepositoryState): string[] {
  return sentences.filter(([name]) => state[name]).map(([, words]) => words);
}
