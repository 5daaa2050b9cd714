/**
 * The piece between two lines at right angles and the quarter circle of radius r that touches both: what a rounded edge
 * lacks and what a root fillet adds. All constants follow from integrating over the square less the quarter circle.
 */
export const spandrel = {
  /** Area over r². */
  area: 1 - Math.PI / 4,
  /** Distance of the centroid from either line over r. */
  inset: (10 - 3 * Math.PI) / (12 - 3 * Math.PI),
  /** Second moment about its own centroid, parallel to either line, over r⁴. */
  inertia: 1 / 3 - Math.PI / 16 - 1 / (3 * (12 - 3 * Math.PI)),
  /** Product of inertia about its own centroid over r⁴, both axes pointing away from the corner. */
  product: 19 / 24 - Math.PI / 4 - (1 - Math.PI / 4) * ((10 - 3 * Math.PI) / (12 - 3 * Math.PI)) ** 2,
} as const;

/** Area of the spandrel of radius 1 within the distance u of either line, and its first moment about that line. */
export function spandrelWithin(u: number): { area: number; moment: number } {
  const v = 1 - u;
  const height = Math.sqrt(1 - v * v);
  const round = (Math.PI / 2 - v * height - Math.asin(v)) / 2;
  return { area: u - round, moment: (u * u) / 2 - round + height ** 3 / 3 };
}
