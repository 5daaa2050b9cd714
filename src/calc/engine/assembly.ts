import { sheet } from '../sheet.js';

/** Bearing oil clearance of every journal that was measured. */
export const bearingClearance = sheet({
  id: 'bearing-clearance',
  subject: 'engine',
  title: 'Bearing oil clearance',
  purpose:
    'Oil clearance of each journal from the bore of its fitted shells, torqued, across the parting line’s square, and the journal.',
  inputs: {
    journals: {
      symbol: 'journals',
      says: 'one row a journal, in their order along the shaft',
      columns: {
        bore: {
          symbol: 'D_i',
          unit: 'mm',
          says: 'bore with shells fitted and caps torqued, measured square to the parting line',
        },
        journal: { symbol: 'd_i', unit: 'mm', says: 'journal diameter' },
      },
    },
  },
  results: {
    smallest: {
      symbol: 'c_{min}',
      unit: 'mm',
      says: 'smallest oil clearance, on the diameter',
      tex: '\\min_i (D_i - d_i)',
    },
    largest: {
      symbol: 'c_{max}',
      unit: 'mm',
      says: 'largest oil clearance, on the diameter',
      tex: '\\max_i (D_i - d_i)',
    },
    spread: { symbol: '\\Delta c', unit: 'mm', says: 'spread of the clearances', tex: '@largest - @smallest' },
  },
  method: 'The clearance of every journal is bore less journal; the smallest and the largest of them are given.',
  sources: [{ document: 'Difference of two diameters', basis: 'derived' }],
  validity: [
    { says: 'at least one journal must be measured', holds: (x) => x.journals.length > 0 },
    {
      says: 'every diameter must be greater than zero',
      holds: (x) => x.journals.every((j) => j.bore > 0 && j.journal > 0),
    },
  ],
  calculate: ({ journals }) => {
    const clearances = journals.map((j) => j.bore - j.journal);
    const [smallest, largest] = [Math.min(...clearances), Math.max(...clearances)];
    return { smallest, largest, spread: largest - smallest };
  },
  remark:
    'The engine maker’s or bearing maker’s figure is the limit. A micrometer and a bore gauge set with the same micrometer share its error, which then drops out.',
  examples: [
    {
      given: {
        journals: [
          { bore: '60.045 mm', journal: '59.990 mm' },
          { bore: '60.048 mm', journal: '59.988 mm' },
          { bore: '60.046 mm', journal: '59.994 mm' },
        ],
      },
      gives: { smallest: '0.052 mm', largest: '0.060 mm', spread: '0.008 mm' },
      source: { document: 'Differences, worked by hand', basis: 'derived' },
    },
  ],
});

/** Ring end gaps against what the ring’s maker asks for. */
export const ringGap = sheet({
  id: 'ring-gap',
  subject: 'engine',
  title: 'Piston ring end gap',
  purpose:
    'Smallest and largest end gap of one kind of ring, measured squared in its own bore, against the gap that the ring’s maker asks for.',
  inputs: {
    bore: { symbol: 'B', unit: 'mm', says: 'bore' },
    factor: { symbol: 'k', unit: '1', says: 'least gap for each unit of bore, from the ring maker’s sheet' },
    rings: {
      symbol: 'rings',
      says: 'one row a ring, in the order of the cylinders',
      columns: { gap: { symbol: 's_i', unit: 'mm', says: 'end gap' } },
    },
  },
  results: {
    asked: { symbol: 's_a', unit: 'mm', says: 'least gap that the maker asks for', tex: '@factor \\cdot @bore' },
    smallest: { symbol: 's_{min}', unit: 'mm', says: 'smallest gap', tex: '\\min_i s_i' },
    largest: { symbol: 's_{max}', unit: 'mm', says: 'largest gap', tex: '\\max_i s_i' },
    margin: {
      symbol: '\\Delta s',
      unit: 'mm',
      says: 'smallest gap above the least; negative where a ring must be filed',
      tex: '@smallest - @asked',
    },
  },
  method: 'The smallest and the largest gap of all rings are given.',
  sources: [{ document: 'The ring maker’s sheet', basis: 'practice' }],
  validity: [
    { says: 'the bore must be greater than zero', holds: (x) => x.bore > 0 },
    { says: 'the factor must be from 0.001 to 0.02', holds: (x) => x.factor >= 0.001 && x.factor <= 0.02 },
    { says: 'at least one gap must be measured', holds: (x) => x.rings.length > 0 },
    { says: 'no gap may be negative', holds: (x) => x.rings.every((r) => r.gap >= 0) },
  ],
  calculate: ({ bore, factor, rings }) => {
    const gaps = rings.map((r) => r.gap);
    const [asked, smallest, largest] = [factor * bore, Math.min(...gaps), Math.max(...gaps)];
    return { asked, smallest, largest, margin: smallest - asked };
  },
  remark:
    'A gap in a worn or tapered bore is measured where the bore is smallest. One millimetre more of bore opens a gap by 3.14 mm.',
  examples: [
    {
      given: {
        bore: '100 mm',
        factor: '0.004',
        rings: [{ gap: '0.42 mm' }, { gap: '0.45 mm' }, { gap: '0.43 mm' }, { gap: '0.40 mm' }],
      },
      gives: { asked: '0.40 mm', smallest: '0.40 mm', largest: '0.45 mm', margin: '0.00 mm' },
      source: { document: 'Worked by hand', basis: 'derived' },
    },
  ],
});
