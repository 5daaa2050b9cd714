import type { Finding } from './finding.js';

const weight: Record<Finding['outcome'], number> = {
  nonconforming: 0,
  undecided: 1,
  missing: 2,
  unconfirmed: 3,
  conforming: 4,
  notApplicable: 5,
};
/** Most serious first; of equals, in the order of the notes. */
export const bySeriousness = (a: Finding, b: Finding): number =>
  Number(b.stop && b.outcome === 'nonconforming') - Number(a.stop && a.outcome === 'nonconforming') ||
  weight[a.outcome] - weight[b.outcome];
