import type { Doubt } from '../checks/engine/doubts.js';
import type { Finding } from '../checks/engine/finding.js';
import { textOf } from '../project/memory.js';
import type { Problem } from '../project/problem.js';

/** A finding that is new, gone, or no longer what it was. */
export interface Difference {
  before?: Finding;
  now?: Finding;
}

/** What differs between two looks at one build. Where a finding stands in its file makes no difference. */
export function differences(before: readonly Finding[], now: readonly Finding[]): Difference[] {
  const earlier = keyed(before);
  const later = keyed(now);
  const changed = [...later].flatMap(([key, finding]): Difference[] => {
    const was = earlier.get(key);
    if (!was) return [{ now: finding }];
    return told(was) === told(finding) ? [] : [{ before: was, now: finding }];
  });
  const gone = [...earlier].flatMap(([key, finding]): Difference[] => (later.has(key) ? [] : [{ before: finding }]));
  return [...changed, ...gone];
}

const told = ({ outcome, title, says, todo, marks, concession, stop }: Finding): string =>
  textOf([outcome, title, says, todo, marks, concession, stop]);

/** One id may stand for several findings, such as those of one item on two lists; they are told apart by their order. */
function keyed(findings: readonly Finding[]): Map<string, Finding> {
  const seen = new Map<string, number>();
  return new Map(
    findings.map((f) => {
      const nth = seen.get(f.id) ?? 0;
      seen.set(f.id, nth + 1);
      return [`${f.id} ${nth}`, f];
    }),
  );
}

/** Problems that were not there before. One that only moved to another line is the same. */
export function newProblems(before: readonly Problem[], now: readonly Problem[]): Problem[] {
  const key = ({ code, file, found, expected, source }: Problem) => textOf([code, file, found, expected, source]);
  const known = new Set(before.map(key));
  return now.filter((p) => !known.has(key(p)));
}

/** Doubts that were not there before, and those whose value is in doubt no more; a value that is doubtful in another way is new. */
export function newDoubts(before: readonly Doubt[], now: readonly Doubt[]): { fresh: Doubt[]; gone: Doubt[] } {
  const value = ({ note, place }: Doubt) => textOf([note, place.path]);
  const whole = (d: Doubt) => textOf([value(d), d.found, d.expected, d.hint]);
  const [earlier, later] = [new Set(before.map(whole)), new Set(now.map(value))];
  return { fresh: now.filter((d) => !earlier.has(whole(d))), gone: before.filter((d) => !later.has(value(d))) };
}
