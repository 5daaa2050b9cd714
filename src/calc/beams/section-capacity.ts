import { sheet } from '../sheet.js';
import { parts, withinAs4100 } from '../welds/as4100.js';

const section = {
  elastic: { symbol: 'Z', unit: 'mm³', says: 'elastic modulus' },
  plastic: { symbol: 'S', unit: 'mm³', says: 'plastic modulus' },
  yield: { symbol: 'f_y', unit: 'MPa', says: 'yield strength' },
  thickness: { symbol: 't', unit: 'mm', says: 'least thickness of the section' },
} as const;
const sound = {
  says: 'moduli, yield strength and thickness must be greater than zero, and the plastic modulus not below the elastic one',
  holds: (x: { elastic: number; plastic: number; yield: number; thickness: number }) =>
    Math.min(x.elastic, x.yield, x.thickness) > 0 && x.plastic >= x.elastic,
};
const held =
  'The member is held against tipping sideways, or is a tube; welding has not softened it where the moment is greatest.';

/** Section moment capacity by AS 4100. */
export const bendingAs4100 = sheet({
  id: 'bending-as4100',
  subject: 'beams',
  title: 'Section moment capacity (AS 4100)',
  purpose: 'Design moment that a section takes in bending about one axis.',
  inputs: {
    ...section,
    made: { symbol: 'j', says: 'what the section is', choices: parts, usual: 'plate' },
    compactness: {
      symbol: 'c',
      says: 'how the section’s flats stand local buckling (slenderness by clause 5.2)',
      choices: {
        compact: 'compact: the effective modulus is the plastic one, at most 1.5 Z',
        limit: 'at the yield limit of a non-compact section: the effective modulus is the elastic one',
      },
      usual: 'limit',
    },
  },
  results: {
    effective: {
      symbol: 'Z_e',
      unit: 'mm³',
      says: 'effective modulus: Z, or for a compact section the lesser of S and 1.5 Z',
      step: true,
    },
    capacity: {
      symbol: '\\phi M_s',
      unit: 'kN·m',
      says: 'design section moment capacity',
      tex: '0.9 \\cdot @yield \\cdot @effective',
    },
  },
  assumptions: [held, 'A slender section (flats beyond the yield limit) carries less than this sheet says.'],
  sources: [
    {
      document: 'AS 4100 Steel structures',
      edition: '2020',
      clause: '5.2: section moment capacity; Table 3.4: φ = 0.9; 1.1: thickness covered',
      basis: 'memory',
    },
  ],
  validity: [
    sound,
    {
      says: 'AS 4100 is for steel of 3 mm and more (hollow sections to AS/NZS 1163 excepted): thinner sections go by a code for cold-formed steel or by test',
      holds: (x) => withinAs4100(x.thickness, x.made),
    },
  ],
  calculate: (x) => {
    const effective = x.compactness === 'compact' ? Math.min(x.plastic, 1.5 * x.elastic) : x.elastic;
    return { effective, capacity: 0.9 * x.yield * effective };
  },
  examples: [
    {
      given: {
        elastic: '4.52 cm³',
        plastic: '5.70 cm³',
        yield: '350 MPa',
        thickness: '2.5 mm',
        made: 'as-nzs-1163',
        compactness: 'compact',
      },
      gives: { capacity: '1.7955 kN·m' },
      source: { document: 'Worked by hand; regression only', basis: 'derived' },
    },
  ],
});

/** Moment resistance by EN 1993-1-1. */
export const bendingEn1993 = sheet({
  id: 'bending-en1993',
  subject: 'beams',
  title: 'Section moment resistance (EN 1993-1-1)',
  purpose: 'Design moment that a section takes in bending about one axis.',
  inputs: {
    ...section,
    made: {
      symbol: 'j',
      says: 'what the section is',
      choices: { open: 'plate or open section', hollow: 'hollow section' },
      usual: 'open',
    },
    class: {
      symbol: 'c',
      says: 'class of the cross-section (5.5)',
      choices: { plastic: 'class 1 or 2: plastic modulus', elastic: 'class 3: elastic modulus' },
      usual: 'elastic',
    },
    partial: { symbol: '\\gamma_{M0}', unit: '1', says: 'partial factor', usual: '1.00' },
  },
  results: {
    effective: { symbol: 'W', unit: 'mm³', says: 'modulus of the class', step: true },
    capacity: {
      symbol: 'M_{c,Rd}',
      unit: 'kN·m',
      says: 'design moment resistance',
      tex: '\\frac{@effective \\cdot @yield}{@partial}',
    },
  },
  assumptions: [held, 'A class 4 section (flats that buckle before they yield) carries less than this sheet says.'],
  sources: [
    {
      document: 'EN 1993-1-1',
      edition: '2005',
      clause: '6.2.5: bending; 3.2.4 and 1.1.2: thickness covered',
      basis: 'memory',
    },
  ],
  validity: [
    sound,
    { says: 'the partial factor must be greater than zero', holds: (x) => x.partial > 0 },
    {
      says: 'EN 1993-1-1 is for steel of 3 mm and more, hollow sections from 1.5 mm: thinner sections go by EN 1993-1-3 or by test',
      holds: (x) => x.thickness >= (x.made === 'hollow' ? 0.0015 : 0.003),
    },
  ],
  calculate: (x) => {
    const effective = x.class === 'plastic' ? x.plastic : x.elastic;
    return { effective, capacity: (effective * x.yield) / x.partial };
  },
  examples: [
    {
      given: {
        elastic: '4.52 cm³',
        plastic: '5.70 cm³',
        yield: '355 MPa',
        thickness: '2.5 mm',
        made: 'hollow',
        class: 'plastic',
      },
      gives: { capacity: '2.0235 kN·m' },
      source: { document: 'Worked by hand; regression only', basis: 'derived' },
    },
  ],
});
