import type { Sheet } from '../sheet.js';
import { bearingClearance, ringGap } from './assembly.js';
import { capacityFactor, engineCapacity } from './capacity.js';
import { compressionRatio } from './compression.js';
import { mountReaction } from './mounts.js';
import { damperScale, topDeadCentre } from './timing.js';
import { permissibleUnbalance, unbalance } from './unbalance.js';

export const sheets = [
  engineCapacity,
  capacityFactor,
  compressionRatio,
  mountReaction,
  bearingClearance,
  ringGap,
  topDeadCentre,
  damperScale,
  unbalance,
  permissibleUnbalance,
] as unknown as readonly Sheet[];
