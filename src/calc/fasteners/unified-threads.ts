import type { ThreadLimits } from './limits-of-size.js';

/** Unified coarse and fine threads of 1/4 to 1 in: nominal diameter in inches, threads for each inch. */
const series: Readonly<Record<'UNC' | 'UNF', readonly (readonly [size: string, D: number, n: number])[]>> = {
  UNC: [
    ['1/4', 0.25, 20],
    ['5/16', 0.3125, 18],
    ['3/8', 0.375, 16],
    ['7/16', 0.4375, 14],
    ['1/2', 0.5, 13],
    ['9/16', 0.5625, 12],
    ['5/8', 0.625, 11],
    ['3/4', 0.75, 10],
    ['7/8', 0.875, 9],
    ['1', 1, 8],
  ],
  UNF: [
    ['1/4', 0.25, 28],
    ['5/16', 0.3125, 24],
    ['3/8', 0.375, 24],
    ['7/16', 0.4375, 20],
    ['1/2', 0.5, 20],
    ['9/16', 0.5625, 18],
    ['5/8', 0.625, 18],
    ['3/4', 0.75, 16],
    ['7/8', 0.875, 14],
    ['1', 1, 12],
  ],
};

export const unifiedThreads: readonly { thread: string; D: number; n: number }[] = Object.entries(series).flatMap(
  ([name, rows]) => rows.map(([size, D, n]) => ({ thread: `${size}-${n} ${name}`, D, n })),
);

const inch = 0.0254;
const to = (places: number) => (x: number) => Number(x.toFixed(places));
const [thousandths, tenths, millionths] = [to(3), to(4), to(6)];

/**
 * Limits, m, of a Unified thread of class 2A in a tapped hole of class 2B, from the tolerance formulas of ASME B1.1 and
 * rounded as its tables are (the minor diameter to 0.001 in, the tolerance of the pitch diameter first to 0.000001 in, then all terms to 0.0001 in). D from 1/4 in up.
 */
export function unifiedLimits(D: number, n: number): ThreadLimits {
  const P = 1 / n;
  const tolerance = millionths(0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(D) + 0.015 * P ** (2 / 3));
  const allowance = tenths(0.3 * tolerance);
  const pitchDiameter = tenths(D - 0.64951905 * P);
  return {
    d: D * inch,
    P: P * inch,
    boltMajorMin: (D - allowance - tenths(0.06 * P ** (2 / 3))) * inch,
    boltPitchMin: (pitchDiameter - allowance - tenths(tolerance)) * inch,
    nutMinorMax: thousandths(D - 1.08253175 * P + 0.25 * P - 0.4 * P ** 2) * inch,
    nutPitchMax: (pitchDiameter + tenths(1.3 * tolerance)) * inch,
  };
}
