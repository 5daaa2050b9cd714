import type { Source } from '../../calc/sheet.js';

/** Channels by profile and depth: depth, width, web, flange and root radius in mm. */
export type ChannelRow = readonly [depth: number, width: number, web: number, flange: number, root: number];

/** Parallel-flange channels, to 150 mm deep. Area and second moments of 75 and 100 agree with the handbook's. */
export const pfc: readonly ChannelRow[] = [
  [75, 40, 3.8, 6.1, 8],
  [100, 50, 4.2, 6.7, 8],
  [125, 65, 4.7, 7.5, 8],
  [150, 75, 6, 9.5, 10],
];
export const pfcSource: Source = { document: 'AS/NZS 3679.1', clause: 'parallel-flange channels', basis: 'memory' };

export const upe: readonly ChannelRow[] = [
  [80, 50, 4, 7, 10],
  [100, 55, 4.5, 7.5, 10],
  [120, 60, 5, 8, 12],
  [140, 65, 5, 9, 12],
];
export const upeSource: Source = {
  document: 'EN 10365',
  clause: 'UPE channels, as quoted in a table of section properties',
  basis: 'quoted',
};

/** Root radius in mm of equal angles by leg in mm; the toe radius is half of it. The printed areas agree with it. */
export const angleRoots: Readonly<Record<number, number>> = {
  20: 3.5,
  25: 3.5,
  30: 5,
  40: 6,
  45: 7,
  50: 7,
  60: 8,
  70: 9,
  80: 10,
  90: 11,
  100: 12,
};
export const angleSource: Source = {
  document: 'EN 10056-1',
  clause: 'root and toe radii of equal angles',
  basis: 'memory',
};
