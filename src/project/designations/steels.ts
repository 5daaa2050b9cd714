import type { Source } from '../../calc/sheet.js';

/** Minimum strengths, MPa, of one range of thicknesses, mm. */
interface SteelRow {
  /** Included. */
  upTo: number;
  yield: number;
  tensile: number;
}

/** A grade of steel with the strengths that its standard guarantees. */
export interface Grade {
  name: string;
  rows: readonly SteelRow[];
  /** The greatest yield strength, MPa, that the standard allows. */
  yieldMost?: number;
  source: Source;
  remark?: string;
}

/** Its higher tensile strength below 3 mm is left out, which is on the safe side. */
const en10025: Source = {
  document: 'EN 10025-2',
  clause: 'Table 7 (mechanical properties), as quoted in a table of steel grades',
  basis: 'quoted',
};
const as1163: Source = {
  document: 'AS/NZS 1163',
  clause: 'grades C250 to C450, as quoted in a summary of the standard',
  basis: 'quoted',
};
const as1163Recalled: Source = { document: 'AS/NZS 1163', basis: 'memory' };
const as4100 = (standard: string): Source => ({
  document: standard,
  clause: 'as listed in AS 4100, Table 2.1',
  basis: 'memory',
});
const en10130: Source = {
  document: 'EN 10130',
  clause: 'mechanical properties; least yield strength for design from its note',
  basis: 'memory',
};
const en10268: Source = { document: 'EN 10268', basis: 'memory' };

const row = (upTo: number, yield_: number, tensile: number): SteelRow => ({ upTo, yield: yield_, tensile });

const softSheet =
  'The standard guarantees a greatest yield strength only; the least one is what it lets a designer assume.';

export const grades: readonly Grade[] = [
  { name: 'S235', rows: [row(16, 235, 360), row(40, 225, 360)], source: en10025 },
  { name: 'S275', rows: [row(16, 275, 410), row(40, 265, 410)], source: en10025 },
  { name: 'S355', rows: [row(16, 355, 470), row(40, 345, 470)], source: en10025 },
  { name: 'C250', rows: [row(16, 250, 320)], source: as1163 },
  { name: 'C350', rows: [row(16, 350, 430)], source: as1163 },
  { name: 'C450', rows: [row(16, 450, 500)], source: as1163Recalled },
  { name: '3678-250', rows: [row(8, 280, 410), row(12, 260, 410), row(50, 250, 410)], source: as4100('AS/NZS 3678') },
  { name: '3678-350', rows: [row(12, 360, 450), row(20, 350, 450)], source: as4100('AS/NZS 3678') },
  {
    name: '3679.1-300',
    rows: [row(10, 320, 440), row(16, 300, 440)],
    source: as4100('AS/NZS 3679.1'),
    remark: 'Strengths of angles and channels; flats and bars have less above their own thicknesses.',
  },
  { name: 'HA250', rows: [row(8, 250, 350)], source: as4100('AS/NZS 1594') },
  { name: 'HA300', rows: [row(8, 300, 400)], source: as4100('AS/NZS 1594') },
  { name: 'HA350', rows: [row(8, 350, 430)], source: as4100('AS/NZS 1594') },
  { name: 'DC01', rows: [row(3, 140, 270)], yieldMost: 280, source: en10130, remark: softSheet },
  { name: 'DC03', rows: [row(3, 140, 270)], yieldMost: 240, source: en10130, remark: softSheet },
  { name: 'DC04', rows: [row(3, 140, 270)], yieldMost: 210, source: en10130, remark: softSheet },
  { name: 'HC260LA', rows: [row(3, 260, 350)], yieldMost: 330, source: en10268 },
  { name: 'HC300LA', rows: [row(3, 300, 380)], yieldMost: 380, source: en10268 },
  { name: 'HC340LA', rows: [row(3, 340, 410)], yieldMost: 420, source: en10268 },
];
