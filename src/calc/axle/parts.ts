import type { Source } from '../sheet.js';
import { type Links, length } from './linkage.js';

/** The side view that the sheets of a live axle share: x forward of the axle centre, z up from the ground, at ride height. */

const at = (symbol: string, says: string) => ({ symbol, unit: 'mm', says }) as const;

export const linkInputs = {
  lowerAxleX: at('x_1', 'lower arm, joint at the axle: forward of the axle centre'),
  lowerAxleZ: at('z_1', 'lower arm, joint at the axle: above the ground'),
  lowerBodyX: at('x_2', 'lower arm, joint at the body: forward of the axle centre'),
  lowerBodyZ: at('z_2', 'lower arm, joint at the body: above the ground'),
  upperAxleX: at('x_3', 'upper arm, joint at the axle: forward of the axle centre'),
  upperAxleZ: at('z_3', 'upper arm, joint at the axle: above the ground'),
  upperBodyX: at('x_4', 'upper arm, joint at the body: forward of the axle centre'),
  upperBodyZ: at('z_4', 'upper arm, joint at the body: above the ground'),
} as const;

export const centreInput = {
  centreZ: at('z_0', 'axle centre above the ground'),
} as const;

export const travelInputs = {
  bump: { symbol: 'b', unit: 'mm', says: 'travel of the axle up from ride height, to the stop' },
  droop: { symbol: 'r', unit: 'mm', says: 'travel of the axle down from ride height, to its limit' },
} as const;

type Coordinates = { readonly [K in keyof typeof linkInputs]: number };

export function linksOf(x: Coordinates & { centreZ?: number }): Links {
  return {
    lower: { axle: { x: x.lowerAxleX, z: x.lowerAxleZ }, body: { x: x.lowerBodyX, z: x.lowerBodyZ } },
    upper: { axle: { x: x.upperAxleX, z: x.upperAxleZ }, body: { x: x.upperBodyX, z: x.upperBodyZ } },
    centre: { x: 0, z: x.centreZ ?? 0 },
  };
}

export const linkValidity = {
  says: 'each arm must have two joints that lie apart',
  holds: (x: Coordinates) => length(linksOf(x).lower) > 0 && length(linksOf(x).upper) > 0,
} as const;

export const travelValidity = {
  says: 'bump and droop are both given as positive travel, and not both zero',
  holds: (x: { bump: number; droop: number }) => x.bump >= 0 && x.droop >= 0 && x.bump + x.droop > 0,
} as const;

export const linkAssumptions: readonly string[] = [
  'Side view of both sides alike: the axle moves straight up and down. Arms that run at an angle in plan count with their lengths in side view.',
  'Rigid joints; rubber lets the axle turn a little more or less. The body stays level.',
];

export const closureMethod =
  'Both arms keep their lengths. The movement of the axle along the car and its turn follow from these two equations by Newton’s method, led from ride height in small steps so that the position found is the one the axle moves into.';

export const closureSource: Source = { document: 'Length closure of a plane four-bar linkage', basis: 'derived' };
