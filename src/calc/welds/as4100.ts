import type { Source } from '../sheet.js';
import { instead } from './joint.js';

/** Figures of AS 4100 for welds, all recalled: each report says so until somebody reads them in their own copy. */
export const as4100 = (clause: string): Source => ({
  document: 'AS 4100 Steel structures',
  edition: '2020',
  clause,
  basis: 'memory',
});

export const categories = {
  SP: 'structural purpose (AS/NZS 1554.1, category SP)',
  GP: 'general purpose (AS/NZS 1554.1, category GP)',
} as const;
export type Category = keyof typeof categories;

export const parts = {
  plate: 'plate, flat, rolled section, pressing or tube of another standard',
  'as-nzs-1163': 'hollow section to AS/NZS 1163',
} as const;
export type Joined = keyof typeof parts;

/** What binary fractions leave of a thickness that is exactly at a bound, m. */
const HAIR = 1e-9;

/** AS 4100 is for steel of 3 mm and more; hollow sections to AS/NZS 1163 may be thinner (clause 1.1), to their thinnest wall. SI. */
export function withinAs4100(thickness: number, joined: Joined): boolean {
  return thickness >= (joined === 'as-nzs-1163' ? 0.0016 : 0.003) - HAIR;
}

/** Largest leg along an edge (9.6.3.3): under 6 mm the thickness, from there up 1 mm less. m. */
export function edgeLeg(thickness: number): number {
  return thickness < 0.006 - HAIR ? thickness : thickness - 0.001;
}

/** The metal beside the weld, which bounds what any fillet passes on, with the inputs `yield` and `tensile`. */
export const parentSteps = (thickness: string) =>
  ({
    shear: {
      symbol: '\\phi v_p',
      unit: 'kN/mm',
      says: 'design capacity of the metal beside the weld in shear',
      tex: `0.9 \\cdot 0.6 \\cdot @yield \\cdot @${thickness}`,
      step: true,
    },
    tension: {
      symbol: '\\phi n_p',
      unit: 'kN/mm',
      says: 'design capacity of the metal beside the weld in tension',
      tex: `0.9 \\cdot \\min(@yield, 0.85 \\cdot @tensile) \\cdot @${thickness}`,
      step: true,
    },
  }) as const;

/** @returns N/m */
export const parent = (x: { yield: number; tensile: number }, thickness: number) => ({
  shear: 0.9 * 0.6 * x.yield * thickness,
  tension: 0.9 * Math.min(x.yield, 0.85 * x.tensile) * thickness,
});

export const parentSource = as4100('7.2 and 5.11.4: tension and shear of the parent metal');
export const edgeSource = as4100('9.6.3.3 (9.7.3.3 in the 1998 edition): largest size along edges');

/** Capacity factor of a fillet weld (Table 3.4); for a hollow section under 3 mm there is one for category SP only. */
export function filletFactor(category: Category, thickness: number): number {
  if (category === 'GP') return 0.6;
  return thickness < 0.003 - HAIR ? 0.7 : 0.8;
}

export const thinReason = `not calculable by AS 4100, which is for steel of 3 mm and more (hollow sections to AS/NZS 1163: 1.6 mm and more): ${instead}`;
export const thinHollowReason =
  'a weld to a hollow section under 3 mm must be of category SP: there is no capacity factor for category GP';
