import type { Sheet } from '../sheet.js';
import { filletAs4100 } from './fillet-as4100.js';

export const sheets = [filletAs4100] as unknown as readonly Sheet[];
