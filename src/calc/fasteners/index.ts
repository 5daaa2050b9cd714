import type { Sheet } from '../sheet.js';
import { boltLoadsCoarse, boltLoadsFine } from './bolt-loads.js';
import { metricStressAreaSheet, unifiedStressAreaSheet } from './stress-area.js';
import { threadEngagement } from './thread-engagement.js';

export const sheets = [
  metricStressAreaSheet,
  unifiedStressAreaSheet,
  boltLoadsCoarse,
  boltLoadsFine,
  threadEngagement,
] as unknown as readonly Sheet[];
