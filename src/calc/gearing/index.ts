import type { Sheet } from '../sheet.js';
import { rideHeight } from './ride-height.js';
import { roadSpeed } from './road-speed.js';
import { speedometerChange, speedometerError } from './speedometer.js';
import { tyreDimensions } from './tyre-dimensions.js';
import { tyreRating } from './tyre-rating.js';
import { rimEdges, trackChange } from './wheel-place.js';

export const sheets = [
  tyreDimensions,
  tyreRating,
  roadSpeed,
  speedometerError,
  speedometerChange,
  rideHeight,
  trackChange,
  rimEdges,
] as unknown as readonly Sheet[];
