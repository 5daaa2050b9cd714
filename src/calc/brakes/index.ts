import type { Sheet } from '../sheet.js';
import { adhesionUtilisation } from './adhesion.js';
import { brakeDistribution } from './distribution.js';
import { meanDeceleration, stoppingDistance, stoppingDistanceAllowed } from './test-run.js';

export const sheets = [brakeDistribution, adhesionUtilisation, meanDeceleration, stoppingDistance, stoppingDistanceAllowed] as unknown as readonly Sheet[];
