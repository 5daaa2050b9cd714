import type { Sheet } from '../sheet.js';
import { adjusterSetting, adjusterTurn } from './adjuster.js';
import { adjusterRange } from './adjuster-range.js';
import { boltDouble, boltSingle } from './bolts.js';
import { rodBuckling, tubeBuckling } from './buckling.js';
import { bungWeld } from './bung.js';
import { crankedLink } from './cranked.js';
import { jointMisalignment } from './misalignment.js';
import { rodEndRating, rodTension, tubeTension } from './tension.js';

export const sheets = [
  rodTension,
  tubeTension,
  rodEndRating,
  rodBuckling,
  tubeBuckling,
  crankedLink,
  boltDouble,
  boltSingle,
  bungWeld,
  adjusterTurn,
  adjusterRange,
  adjusterSetting,
  jointMisalignment,
] as unknown as readonly Sheet[];
