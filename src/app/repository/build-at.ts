import { rmSync } from 'node:fs';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, posix } from 'node:path';
import { extractAt } from '../../history/git/extract.js';
import type { GitFolder } from '../../history/git/run.js';
import { fileAt } from '../../history/git/tree.js';
import { onInterrupt } from '../../platform/interrupt.js';

/** One state of a build: its folder from the root of the repository (empty for the root), at a commit. */
export interface BuildAt {
  commit: string;
  prefix: string;
  /** The folder's name, which the document tells. */
  name: string;
  /** Photos and papers that lie elsewhere, by the id of their contents. */
  have?: ReadonlyMap<string, string>;
}

/**
 * Lends the files of a build as they were committed, with the limits of the workshop beside it, in a folder that goes
 * when `use` ends. No filter and no line-end setting touches them.
 */
export async function withBuildAt<T>(
  repo: GitFolder,
  { commit, prefix, name, have }: BuildAt,
  use: (folder: string) => Promise<T>,
): Promise<T> {
  const place = await mkdtemp(join(tmpdir(), 'gusset-build-'));
  const remove = () => rmSync(place, { recursive: true, force: true, maxRetries: 3 });
  const forget = onInterrupt(remove);
  try {
    const folder = join(place, name);
    await extractAt(repo, commit, prefix, folder, have);
    const limits = prefix === '' ? undefined : await fileAt(repo, commit, workshopLimits(prefix));
    if (limits) await writeFile(join(place, 'limits.yaml'), limits);
    return await use(folder);
  } finally {
    remove();
    forget();
  }
}

/** Where the limits of the whole workshop lie, from the root of the repository. */
export const workshopLimits = (prefix: string): string => posix.join(prefix, '../limits.yaml');
