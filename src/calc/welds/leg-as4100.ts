import { sheet } from '../sheet.js';
import { as4100, thinReason } from './as4100.js';

/** Smallest leg for the thicker part, m. */
function leastLeg(thicker: number): number {
  const beyond = (limit: number) => thicker > limit * (1 + 1e-9);
  if (beyond(0.015)) return 0.006;
  if (beyond(0.01)) return 0.005;
  return beyond(0.007) ? 0.004 : 0.003;
}

export const legAs4100 = sheet({
  id: 'fillet-leg-as4100',
  subject: 'welds',
  title: 'Smallest and largest leg of a fillet weld (AS 4100)',
  purpose:
    'Bounds of the leg: below the smallest, the thicker part chills the weld; above the largest, the edge of a plate is melted away and hides the true throat.',
  inputs: {
    thicker: { symbol: 't_1', unit: 'mm', says: 'thickness of the thicker part' },
    thinner: { symbol: 't_2', unit: 'mm', says: 'thickness of the thinner part, along whose edge the weld runs' },
  },
  results: {
    least: {
      symbol: 't_{w,min}',
      unit: 'mm',
      says: 'smallest leg: 3 mm to 7 mm of thicker part, 4 to 10, 5 to 15, 6 beyond, but no more than the thinner part',
    },
    most: {
      symbol: 't_{w,max}',
      unit: 'mm',
      says: 'largest leg along an edge: the thickness under 6 mm, 1 mm less from there up',
    },
  },
  method: 'Read from the table and the clause of the standard.',
  sources: [
    as4100('9.6.3.2 with its table (Table 9.7.3.2 in the 1998 edition): smallest size'),
    as4100('9.6.3.3 (9.7.3.3 in the 1998 edition): largest size along edges'),
    as4100('1.1: thickness of steel covered'),
  ],
  validity: [
    { says: 'the thicker part cannot be thinner than the other', holds: (x) => x.thicker >= x.thinner },
    { says: thinReason, holds: (x) => x.thinner >= 0.003 },
  ],
  calculate: ({ thicker, thinner }) => ({
    least: Math.min(leastLeg(thicker), thinner),
    most: thinner < 0.006 * (1 - 1e-9) ? thinner : thinner - 0.001,
  }),
  remark:
    'Pages in circulation print other smallest sizes for the same clause: read the table in your own copy before it decides anything.',
  examples: [
    {
      given: { thicker: '8 mm', thinner: '6 mm' },
      gives: { least: '4.0 mm', most: '5.0 mm' },
      source: as4100('9.6.3.2 and 9.6.3.3'),
    },
  ],
});
