import { rideHeight } from '../../calc/gearing/ride-height.js';
import type { Maybe, Work } from '../engine/work.js';

interface Heights {
  heights: { before: Maybe; after: Maybe };
  diameters: { before: Maybe; after: Maybe };
  clearance: Maybe;
}

/** How much higher an axle's end of the car stands by springs and tyres together, against what goes without and with a certificate. */
export function examineLift(axle: string, { heights, diameters, clearance }: Heights, work: Work) {
  const lift = work.sheet(rideHeight, axle, {
    heightBefore: heights.before,
    heightAfter: heights.after,
    diameterBefore: diameters.before,
    diameterAfter: diameters.after,
    clearanceBefore: clearance,
  });
  work.compare('suspension.lift', axle, lift.get('total'));
  return lift;
}
