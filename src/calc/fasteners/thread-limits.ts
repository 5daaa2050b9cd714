import type { ThreadLimits } from './limits-of-size.js';
import { metricLimits, metricThreads } from './metric-limits.js';
import { unifiedLimits, unifiedThreads } from './unified-threads.js';

/** Every thread that has limits here, by its designation: metric 6g in 6H, Unified 2A in 2B. */
export const threadLimits: ReadonlyMap<string, ThreadLimits> = new Map([
  ...metricThreads.flatMap(({ thread, d, P }) => {
    const limits = metricLimits(d, P);
    return limits ? [[thread, limits] as const] : [];
  }),
  ...unifiedThreads.map(({ thread, D, n }) => [thread, unifiedLimits(D, n)] as const),
]);
