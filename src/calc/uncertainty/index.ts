import type { Sheet } from '../sheet.js';
import { combinedUncertainty, typeAUncertainty } from './combination.js';
import { conformityProbability, guardBand } from './conformity.js';
import { coverageFactor } from './coverage.js';

export const sheets = [typeAUncertainty, combinedUncertainty, coverageFactor, conformityProbability, guardBand] as unknown as readonly Sheet[];
