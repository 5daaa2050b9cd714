/** The straight line y = intercept + slope · x through points by least squares (JCGM 100:2008, H.3). */
export interface Line {
  slope: number;
  intercept: number;
  /** Standard deviation of the points about the line; 0 for two points. */
  scatter: number;
  /** Standard uncertainty of the slope from that scatter; 0 for two points. */
  slopeError: number;
  /** Greatest distance of a point from the line in y. */
  greatest: number;
}

/** At least two points with different x are needed, else the slope is not finite. */
export function straightLine(points: readonly (readonly [x: number, y: number])[]): Line {
  const n = points.length;
  const mean = (axis: 0 | 1) => points.reduce((sum, p) => sum + p[axis], 0) / n;
  const [mx, my] = [mean(0), mean(1)];
  const sxx = points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  const slope = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / sxx;
  const intercept = my - slope * mx;
  const residuals = points.map(([x, y]) => y - intercept - slope * x);
  const scatter = n > 2 ? Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / (n - 2)) : 0;
  return {
    slope,
    intercept,
    scatter,
    slopeError: scatter / Math.sqrt(sxx),
    greatest: Math.max(...residuals.map(Math.abs)),
  };
}
