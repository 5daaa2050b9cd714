import type { Missing, Work } from '../../engine/work.js';

/** Says what a number lacks that an item records and does not judge; an answer in words stands in its place. */
export function tellMissing(item: string, subject: string, { missing, reason, run }: Missing, work: Work): void {
  if (work.isAnswered(item)) return;
  const measure = missing.length > 0;
  work.state(
    item,
    subject,
    'missing',
    measure ? `not measured: ${missing.map((m) => m.says).join('; ')}` : `no number: ${reason}`,
    {
      todo: measure
        ? `fill in ${missing.map((m) => `${m.where}${m.how ? ` (${m.how})` : ''}`).join('; ')}`
        : 'look at the measurements again',
      run,
      path: missing[0]?.path ?? [],
    },
  );
}
