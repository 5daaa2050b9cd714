import { posix } from 'node:path';
import { type Changes, compare } from '../../history/compare/compare.js';
import type { Renames, State } from '../../history/compare/state.js';
import { headCommit, resolveCommit } from '../../history/git/commits.js';
import { isLetter } from '../../history/git/issue-letter.js';
import { renamesBetween } from '../../history/git/renames.js';
import type { Repository } from '../../history/git/repository.js';
import { issueTags } from '../../history/git/tags.js';
import { vouchedBy } from '../../history/tag-message.js';
import { UsageError } from '../../platform/usage.js';
import { stateAt } from './state-at.js';

/** A commit by the name that people know it under. */
export interface Named {
  commit: string;
  label: string;
  /** For an issue: the version of this program that made it. */
  madeWith?: string;
}

/** The commit that an issue letter, a commit or a tag stands for. Throws UsageError where there is none. */
export async function named(repo: Repository, build: string, text: string): Promise<Named> {
  const tags = await issueTags(repo, build);
  const tag = isLetter(text) ? tags.find((t) => t.letter === text) : undefined;
  if (tag?.commit !== undefined) return namedIssue(tag.letter, tag.commit, vouchedBy(tag.message)?.tool);
  const commit = await resolveCommit(repo, text);
  if (commit !== undefined) return { commit, label: `commit ${commit.slice(0, 8)}` };
  const letters = tags.map((t) => t.letter).join(', ');
  throw new UsageError(
    `found neither an issue nor a commit \`${text}\`, expected ${letters === '' ? 'a commit (no issue has been made yet)' : `one of the issues ${letters}, or a commit`}`,
  );
}

/** An issue, with the version that made it where that is known. */
export function namedIssue(letter: string, commit: string, madeWith: string | undefined): Named {
  return { commit, label: `issue ${letter}`, ...(madeWith === undefined ? {} : { madeWith }) };
}

/** The commit that is checked out. Throws UsageError where nothing is committed. */
export async function checkedOut(repo: Repository): Promise<Named> {
  const commit = await headCommit(repo);
  if (commit === undefined) throw new UsageError(repo.limits[0] ?? 'nothing is committed yet: commit the notes first');
  return { commit, label: `commit ${commit.slice(0, 8)}` };
}

/** What differs in a build between two commits. */
export async function changesBetween(repo: Repository, name: string, from: Named, to: Named): Promise<Changes> {
  return changesSince(
    repo,
    name,
    from,
    await stateAt(repo, { commit: to.commit, prefix: repo.prefix, name }, to.label),
  );
}

/** What differs from an earlier commit, also where the folder of the build or its notes were called otherwise then. */
export async function changesSince(
  repo: Repository,
  name: string,
  from: Named,
  now: State,
  have?: ReadonlyMap<string, string>,
): Promise<Changes> {
  const renames = await renamesBetween(repo, from.commit, now.commit);
  const { prefix } = repo;
  const buildFile = renames.get(posix.join(prefix, 'build.md'));
  const then = buildFile === undefined ? prefix : posix.dirname(buildFile).replace(/^\.$/, '');
  const before = await stateAt(
    repo,
    {
      commit: from.commit,
      prefix: then,
      name: then === prefix ? name : posix.basename(then) || name,
      ...(have ? { have } : {}),
    },
    from.label,
  );
  return compare(
    { ...before, ...(from.madeWith === undefined ? {} : { madeWith: from.madeWith }) },
    now,
    within(renames, prefix, then),
  );
}

/** Renames inside the build, relative to its folder now and then. */
function within(renames: ReadonlyMap<string, string>, prefix: string, then: string): Renames {
  const inside = (path: string, folder: string): string | undefined =>
    folder === '' ? path : path.startsWith(`${folder}/`) ? path.slice(folder.length + 1) : undefined;
  return new Map(
    [...renames].flatMap(([now, before]): [string, string][] => {
      const [a, b] = [inside(now, prefix), inside(before, then)];
      return a === undefined || b === undefined || a === b ? [] : [[a, b]];
    }),
  );
}
