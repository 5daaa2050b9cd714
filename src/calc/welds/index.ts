import type { Sheet } from '../sheet.js';
import { buttAs4100, buttEn1993 } from './butt.js';
import { filletAs4100 } from './fillet-as4100.js';
import { filletEn1993 } from './fillet-en1993.js';
import { filletEn1993Directional } from './fillet-en1993-directional.js';
import { weldGroup } from './group.js';
import { edgeLegAs4100, legAs4100 } from './leg-as4100.js';

export const sheets = [
  filletAs4100,
  legAs4100,
  edgeLegAs4100,
  buttAs4100,
  filletEn1993,
  filletEn1993Directional,
  buttEn1993,
  weldGroup,
] as unknown as readonly Sheet[];
