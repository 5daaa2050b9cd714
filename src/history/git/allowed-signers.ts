import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { headCommit } from './commits.js';
import { type GitFolder, line, tryGit } from './run.js';
import { fileAt } from './tree.js';

/** Which keys may sign in whose name (the format of ssh-keygen's ALLOWED SIGNERS). */
export interface AllowedSigners {
  /** `own`: set up in git by whoever verifies; `committed`: kept in the repository; `none`: no list was found. */
  origin: 'own' | 'committed' | 'none';
  /** In words, for a message. */
  name: string;
}

/** Name of the list in the repository: in the build's folder, else at the root. */
const committedList = 'allowed-signers';

/** Finds the list (the own one is set up outside the repository) and lends it as a file for as long as `use` runs. The committed one is read from the commit checked out. */
export async function withAllowedSigners<Result>(
  repo: GitFolder & { prefix: string },
  use: (list: AllowedSigners, file: string) => Promise<Result>,
): Promise<Result> {
  const set = await tryGit(repo, ['config', '--type=path', '--get', 'gpg.ssh.allowedSignersFile']);
  if (set.code === 0) {
    const file = resolve(repo.root, line(set.out));
    if ((await stat(file).catch(() => undefined))?.isFile() === true) {
      return use({ origin: 'own', name: `the list of allowed signers ${file}` }, file);
    }
  }
  const committed = await committedSigners(repo);
  const directory = await mkdtemp(join(tmpdir(), 'gusset-signers-'));
  try {
    const file = join(directory, committedList);
    await writeFile(file, committed?.list ?? '', { mode: 0o600 });
    const list: AllowedSigners =
      committed === undefined
        ? { origin: 'none', name: 'no list of allowed signers' }
        : { origin: 'committed', name: `the list of allowed signers ${committed.path} in this repository` };
    return await use(list, file);
  } finally {
    await rm(directory, { recursive: true, force: true });
  }
}

async function committedSigners(
  repo: GitFolder & { prefix: string },
): Promise<{ path: string; list: Buffer } | undefined> {
  const head = await headCommit(repo);
  if (head === undefined) return undefined;
  for (const path of new Set([repo.prefix === '' ? committedList : `${repo.prefix}/${committedList}`, committedList])) {
    const list = await fileAt(repo, head, path);
    if (list !== undefined) return { path, list };
  }
  return undefined;
}
