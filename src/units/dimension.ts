/**
 * Exponents of base dimensions. Angle and sound level are base dimensions here, so that `deg` cannot pass as a ratio and
 * `dB(A)` cannot be added to a number without one.
 */
type Base = 'length' | 'mass' | 'time' | 'temperature' | 'angle' | 'current' | 'level';
export type Dimension = Readonly<Partial<Record<Base, number>>>;

const bases: readonly Base[] = ['length', 'mass', 'time', 'temperature', 'angle', 'current', 'level'];

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return bases.every((base) => (a[base] ?? 0) === (b[base] ?? 0));
}

/** The dimension of `a · bⁿ`. */
export function timesPower(a: Dimension, b: Dimension, n: number): Dimension {
  const product: Partial<Record<Base, number>> = {};
  for (const base of bases) {
    const exponent = (a[base] ?? 0) + n * (b[base] ?? 0);
    if (exponent !== 0) product[base] = exponent;
  }
  return product;
}
