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

/** Area within the distance u of either line, in the units of r². */
export function spandrelArea(r: number, u: number): number {
  const v = r - u;
  const underArc = (w: number) => (w * Math.sqrt(Math.max(0, r * r - w * w)) + r * r * Math.asin(Math.min(1, w / r))) / 2;
  return r * u - (underArc(r) - underArc(v));
}
