import type { Sheet } from '../sheet.js';
import { beamCentreLoad, beamLoadAnywhere, cantilever } from './beam.js';
import { beamingTest } from './beaming-test.js';
import { bendingAs4100, bendingEn1993 } from './section-capacity.js';
import { tubeTorsion } from './tube-torsion.js';
import { twistTest } from './twist-test.js';

export const sheets = [
  beamCentreLoad,
  beamLoadAnywhere,
  cantilever,
  bendingAs4100,
  bendingEn1993,
  tubeTorsion,
  twistTest,
  beamingTest,
] as unknown as readonly Sheet[];
