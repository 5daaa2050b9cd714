import { sheet } from '../sheet.js';
import { as4100, categories, parts, thinReason as thinAs, withinAs4100 } from './as4100.js';
import { en1993, thinReason as thinEn } from './en1993.js';

const plate = {
  width: { symbol: 'b', unit: 'mm', says: 'length of the weld, which is the width of the plate' },
  thickness: { symbol: 't', unit: 'mm', says: 'thickness of the thinner part' },
  yield: { symbol: 'f_y', unit: 'MPa', says: 'yield strength of the weaker part' },
  tensile: { symbol: 'f_u', unit: 'MPa', says: 'tensile strength of the weaker part' },
} as const;
const area = {
  symbol: 'A',
  unit: 'mm²',
  says: 'area of the thinner part at the weld',
  tex: '@width \\cdot @thickness',
  step: true,
} as const;
const positive = {
  says: 'width, thickness and strengths must be greater than zero, and the tensile strength not below the yield strength',
  holds: (x: { width: number; thickness: number; yield: number; tensile: number }) =>
    Math.min(x.width, x.thickness, x.yield) > 0 && x.tensile >= x.yield,
};
const assumptions = [
  'Complete penetration over the whole length, proved on a test coupon or by sectioning; consumable at least as strong as the parent metal.',
  'Tension or shear spread evenly; bending of the plate is checked on the section.',
];

/** A complete-penetration butt weld by AS 4100: the parent metal with the capacity factor of the weld. */
export const buttAs4100 = sheet({
  id: 'butt-weld-as4100',
  subject: 'welds',
  title: 'Capacity of a butt weld (AS 4100)',
  purpose: 'Design capacity in tension and shear of a complete-penetration butt weld between two plates.',
  inputs: {
    ...plate,
    joined: { symbol: 'j', says: 'what the thinner part is', choices: parts, usual: 'plate' },
    category: { symbol: 'c', says: 'weld category', choices: categories },
  },
  results: {
    area,
    factor: { symbol: '\\phi', unit: '1', says: 'capacity factor: 0.90 for SP, 0.60 for GP', step: true },
    tension: {
      symbol: '\\phi N_t',
      unit: 'kN',
      says: 'design capacity in tension',
      tex: '@factor \\cdot \\min(@area \\cdot @yield, 0.85 \\cdot @area \\cdot @tensile)',
    },
    shear: {
      symbol: '\\phi V',
      unit: 'kN',
      says: 'design capacity in shear along the weld',
      tex: '@factor \\cdot 0.6 \\cdot @area \\cdot @yield',
    },
  },
  assumptions,
  sources: [
    as4100('9.6.2.7 (9.7.2.7 in the 1998 edition): complete-penetration butt welds'),
    as4100('Table 3.4: capacity factors'),
    as4100('7.2 and 5.11.4: tension and shear of the parent metal'),
    as4100('1.1: thickness of steel covered'),
  ],
  validity: [positive, { says: thinAs, holds: (x) => withinAs4100(x.thickness, x.joined) }],
  calculate: (x) => {
    const A = x.width * x.thickness;
    const factor = x.category === 'SP' ? 0.9 : 0.6;
    return {
      area: A,
      factor,
      tension: factor * Math.min(A * x.yield, 0.85 * A * x.tensile),
      shear: factor * 0.6 * A * x.yield,
    };
  },
  examples: [
    {
      given: { width: '100 mm', thickness: '6 mm', yield: '320 MPa', tensile: '440 MPa', category: 'SP' },
      gives: { tension: '172.8 kN', shear: '103.68 kN' },
      source: { document: 'Worked by hand from the formulas; regression only', basis: 'derived' },
    },
  ],
});

/** A full-penetration butt weld by EN 1993-1-8: the resistance of the weaker part. */
export const buttEn1993 = sheet({
  id: 'butt-weld-en1993',
  subject: 'welds',
  title: 'Resistance of a butt weld (EN 1993-1-8)',
  purpose: 'Design resistance in tension and shear of a full-penetration butt weld between two plates.',
  inputs: {
    ...plate,
    partialYield: { symbol: '\\gamma_{M0}', unit: '1', says: 'partial factor for yielding', usual: '1.00' },
    partialTensile: { symbol: '\\gamma_{M2}', unit: '1', says: 'partial factor for rupture', usual: '1.25' },
  },
  results: {
    area,
    tension: {
      symbol: 'N_{t,Rd}',
      unit: 'kN',
      says: 'design resistance in tension',
      tex: '\\min\\left(\\frac{@area \\cdot @yield}{@partialYield}, \\frac{0.9 \\cdot @area \\cdot @tensile}{@partialTensile}\\right)',
    },
    shear: {
      symbol: 'V_{Rd}',
      unit: 'kN',
      says: 'design resistance in shear along the weld',
      tex: '\\frac{@area \\cdot @yield}{\\sqrt{3} \\cdot @partialYield}',
    },
  },
  assumptions,
  sources: [
    en1993('4.7.1: full-penetration butt welds'),
    { document: 'EN 1993-1-1', edition: '2005', clause: '6.2.3 and 6.2.6: tension and shear', basis: 'memory' },
    en1993('4.1: thickness covered'),
  ],
  validity: [
    positive,
    { says: 'partial factors must be greater than zero', holds: (x) => x.partialYield > 0 && x.partialTensile > 0 },
    { says: thinEn, holds: (x) => x.thickness >= 0.004 - 1e-9 },
  ],
  calculate: (x) => {
    const A = x.width * x.thickness;
    return {
      area: A,
      tension: Math.min((A * x.yield) / x.partialYield, (0.9 * A * x.tensile) / x.partialTensile),
      shear: (A * x.yield) / (Math.sqrt(3) * x.partialYield),
    };
  },
  examples: [
    {
      given: { width: '100 mm', thickness: '6 mm', yield: '275 MPa', tensile: '410 MPa' },
      gives: { tension: '165.0 kN', shear: '95.26 kN' },
      source: { document: 'Worked by hand from the formulas; regression only', basis: 'derived' },
    },
  ],
});
