import { spandrel } from './spandrel.js';

/** A sheet of thickness `t` bent round a right angle with the inside radius `ri`, m, and what its two corner pieces are. */
export function bendOf(t: number, ri: number) {
  const ro = ri + t;
  return {
    effective: t,
    ro,
    outerArea: spandrel.area * ro ** 2,
    innerArea: spandrel.area * ri ** 2,
    outerInset: spandrel.inset * ro,
    innerInset: spandrel.inset * ri,
    outerInertia: spandrel.inertia * ro ** 4,
    innerInertia: spandrel.inertia * ri ** 4,
  };
}

const area = (r: string) => `\\left(1 - \\frac{\\pi}{4}\\right) \\cdot ${r}^2`;
const inset = (r: string) => `\\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi} \\cdot ${r}`;
const inertia = (r: string) =>
  `\\left(\\frac{1}{3} - \\frac{\\pi}{16} - \\frac{1}{3 \\cdot (12 - 3 \\cdot \\pi)}\\right) \\cdot ${r}^4`;

/** The steps of `bendOf`, for sheets with inputs `wall`, `loss` and `bend`. */
export const bendResults = {
  effective: { symbol: 't_e', unit: 'mm', says: 'thickness that counts', tex: '@wall - @loss', step: true },
  ro: { symbol: 'r_o', unit: 'mm', says: 'outside radius of the bends', tex: '@bend + @effective', step: true },
  outerArea: { symbol: 'A_o', unit: 'mm²', says: 'area that a bend lacks outside', tex: area('@ro'), step: true },
  innerArea: { symbol: 'A_i', unit: 'mm²', says: 'area that a bend has more inside', tex: area('@bend'), step: true },
  outerInset: {
    symbol: 'k_o',
    unit: 'mm',
    says: 'depth of the outer piece’s centroid below its corner',
    tex: inset('@ro'),
    step: true,
  },
  innerInset: {
    symbol: 'k_i',
    unit: 'mm',
    says: 'depth of the inner piece’s centroid below its corner',
    tex: inset('@bend'),
    step: true,
  },
  outerInertia: {
    symbol: 'I_o',
    unit: 'mm⁴',
    says: 'second moment of the outer piece about its own centroid',
    tex: inertia('@ro'),
    step: true,
  },
  innerInertia: {
    symbol: 'I_i',
    unit: 'mm⁴',
    says: 'second moment of the inner piece about its own centroid',
    tex: inertia('@bend'),
    step: true,
  },
} as const;

export const bendInput = {
  symbol: 'r',
  unit: 'mm',
  says: 'inside radius of the bends; with 0 the section counts as sharp-cornered and comes out slightly too large',
  usual: '0 mm',
} as const;

export const pressingSources = [
  { document: 'Geometry of rectangles and quarter circles, theorem of parallel axes', basis: 'derived' },
  {
    document: 'Roark’s Formulas for Stress and Strain',
    clause: 'torsion of thin open sections: J = Σ b t³/3',
    basis: 'memory',
  },
] as const;

export const pressingAssumptions = [
  'All bends are right angles with the same radius; the sheet has one thickness.',
  'The section keeps its shape: thin flats that buckle before they yield carry less than the moduli promise.',
  'An open section twists easily and warps; where both ends hold it from warping it is stiffer than J says.',
] as const;
