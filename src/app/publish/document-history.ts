import { kinds } from '../../checks/kinds/index.js';
import type { Changes } from '../../history/compare/compare.js';
import { limitsOf } from '../../history/git/limits.js';
import { historyOf, pointOutLate } from '../../history/history.js';
import { type DocumentHistory, issuesBefore } from '../../history/issues.js';
import { issuesUnder } from '../../project/model.js';
import { type Loaded, shapes } from '../load.js';
import { changesSince, namedIssue } from '../repository/changes.js';
import type { Input } from '../repository/inputs.js';
import type { Standing } from '../repository/standing.js';
import { stateOf } from '../repository/state-at.js';

/** What the document tells of its past: values through time, issues, and what changed since the last of these. */
export async function documentHistory(
  loaded: Pick<Loaded, 'build' | 'evaluation'>,
  inputs: readonly Input[],
  standing: Standing,
): Promise<{ history: DocumentHistory; changes?: Changes }> {
  const { build } = loaded;
  const { repo, commit, date, issue } = standing;
  const [values, earlier] = await Promise.all([
    historyOf(repo, commit, shapes),
    issuesBefore(repo, issuesUnder(build), commit, issue?.letter),
  ]);
  const issues = issue ? [...earlier, { ...issue, commit, date }] : earlier;
  // Whether a branch is checked out makes no difference to what the commits hold, and none to the document.
  const limits = limitsOf({ ...repo, detached: false, bare: false, empty: false, ignored: false });
  const history: DocumentHistory = { values: { ...pointOutLate(values, build, kinds), limits }, issues };
  const last = earlier.at(-1);
  if (!last) return { history };
  const now = stateOf(loaded, inputs, issue ? `issue ${issue.letter}` : 'this draft', commit);
  const have = new Map(inputs.filter((i) => !i.text).map((i) => [i.blob, i.absolute]));
  return {
    history,
    changes: await changesSince(repo, build.name, namedIssue(last.letter, last.commit, last.madeWith), now, have),
  };
}
