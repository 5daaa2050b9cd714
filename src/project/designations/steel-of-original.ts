import type { Source } from '../../calc/sheet.js';
import type { Steel } from './steel.js';
import { type HardnessScale, hardnessReach, hardnessScales, hardnessSource, tensileOf } from './steel-hardness.js';

/** Parts of a body by what their steel may be. */
export const bodyParts = {
  panel: 'outer panel',
  floor: 'floor, tunnel or wheel house',
  crossmember: 'cross-member',
  rail: 'rail or chassis member',
  sill: 'sill',
  reinforcement: 'reinforcement inside another part',
  pillar: 'A, B or C pillar, or roof rail',
} as const;
export type BodyPart = keyof typeof bodyParts;

/** What a steel may yield at, Pa: never one figure only, for too low a one would flatter what replaces it. */
export interface YieldRange {
  least: number;
  most: number;
  because: string;
  /** The weakest that it rests on. */
  source: Source;
}

const practice: Source = { document: 'Common practice of the trade', basis: 'practice' };

/** Soft sheet for pressing, MPa: the least that its standard lets a designer assume (EN 10130, from memory). */
const SOFTEST = 140;

/**
 * Greatest yield strength, MPa, that the part may have in a car built before that year; common practice, no source. Soft sheet
 * before 1980; micro-alloyed sheet in members from then; dual-phase and martensitic sheet from the middle of the nineties;
 * press-hardened parts (1250 MPa) since. A part may be softer than that in any year.
 */
const most: readonly (readonly [before: string, by: Readonly<Record<BodyPart, number>>])[] = [
  ['1980', { panel: 280, floor: 280, crossmember: 350, rail: 350, sill: 280, reinforcement: 350, pillar: 280 }],
  ['1995', { panel: 300, floor: 350, crossmember: 450, rail: 450, sill: 450, reinforcement: 550, pillar: 450 }],
  ['2003', { panel: 300, floor: 450, crossmember: 800, rail: 800, sill: 800, reinforcement: 1250, pillar: 1250 }],
  ['9999', { panel: 450, floor: 1250, crossmember: 1250, rail: 1250, sill: 1250, reinforcement: 1250, pillar: 1250 }],
];

/** By how much a converted tensile strength may be off, and what share of it steels yield at; common practice, no source. */
const CONVERSION = 0.1;
const YIELD_SHARE = [0.45, 1] as const;

/** How much more than its least a grade without an upper bound may yield at; common practice, no source. */
const ABOVE_LEAST = 1.5;

/**
 * Yield strength of an original member as a range: of its steel where that is named, of a hardness reading, else of build date
 * and part. A certificate gives one figure.
 * @param built month or day of build, `1984-05`
 */
export function originalYield(of: {
  steel?: Steel | undefined;
  part?: BodyPart | undefined;
  built: string;
  hardness?: { reading: number; expanded: number; scale: HardnessScale } | undefined;
}): YieldRange | { unusable: string } {
  const { steel, part, built, hardness } = of;
  if (steel?.known === 'certificate' && steel.yield !== undefined)
    return {
      least: steel.yield,
      most: steel.yield,
      because: `${steel.text}, from its certificate`,
      source: { document: `certificate of ${steel.text}`, basis: 'quoted' },
    };
  if (steel?.known === 'grade' && steel.yield !== undefined)
    return {
      least: steel.yield,
      most: steel.yieldMost ?? steel.yield * ABOVE_LEAST,
      because: steel.yieldMost
        ? `${steel.text}, least and greatest yield strength of the grade`
        : `${steel.text}, least yield strength of the grade and ${ABOVE_LEAST} times that, since the grade has no upper bound`,
      source: (steel.yieldMost && steel.source) || practice,
    };
  return hardness ? byHardness(hardness) : byDate(built, part);
}

function byHardness({
  reading,
  expanded,
  scale,
}: {
  reading: number;
  expanded: number;
  scale: HardnessScale;
}): YieldRange | { unusable: string } {
  const [low, high] = [tensileOf(reading - expanded, scale), tensileOf(reading + expanded, scale)];
  if (low === undefined || high === undefined) {
    const [least, greatest] = hardnessReach(scale);
    return {
      unusable: `a hardness of ${reading} ${scale} is outside what the table converts to a strength (${least} to ${greatest} ${scale})`,
    };
  }
  return {
    least: low * (1 - CONVERSION) * YIELD_SHARE[0],
    most: high * (1 + CONVERSION) * YIELD_SHARE[1],
    because: `by its hardness of ${reading} ${scale} (${hardnessScales[scale]}), tensile strength by ISO 18265 within 10 %, of which steels yield at 0.45 to 1`,
    source: hardnessSource,
  };
}

function byDate(built: string, part: BodyPart | undefined): YieldRange {
  const [, by] = most.find(([before]) => built < before)!;
  const greatest = part === undefined ? Math.max(...Object.values(by)) : by[part];
  return {
    least: SOFTEST * 1e6,
    most: greatest * 1e6,
    because: `steel not known; ${part === undefined ? 'any part' : bodyParts[part]} of a car built ${built}`,
    source: practice,
  };
}
