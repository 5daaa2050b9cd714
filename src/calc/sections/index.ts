import type { Sheet } from '../sheet.js';
import { angleSection } from './angle.js';
import { boxSection } from './box.js';
import { builtUpSection } from './built-up.js';
import { channelSection } from './channel.js';
import { chsSection } from './chs.js';
import { closedTopHatSection } from './closed-top-hat.js';
import { equivalentStiffness } from './equivalent-stiffness.js';
import { equivalentStrength } from './equivalent-strength.js';
import { flatSection } from './flat.js';
import { lippedUSection } from './lipped-u.js';
import { rhsSection } from './rhs.js';
import { roundBarSection } from './round-bar.js';
import { thicknessRatio } from './thickness-ratio.js';
import { topHatSection } from './top-hat.js';
import { uSection } from './u-pressing.js';
import { utilisation } from './utilisation.js';

export type { SectionProperties } from './properties.js';
export { type SectionShape, sectionProperties } from './section-of.js';

export const sheets = [
  flatSection,
  roundBarSection,
  rhsSection,
  chsSection,
  angleSection,
  channelSection,
  topHatSection,
  closedTopHatSection,
  uSection,
  lippedUSection,
  boxSection,
  builtUpSection,
  equivalentStiffness,
  equivalentStrength,
  thicknessRatio,
  utilisation,
] as unknown as readonly Sheet[];
