import type { Sheet } from '../sheet.js';
import { chsSection } from './chs.js';
import { equivalentStiffness } from './equivalent-stiffness.js';
import { equivalentStrength } from './equivalent-strength.js';
import { flatSection } from './flat.js';
import { rhsSection } from './rhs.js';
import { roundBarSection } from './round-bar.js';
import { thicknessRatio } from './thickness-ratio.js';

export type { SectionProperties } from './properties.js';

export const sheets = [
  flatSection,
  roundBarSection,
  rhsSection,
  chsSection,
  equivalentStiffness,
  equivalentStrength,
  thicknessRatio,
] as unknown as readonly Sheet[];
