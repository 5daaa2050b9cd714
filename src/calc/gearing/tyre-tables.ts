import type { Source } from '../sheet.js';

/**
 * Load indices and speed symbols of car tyres. The figures are those of ISO 4000-1 and UN Regulation No. 30, read in
 * tables that quote them. One table in circulation prints 857 kg for index 103 and 924 kg for index 105; both break the
 * series, which rises by 10^(1/80) a step, and the other tables read print 875 kg and 925 kg.
 */
export const tyreTableSource: Source = {
  document: 'ISO 4000-1 and UN Regulation No. 30, as quoted in tables of load indices and speed symbols',
  basis: 'quoted',
};

const FIRST = 60;
// prettier-ignore
const capacities: readonly number[] = [
  250, 257, 265, 272, 280, 290, 300, 307, 315, 325, 335, 345, 355, 365, 375, 387, 400, 412, 425, 437, 450, 462, 475,
  487, 500, 515, 530, 545, 560, 580, 600, 615, 630, 650, 670, 690, 710, 730, 750, 775, 800, 825, 850, 875, 900, 925,
  950, 975, 1000, 1030, 1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360, 1400, 1450, 1500, 1550,
];
export const LOAD_INDICES = { first: FIRST, last: FIRST + capacities.length - 1 } as const;

/** Load capacity in kg of one tyre in single fitment; undefined for an index outside the table. */
export function loadCapacity(index: number): number | undefined {
  return capacities[index - FIRST];
}

/** Greatest speed in km/h. J and K are recalled, not read again. ZR alone says only “above 240 km/h” and is left out. */
export const speedSymbols = {
  J: 100,
  K: 110,
  L: 120,
  M: 130,
  N: 140,
  P: 150,
  Q: 160,
  R: 170,
  S: 180,
  T: 190,
  U: 200,
  H: 210,
  V: 240,
  W: 270,
  Y: 300,
} as const;
export type SpeedSymbol = keyof typeof speedSymbols;

/**
 * Speeds in km/h between which the load capacity falls in a straight line, and the share left at the upper one. That of Y
 * is recalled, not read again.
 */
const derating: Partial<Record<SpeedSymbol, { from: number; to: number; left: number }>> = {
  V: { from: 210, to: 240, left: 0.91 },
  W: { from: 240, to: 270, left: 0.85 },
  Y: { from: 270, to: 300, left: 0.85 },
};

/** Share of the load capacity left at a speed in km/h; undefined above the speed of the symbol. */
export function loadShareAt(symbol: SpeedSymbol, speed: number): number | undefined {
  if (speed > speedSymbols[symbol]) return undefined;
  const falls = derating[symbol];
  if (!falls || speed <= falls.from) return 1;
  return 1 - (1 - falls.left) * ((speed - falls.from) / (falls.to - falls.from));
}
