import type { Sheet } from '../sheet.js';
import { adhesionUtilisation } from './adhesion.js';
import { dualBrakes, tandemBrakes } from './chain.js';
import { circuitFailure } from './circuit-failure.js';
import { brakeDisplacement } from './displacement.js';
import { brakeDistribution } from './distribution.js';
import { brakeFade } from './fade.js';
import { meanDeceleration, stoppingDistance, stoppingDistanceAllowed } from './test-run.js';
import { valveCrossing } from './valve-crossing.js';

export const sheets = [
  tandemBrakes,
  dualBrakes,
  brakeDisplacement,
  brakeDistribution,
  valveCrossing,
  adhesionUtilisation,
  circuitFailure,
  brakeFade,
  meanDeceleration,
  stoppingDistance,
  stoppingDistanceAllowed,
] as unknown as readonly Sheet[];
