import { sheet } from '../sheet.js';
import { as4100, edgeLeg, edgeSource, thinReason, withinAs4100 } from './as4100.js';

/** Smallest leg for the thicker part, m. */
function leastLeg(thicker: number): number {
  const beyond = (limit: number) => thicker > limit * (1 + 1e-9);
  if (beyond(0.015)) return 0.006;
  if (beyond(0.01)) return 0.005;
  return beyond(0.007) ? 0.004 : 0.003;
}

const thinner = { symbol: 't_2', unit: 'mm', says: 'thickness of the thinner part' } as const;
const thick = { says: thinReason, holds: (x: { thinner: number }) => withinAs4100(x.thinner, 'plate') };
const remark =
  'Pages in circulation print other sizes for the same clauses: read the table in your own copy before it decides anything.';

export const legAs4100 = sheet({
  id: 'fillet-leg-as4100',
  subject: 'welds',
  title: 'Smallest leg of a fillet weld (AS 4100)',
  purpose: 'The leg below which the thicker part chills the weld, whatever the form of the joint.',
  inputs: { thicker: { symbol: 't_1', unit: 'mm', says: 'thickness of the thicker part' }, thinner },
  results: {
    least: {
      symbol: 't_{w,min}',
      unit: 'mm',
      says: 'smallest leg: 3 mm to 7 mm of thicker part, 4 to 10, 5 to 15, 6 beyond, but no more than the thinner part',
    },
  },
  method: 'Read from the table of the standard.',
  sources: [
    as4100('9.6.3.2 with its table (Table 9.7.3.2 in the 1998 edition): smallest size'),
    as4100('1.1: thickness of steel covered'),
  ],
  validity: [
    { says: 'the thicker part cannot be thinner than the other', holds: (x) => x.thicker >= x.thinner },
    thick,
  ],
  calculate: (x) => ({ least: Math.min(leastLeg(x.thicker), x.thinner) }),
  remark,
  examples: [{ given: { thicker: '8 mm', thinner: '6 mm' }, gives: { least: '4.0 mm' }, source: as4100('9.6.3.2') }],
});

export const edgeLegAs4100 = sheet({
  id: 'fillet-edge-leg-as4100',
  subject: 'welds',
  title: 'Largest leg of a fillet weld along an edge (AS 4100)',
  purpose:
    'The leg of a lap weld above which the edge of the part is melted away and hides the true throat. It says nothing about a tee or corner: there the metal beside the weld bounds what it passes on.',
  inputs: { thinner: { ...thinner, says: 'thickness of the part along whose edge the weld runs' } },
  results: {
    most: {
      symbol: 't_{w,max}',
      unit: 'mm',
      says: 'largest leg along an edge: the thickness under 6 mm, 1 mm less from there up',
    },
  },
  method: 'Read from the clause of the standard.',
  sources: [edgeSource, as4100('1.1: thickness of steel covered')],
  validity: [thick],
  calculate: (x) => ({ most: edgeLeg(x.thinner) }),
  remark,
  examples: [{ given: { thinner: '6 mm' }, gives: { most: '5.0 mm' }, source: as4100('9.6.3.3') }],
});
