import { sheet } from '../sheet.js';

/** Does a replacement member carry as much as the one it replaces? */
export const equivalentStrength = sheet({
  id: 'equivalent-strength',
  subject: 'sections',
  title: 'Strength of a replacement member against the original',
  purpose: 'Ratio, new over original, of the bending and axial strength at first yield of two members.',
  inputs: {
    originalA: { symbol: 'A_1', unit: 'mm²', says: 'area of the original' },
    originalZx: { symbol: 'Z_{x1}', unit: 'mm³', says: 'elastic modulus about x of the original' },
    originalZy: { symbol: 'Z_{y1}', unit: 'mm³', says: 'elastic modulus about y of the original' },
    originalYield: {
      symbol: 'f_{y1}',
      unit: 'MPa',
      says: 'yield strength of the original: the greatest that it may have, where it is known as a range',
    },
    replacementA: { symbol: 'A_2', unit: 'mm²', says: 'area of the replacement' },
    replacementZx: { symbol: 'Z_{x2}', unit: 'mm³', says: 'elastic modulus about x of the replacement' },
    replacementZy: { symbol: 'Z_{y2}', unit: 'mm³', says: 'elastic modulus about y of the replacement' },
    replacementYield: { symbol: 'f_{y2}', unit: 'MPa', says: 'yield strength of the replacement' },
  },
  results: {
    bendingX: {
      symbol: 'r_{Mx}',
      unit: '1',
      says: 'bending strength about x, new over original',
      tex: '\\frac{@replacementZx \\cdot @replacementYield}{@originalZx \\cdot @originalYield}',
    },
    bendingY: {
      symbol: 'r_{My}',
      unit: '1',
      says: 'bending strength about y, new over original',
      tex: '\\frac{@replacementZy \\cdot @replacementYield}{@originalZy \\cdot @originalYield}',
    },
    axial: {
      symbol: 'r_N',
      unit: '1',
      says: 'axial strength, new over original',
      tex: '\\frac{@replacementA \\cdot @replacementYield}{@originalA \\cdot @originalYield}',
    },
  },
  assumptions: [
    'First yield of the whole section; neither member buckles, locally or as a whole, before it yields.',
    'Yield strength of the parent metal. Welding softens cold-formed and high-strength steel beside the weld: away from the ends the ratio holds, at the welds a procedure and a test are needed.',
    'The x axis of both members lies the same way in the vehicle.',
    'The original counts as its maker made it, with its full wall. Taking the least yield strength of its grade for it would flatter the replacement.',
  ],
  sources: [{ document: 'Elastic section at first yield: M = Z f_y, N = A f_y', basis: 'derived' }],
  validity: [
    {
      says: 'areas, moduli and yield strengths must be greater than zero',
      holds: (x) => Object.values(x).every((n) => n > 0),
    },
  ],
  calculate: (x) => {
    const steel = x.replacementYield / x.originalYield;
    return {
      bendingX: (x.replacementZx / x.originalZx) * steel,
      bendingY: (x.replacementZy / x.originalZy) * steel,
      axial: (x.replacementA / x.originalA) * steel,
    };
  },
  remark:
    'Stronger steel is not stiffer: a ratio above 1 here says nothing about stiffness, which has a sheet of its own.',
  examples: [
    {
      given: {
        originalA: '2.94 cm²',
        originalZx: '3.81 cm³',
        originalZy: '2.86 cm³',
        originalYield: '235 MPa',
        replacementA: '3.61 cm²',
        replacementZx: '3.63 cm³',
        replacementZy: '3.07 cm³',
        replacementYield: '355 MPa',
      },
      gives: { bendingX: '1.439', bendingY: '1.622', axial: '1.855' },
      source: {
        document: 'Rows 50 × 30 × 2 and 40 × 30 × 3 of the EN 10219:2006 table; the ratios are ours, regression only',
        basis: 'derived',
      },
    },
  ],
});
