import { commitDate, isAncestor } from './git/commits.js';
import { letterNumber } from './git/issue-letter.js';
import type { Repository } from './git/repository.js';
import { type IssueTag, issueTags } from './git/tags.js';
import type { BuildHistory } from './history.js';
import { vouchedBy } from './tag-message.js';

/** An issue of the document, as the document tells of it. */
export interface DocumentIssue {
  letter: string;
  tag: string;
  commit: string;
  /** Day of the commit that it was made of. */
  date: string;
  signed: boolean;
  /** The version of this program that made it, as its tag says. */
  madeWith?: string;
}

/** What the history chapter is made from. */
export interface DocumentHistory {
  values: BuildHistory;
  /** In the order of their letters; the document's own is the last, if it has one. */
  issues: readonly DocumentIssue[];
}

/**
 * The issues that came before: those of lower letters or, for a draft, those whose commit lies before. Later issues
 * make no difference, so that a document can be printed again as it was.
 */
export async function issuesBefore(
  repo: Repository,
  build: string,
  commit: string,
  own?: string,
): Promise<DocumentIssue[]> {
  const tags = (await issueTags(repo, build)).filter(
    (tag): tag is IssueTag & { commit: string } => tag.annotated && tag.commit !== undefined,
  );
  const earlier: DocumentIssue[] = [];
  for (const tag of tags) {
    const before =
      own === undefined ? await isAncestor(repo, tag.commit, commit) : letterNumber(tag.letter) < letterNumber(own);
    if (!before) continue;
    const [date, vouched] = [await commitDate(repo, tag.commit), vouchedBy(tag.message)];
    earlier.push({
      letter: tag.letter,
      tag: tag.name,
      commit: tag.commit,
      date: date.slice(0, 10),
      signed: tag.signature !== undefined,
      ...(vouched ? { madeWith: vouched.tool } : {}),
    });
  }
  return earlier;
}
