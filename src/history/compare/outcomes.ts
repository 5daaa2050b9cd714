import { type Limit, ruleOf } from '../../checks/codes/limit.js';
import type { Evaluation } from '../../checks/engine/examine.js';
import type { Finding } from '../../checks/engine/finding.js';

export interface OutcomeDifference {
  /** Of the later state where it is there. */
  id: string;
  title: string;
  from?: Finding;
  to?: Finding;
}

export interface LimitDifference {
  item: string;
  title: string;
  /** Subjects of the findings that it holds for. */
  subjects: string[];
  from?: Limit;
  to?: Limit;
}

/** Pairs the findings of both states; `idNow` gives the id that an earlier finding would have now. */
function pairs(
  from: Evaluation,
  to: Evaluation,
  idNow: (id: string) => string,
): { id: string; before?: Finding; after?: Finding }[] {
  const earlier = new Map(from.findings.map((f) => [idNow(f.id), f]));
  const now = new Set(to.findings.map((f) => f.id));
  const both = to.findings.map((after) => {
    const before = earlier.get(after.id);
    return before ? { id: after.id, before, after } : { id: after.id, after };
  });
  return [...both, ...[...earlier].filter(([id]) => !now.has(id)).map(([id, before]) => ({ id, before }))];
}

/** Findings that are new, gone, come out otherwise, or on which the certifier's word changed. */
export function outcomeDifferences(
  from: Evaluation,
  to: Evaluation,
  idNow: (id: string) => string,
): OutcomeDifference[] {
  return pairs(from, to, idNow).flatMap(({ id, before, after }) => {
    if (
      before?.of === after?.of &&
      before?.outcome === after?.outcome &&
      before?.waits === after?.waits &&
      before?.concession?.word === after?.concession?.word
    )
      return [];
    return [{ id, title: (after ?? before)!.title, ...(before && { from: before }), ...(after && { to: after }) }];
  });
}

/** Limits whose figure or source is another, told once for all the findings that they hold for. */
export function limitDifferences(from: Evaluation, to: Evaluation, idNow: (id: string) => string): LimitDifference[] {
  const found = new Map<string, LimitDifference>();
  for (const { before, after } of pairs(from, to, idNow)) {
    // A finding that is new or gone is told as such; so is one that lost or got its number.
    if (!before || !after || (!before.limit && !after.limit) || same(before.limit, after.limit)) continue;
    if (
      (!before.limit && before.outcome !== 'limit-not-confirmed') ||
      (!after.limit && after.outcome !== 'limit-not-confirmed')
    )
      continue;
    const key = JSON.stringify([after.item, before.limit, after.limit]);
    const known = found.get(key);
    if (known) known.subjects.push(after.subject);
    else
      found.set(key, {
        item: after.item,
        title: after.title,
        subjects: [after.subject],
        ...(before.limit && { from: before.limit }),
        ...(after.limit && { to: after.limit }),
      });
  }
  return [...found.values()];
}

/** A bound that is reckoned from measured facts changes with them; that is told by the values. */
function same(a: Limit | undefined, b: Limit | undefined): boolean {
  if (!a || !b) return a === b;
  const told = (limit: Limit) => {
    const { min, max, unit, from, document, edition, clause, basis, readBy, on } = limit;
    return JSON.stringify([
      from === undefined ? [min?.si, max?.si] : from,
      min?.strict,
      max?.strict,
      unit,
      limit.recommended,
      ruleOf(limit),
      document,
      edition,
      clause,
      basis,
      readBy,
      on,
    ]);
  };
  return told(a) === told(b);
}
