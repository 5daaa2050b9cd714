import { type Finding, type Result, resultOf } from './finding.js';

const weight: Readonly<Record<Result, number>> = {
  against: 0,
  contradicted: 0,
  unclear: 1,
  partly: 2,
  missing: 2,
  unconfirmed: 3,
  met: 4,
  out: 5,
};

const stops = (f: Finding): number => Number(f.stop === true && weight[resultOf(f.outcome)] === 0);
const weightOf = (f: Finding): number => (f.waits === undefined ? weight[resultOf(f.outcome)] : weight.unclear);

/** Most serious first; of equals, in the order of the notes. */
export const bySeverity = (a: Finding, b: Finding): number => stops(b) - stops(a) || weightOf(a) - weightOf(b);
