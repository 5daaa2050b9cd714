import type { Sheet } from '../sheet.js';
import { adjusterRange, adjusterSetting, adjusterTurn } from './adjuster.js';
import { rodBuckling, tubeBuckling } from './buckling.js';
import { rodEndRating, rodTension, tubeTension } from './tension.js';

export const sheets = [rodTension, tubeTension, rodEndRating, rodBuckling, tubeBuckling, adjusterTurn, adjusterRange, adjusterSetting] as unknown as readonly Sheet[];
