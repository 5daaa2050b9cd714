/**
 * Probability that a standard normal quantity lies at or below z. Relative error under 1e-12 over the whole range, the
 * far lower tail included: power series near zero, continued fraction (Abramowitz and Stegun, 26.2.11 and 26.2.14)
 * beyond.
 */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) return NaN;
  if (z < -NEAR) return tail(-z);
  if (z > NEAR) return 1 - tail(z);
  return 0.5 + density(z) * series(z);
}

/** Between the two methods; the series loses digits to cancellation beyond, the fraction converges slowly within. */
const NEAR = 2;

function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

function series(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > 1e-17; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return sum;
}

/** Probability above z > 0. */
function tail(z: number): number {
  let fraction = z;
  for (let k = 160; k >= 1; k--) fraction = z + k / fraction;
  return density(z) / fraction;
}
