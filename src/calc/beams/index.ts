import type { Sheet } from '../sheet.js';
import { beamCentreLoad, beamLoadAnywhere, cantilever } from './beam.js';
import { beamingTest } from './beaming-test.js';
import { closedTubeTorsion } from './closed-tube-torsion.js';
import { bendingAs4100, bendingEn1993 } from './section-capacity.js';
import { twistTest } from './twist-test.js';

export const sheets = [
  beamCentreLoad,
  beamLoadAnywhere,
  cantilever,
  bendingAs4100,
  bendingEn1993,
  closedTubeTorsion,
  twistTest,
  beamingTest,
] as unknown as readonly Sheet[];
