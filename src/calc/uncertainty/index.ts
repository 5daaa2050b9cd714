import type { Sheet } from '../sheet.js';
import { combinedUncertainty, typeAUncertainty } from './combination.js';
import { conformityProbability, guardBand } from './conformity.js';
import { coverageFactor } from './coverage.js';
import { lengthDifference } from './difference.js';

export const sheets = [
  typeAUncertainty,
  combinedUncertainty,
  coverageFactor,
  conformityProbability,
  guardBand,
  lengthDifference,
] as unknown as readonly Sheet[];
