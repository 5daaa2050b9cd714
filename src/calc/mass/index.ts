import type { Sheet } from '../sheet.js';
import { axleMasses, cornerMasses } from './centre.js';
import { centreOfMassHeight } from './height.js';
import { axleLoadChange, axleLoads, massAdded } from './loads.js';
import { ladenMass, unladenMass } from './states.js';

export const sheets = [
  axleMasses,
  cornerMasses,
  centreOfMassHeight,
  axleLoads,
  massAdded,
  axleLoadChange,
  unladenMass,
  ladenMass,
] as unknown as readonly Sheet[];
