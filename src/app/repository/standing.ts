import { posix } from 'node:path';
import { isClean } from '../../history/git/clean.js';
import { commitDate, headCommit } from '../../history/git/commits.js';
import { openRepository, type Repository } from '../../history/git/repository.js';
import { signatureOf } from '../../history/git/tag-signature.js';
import { issueTags } from '../../history/git/tags.js';
import { blobAt } from '../../history/git/tree.js';
import { isOfFolder } from '../../history/tag-message.js';
import { type Build, issuesUnder } from '../../project/model.js';
import { workshopLimits } from './build-at.js';
import { type Input, readInputs } from './inputs.js';

/** An issue of the document, made or about to be made. */
export interface Issue {
  letter: string;
  tag: string;
  signed: boolean;
}

/** What git says of the files that are to be printed. */
export interface Standing {
  repo: Repository;
  commit: string;
  /** Day of the commit. */
  date: string;
  /** Files that differ from the commit, from the root of the repository. */
  dirty: readonly string[];
  /** Inputs among them that git does not call changed: it was told to ignore them, or keeps other contents of them. */
  unrecorded: readonly string[];
  /** The issue whose tag the commit carries. */
  issue?: Issue;
}

/** Reads the inputs of a build with their standing in git; none outside a repository, or where nothing is committed. */
export async function standingOf(build: Build): Promise<{ inputs: Input[]; standing?: Standing }> {
  const repo = await openRepository(build.directory);
  const commit = repo.kind === 'none' || repo.bare ? undefined : await headCommit(repo);
  if (repo.kind === 'none' || commit === undefined) return { inputs: (await readInputs(build)).inputs };
  const above = repo.prefix === '' ? undefined : workshopLimits(repo.prefix);
  const concerned =
    above !== undefined &&
    (build.limits.some((l) => l.path === '../limits.yaml') || (await blobAt(repo, commit, above)) !== undefined);
  const beside = concerned ? await isClean(repo, above) : undefined;
  const [own, date, issue] = await Promise.all([
    isClean(repo, repo.prefix),
    commitDate(repo, commit),
    issueAt(repo, build, commit),
  ]);
  const changed = new Set([...own.dirty, ...(beside?.dirty ?? [])].map((d) => d.path));
  const { inputs, uncommitted } = await readInputs(build, { repo, commit, changed });
  const unrecorded = uncommitted.map((path) => posix.join(repo.prefix, path)).filter((path) => !changed.has(path));
  const dirty = [...changed, ...unrecorded].sort();
  return {
    inputs,
    standing: { repo, commit, date: date.slice(0, 10), dirty, unrecorded, ...(issue ? { issue } : {}) },
  };
}

/**
 * The last issue of a build that was made of a commit. A bare name is no issue, nor is one of another folder, from which
 * this build may have been copied.
 */
async function issueAt(repo: Repository, build: Build, commit: string): Promise<Issue | undefined> {
  const here = repo.prefix === '' ? build.name : repo.prefix;
  const tag = (await issueTags(repo, issuesUnder(build))).findLast(
    (t) => t.commit === commit && t.annotated && isOfFolder(t.message, here),
  );
  return tag && { letter: tag.letter, tag: tag.name, signed: (await signatureOf(repo, tag)) !== undefined };
}
