import type { Source } from '../../calc/sheet.js';

/** Scales in which a hardness reading may be stated. */
export const hardnessScales = {
  HV: 'Vickers',
  HB: 'Brinell',
  HRB: 'Rockwell B, ball',
  HRC: 'Rockwell C, cone',
} as const;
export type HardnessScale = keyof typeof hardnessScales;

/** Tensile strength by hardness of unalloyed and low-alloy steel. The standard calls its strengths the least reliable of its conversions. */
export const hardnessSource: Source = {
  document: 'ISO 18265 (formerly DIN 50150)',
  clause: 'conversion for unalloyed and low-alloy steel, as quoted in two tables of hardness',
  basis: 'quoted',
};

/** Rows of the table: tensile strength in MPa; HV; HB; HRB. */
const soft: readonly (readonly [rm: number, hv: number, hb: number, hrb?: number])[] = [
  [255, 80, 76],
  [285, 90, 85.5],
  [320, 100, 95, 56.2],
  [350, 110, 105, 62.3],
  [385, 120, 114, 66.7],
  [415, 130, 124, 71.2],
  [450, 140, 133, 75],
  [480, 150, 143, 78.7],
  [510, 160, 152, 81.7],
  [545, 170, 162, 85],
  [575, 180, 171, 87.1],
  [610, 190, 181, 89.5],
  [640, 200, 190, 91.5],
  [675, 210, 199, 93.5],
  [705, 220, 209, 95],
  [740, 230, 219, 96.7],
  [770, 240, 228, 98.1],
  [800, 250, 238, 99.5],
];
/** The same above the reach of the ball: HRC in the last place. */
const hard: readonly (readonly [rm: number, hv: number, hb: number, hrc: number])[] = [
  [800, 250, 238, 22.2],
  [850, 265, 252, 24.8],
  [900, 280, 266, 27.1],
  [950, 295, 280, 29.2],
  [995, 310, 295, 31],
  [1060, 330, 314, 33.3],
  [1125, 350, 333, 35.5],
  [1190, 370, 352, 37.7],
  [1255, 390, 371, 39.8],
  [1320, 410, 390, 41.8],
  [1385, 430, 409, 43.6],
  [1455, 450, 428, 45.3],
  [1520, 470, 447, 46.9],
  [1595, 490, 466, 48.4],
  [1665, 510, 485, 49.8],
  [1740, 530, 504, 51.1],
  [1810, 550, 523, 52.3],
];

const points: Readonly<Record<HardnessScale, readonly (readonly [hardness: number, rm: number])[]>> = {
  HV: [...soft, ...hard.slice(1)].map(([rm, hv]) => [hv, rm]),
  HB: [...soft, ...hard.slice(1)].map(([rm, , hb]) => [hb, rm]),
  HRB: soft.flatMap(([rm, , , hrb]) => (hrb === undefined ? [] : [[hrb, rm] as const])),
  HRC: hard.map(([rm, , , hrc]) => [hrc, rm]),
};

/** Smallest and largest reading that the table converts. */
export function hardnessReach(scale: HardnessScale): readonly [number, number] {
  return [points[scale][0]![0], points[scale].at(-1)![0]];
}

/** Tensile strength in Pa, linear between the rows; nothing outside the table, where it does not hold. */
export function tensileOf(hardness: number, scale: HardnessScale): number | undefined {
  const rows = points[scale];
  const above = rows.findIndex(([h]) => h >= hardness);
  if (above < 0 || hardness < rows[0]![0]) return undefined;
  const [h2, rm2] = rows[above]!;
  const [h1, rm1] = rows[Math.max(0, above - 1)]!;
  return (h2 === h1 ? rm2 : rm1 + ((hardness - h1) / (h2 - h1)) * (rm2 - rm1)) * 1e6;
}
