import type { Value } from '../../calc/value.js';
import type { Limit } from '../codes/limit.js';
import { type Decision, decide } from './verdict.js';

/** What is not known beyond a range, such as the strength of a steel; the value compared is that at its least favourable end. */
export interface Range {
  /** The value at the other end. */
  best: Value;
  /** What would have to hold, by the share of its least favourable end at which the value just keeps the least that is asked. */
  onlyIf: (share: number) => string;
  /** What would settle it, as a phrase. */
  by: string;
  /** What to do for that. */
  todo: string;
}

/** What has to hold where one end of a range keeps the limit and the other does not; nothing where both come out alike. */
export function hangsOn(
  worst: Decision,
  { best, onlyIf }: Range,
  value: Pick<Value, 'si'>,
  limit: Limit,
): string | undefined {
  const open = worst.result === 'against' || worst.result === 'unclear';
  if (!open || !limit.min || decide(best, limit).result === 'against') return undefined;
  const guard = worst.rule === 'guarded' ? worst.expanded : 0;
  return onlyIf((value.si - guard) / limit.min.si);
}
