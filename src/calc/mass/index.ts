import type { Sheet } from '../sheet.js';
import { axleMasses, cornerMasses } from './centre.js';
import { centreOfMassHeight } from './height.js';
import { axleLoadChange, axleLoads, massAdded } from './loads.js';

export const sheets = [axleMasses, cornerMasses, centreOfMassHeight, axleLoads, massAdded, axleLoadChange] as unknown as readonly Sheet[];
