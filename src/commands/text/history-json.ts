import type { Finding } from '../../checks/engine/finding.js';
import type { Changes } from '../../history/compare/compare.js';
import { type BuildHistory, isChanged } from '../../history/history.js';
import { jsonForm } from '../../project/format.js';

/** The stable, documented form of a history. Texts stand as they were committed. */
export function historyJson(build: string, commit: string, history: BuildHistory) {
  return {
    form: jsonForm('history'),
    build,
    commit,
    enteredOnce: history.fields.filter((f) => !isChanged(f)).length,
    fields: history.fields,
    unread: history.unread,
    limits: history.limits,
  };
}

/** The stable, documented form of what changed between two states. */
export function changesJson(build: string, changes: Changes) {
  const state = (f: Finding | undefined) => f && { outcome: f.outcome, says: f.says, concession: f.concession?.word };
  return {
    form: jsonForm('changes'),
    build,
    ...changes,
    outcomes: changes.outcomes.map(({ id, title, from, to }) => ({ id, title, from: state(from), to: state(to) })),
  };
}
