import { sheet } from '../sheet.js';
import { elasticity, elasticitySource, shearModulus } from '../steel.js';

/** Does a replacement member bend, twist and stretch no more than the one it replaces? */
export const equivalentStiffness = sheet({
  id: 'equivalent-stiffness',
  subject: 'sections',
  title: 'Stiffness of a replacement member against the original',
  purpose:
    'Ratio, new over original, of the bending, torsion and axial stiffness of two members of the same length and the same ends.',
  inputs: {
    originalA: { symbol: 'A_1', unit: 'mm²', says: 'area of the original' },
    originalIx: { symbol: 'I_{x1}', unit: 'mm⁴', says: 'second moment about x of the original' },
    originalIy: { symbol: 'I_{y1}', unit: 'mm⁴', says: 'second moment about y of the original' },
    originalJ: { symbol: 'J_1', unit: 'mm⁴', says: 'torsion constant of the original' },
    replacementA: { symbol: 'A_2', unit: 'mm²', says: 'area of the replacement' },
    replacementIx: { symbol: 'I_{x2}', unit: 'mm⁴', says: 'second moment about x of the replacement' },
    replacementIy: { symbol: 'I_{y2}', unit: 'mm⁴', says: 'second moment about y of the replacement' },
    replacementJ: { symbol: 'J_2', unit: 'mm⁴', says: 'torsion constant of the replacement' },
    originalE: { symbol: 'E_1', says: 'modulus of elasticity of the original', ...elasticity },
    replacementE: { symbol: 'E_2', says: 'modulus of elasticity of the replacement', ...elasticity },
    originalG: { symbol: 'G_1', says: 'shear modulus of the original', ...shearModulus },
    replacementG: { symbol: 'G_2', says: 'shear modulus of the replacement', ...shearModulus },
  },
  results: {
    bendingX: {
      symbol: 'k_{Ix}',
      unit: '1',
      says: 'bending stiffness about x, new over original',
      tex: '\\frac{@replacementE \\cdot @replacementIx}{@originalE \\cdot @originalIx}',
    },
    bendingY: {
      symbol: 'k_{Iy}',
      unit: '1',
      says: 'bending stiffness about y, new over original',
      tex: '\\frac{@replacementE \\cdot @replacementIy}{@originalE \\cdot @originalIy}',
    },
    torsion: {
      symbol: 'k_J',
      unit: '1',
      says: 'torsion stiffness, new over original',
      tex: '\\frac{@replacementG \\cdot @replacementJ}{@originalG \\cdot @originalJ}',
    },
    axial: {
      symbol: 'k_A',
      unit: '1',
      says: 'axial stiffness, new over original',
      tex: '\\frac{@replacementE \\cdot @replacementA}{@originalE \\cdot @originalA}',
    },
  },
  assumptions: [
    'Same length, same position and same fixing at both ends.',
    'The x axis of both members lies the same way in the vehicle.',
    'The original counts as it was made: take its sizes where it is not corroded. A wall that is known only where it has wasted is taken less the loss, and said to be so.',
    'Two steels have one modulus, and its uncertainty is that of both, so that it cancels.',
  ],
  sources: [
    { document: 'Elastic beam, shaft and bar: stiffness goes with EI, GJ and EA', basis: 'derived' },
    elasticitySource,
  ],
  validity: [
    {
      says: 'areas, second moments, torsion constants and moduli must be greater than zero',
      holds: (x) => Object.values(x).every((n) => n > 0),
    },
  ],
  calculate: (x) => {
    const [E, G] = [x.replacementE / x.originalE, x.replacementG / x.originalG];
    return {
      bendingX: E * (x.replacementIx / x.originalIx),
      bendingY: E * (x.replacementIy / x.originalIy),
      torsion: G * (x.replacementJ / x.originalJ),
      axial: E * (x.replacementA / x.originalA),
    };
  },
  remark:
    'Below 1 the new member is softer there. Well above 1 it draws load: the same movement makes more force, and that force goes into what it is welded to.',
  examples: [
    {
      given: {
        originalA: '2.94 cm²',
        originalIx: '9.54 cm⁴',
        originalIy: '4.29 cm⁴',
        originalJ: '9.77 cm⁴',
        replacementA: '3.61 cm²',
        replacementIx: '7.27 cm⁴',
        replacementIy: '4.60 cm⁴',
        replacementJ: '9.72 cm⁴',
      },
      gives: { bendingX: '0.762', bendingY: '1.072', torsion: '0.995', axial: '1.228' },
      source: {
        document: 'Rows 50 × 30 × 2 and 40 × 30 × 3 of the EN 10219:2006 table; the ratios are ours, regression only',
        basis: 'derived',
      },
    },
  ],
});
