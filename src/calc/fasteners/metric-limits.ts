import { coarse, fine } from './iso898.js';
import type { ThreadLimits } from './limits-of-size.js';

/** By pitch in mm: fundamental deviation of g, tolerance of the external major and of the internal minor diameter at grade 6, µm. */
const byPitch: Readonly<Record<number, readonly [es: number, Td: number, TD1: number]>> = {
  0.7: [22, 140, 180],
  0.8: [24, 150, 200],
  1: [26, 180, 236],
  1.25: [28, 212, 265],
  1.5: [32, 236, 300],
  1.75: [34, 265, 335],
  2: [38, 280, 375],
  2.5: [42, 335, 450],
  3: [48, 375, 500],
};

/** By diameter up to, mm, and pitch, mm: tolerance of the external and of the internal pitch diameter at grade 6, µm. */
const byDiameter: readonly (readonly [upTo: number, Readonly<Record<number, readonly [Td2: number, TD2: number]>>])[] =
  [
    [5.6, { 0.7: [90, 118], 0.8: [95, 125] }],
    [11.2, { 1: [112, 150], 1.25: [118, 160], 1.5: [132, 180] }],
    [22.4, { 1: [118, 160], 1.25: [132, 180], 1.5: [140, 190], 1.75: [150, 200], 2: [160, 212], 2.5: [170, 224] }],
    [45, { 1.5: [150, 200], 2: [170, 224], 3: [200, 265] }],
  ];

/** Limits, m, of an ISO metric thread of tolerance 6g in a tapped hole of tolerance 6H (ISO 965-1). */
export function metricLimits(d: number, P: number): ThreadLimits | undefined {
  const pitch = byPitch[P];
  const diameters = byDiameter.find(([upTo]) => d <= upTo)?.[1][P];
  if (!pitch || !diameters) return undefined;
  const [es, Td, TD1] = pitch.map((x) => x / 1000) as [number, number, number];
  const [Td2, TD2] = [diameters[0] / 1000, diameters[1] / 1000];
  const pitchDiameter = d - 0.649519 * P;
  const mm = 1e-3;
  return {
    d: d * mm,
    P: P * mm,
    boltMajorMin: (d - es - Td) * mm,
    boltPitchMin: (pitchDiameter - es - Td2) * mm,
    nutMinorMax: (d - 1.082532 * P + TD1) * mm,
    nutPitchMax: (pitchDiameter + TD2) * mm,
  };
}

export const metricThreads: readonly { thread: string; d: number; P: number }[] = [...coarse, ...fine];
