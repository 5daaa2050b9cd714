/**
 * Student's t such that P(|T| ≤ t) = p, for a whole number of degrees of freedom (JCGM 100:2008, table G.2). The
 * distribution has a closed form there (Abramowitz and Stegun, 26.7.3 and 26.7.4).
 */
export function studentT(freedom: number, p: number): number {
  let low = 0;
  let high = 1;
  while (within(high, freedom) < p) high *= 2;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (within(middle, freedom) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** P(|T| ≤ t). */
function within(t: number, freedom: number): number {
  const theta = Math.atan2(t, Math.sqrt(freedom));
  const odd = freedom % 2 === 1;
  let term = odd ? Math.cos(theta) : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= ((k - 1) / k) * Math.cos(theta) ** 2;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (theta + Math.sin(theta) * sum) : Math.sin(theta) * sum;
}

/** Coverage probability of k = 2 for a normal distribution, for which table G.2 has a column. */
export const COVERAGE = 0.9545;

/**
 * Expanded type A uncertainty of the mean (JCGM 100:2008, 4.2.3 and G.3): t · s/√n. Undefined for one reading, which
 * says nothing of its own spread.
 */
export function typeA(readings: readonly number[]): number | undefined {
  const n = readings.length;
  if (n < 2) return undefined;
  const apart = readings.map((x) => x - readings[0]!);
  const mean = apart.reduce((a, b) => a + b, 0) / n;
  const squares = apart.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  return studentT(n - 1, COVERAGE) * Math.sqrt(squares / (n - 1) / n);
}
