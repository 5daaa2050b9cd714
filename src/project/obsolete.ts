/**
 * Fields and words that an earlier format had, with what stands for them now. Builds that use them are still read, `check`
 * names each, and `gusset note --update` rewrites them.
 *
 * A name that was given up never comes back with another meaning: what changes its meaning gets a new name.
 */
export interface Obsolete {
  /** The format from which on it is obsolete. */
  since: number;
  /** Where: a kind of note, or `note` for every kind, `build`, `query` or `limits`. */
  of: string;
  /**
   * Keys from the top as the format before had them: `[]` stands for each item of a list, `*` for any key, as in
   * `['pieces', '[]', 'now', 'wall']`.
   */
  path: readonly string[];
  now: Replacement;
}

/**
 * `key`: the same value under another key of the same block. `words`: other words for values, by the old one. `gone`: no
 * longer read, and why; what was typed stays as a comment. `ask`: why only a person can tell what to write instead.
 */
type Replacement = { key: string } | { words: Readonly<Record<string, string>> } | { gone: string } | { ask: string };

export const obsolete: readonly Obsolete[] = (['photos', 'papers'] as const).map((list) => ({
  since: 2,
  of: 'note',
  path: [list, '[]', 'serves'],
  now: { key: 'proves' },
}));
