import type { Sheet } from '../sheet.js';
import { capacityFactor, engineCapacity } from './capacity.js';
import { mountReaction } from './mounts.js';

export const sheets = [engineCapacity, capacityFactor, mountReaction] as unknown as readonly Sheet[];
