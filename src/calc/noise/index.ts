import type { Sheet } from '../sheet.js';
import { backgroundCorrection, energyMean, levelSum } from './levels.js';
import { stationarySpeed } from './stationary.js';

export const sheets = [energyMean, levelSum, backgroundCorrection, stationarySpeed] as unknown as readonly Sheet[];
