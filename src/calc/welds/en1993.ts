import type { Source } from '../sheet.js';
import { instead, type Joined, type JointForm, leastPerLength, partInputs, thinner, thinnerStep } from './joint.js';

/** Figures of EN 1993-1-8 for welds, all recalled. */
export const en1993 = (clause: string): Source => ({
  document: 'EN 1993-1-8',
  edition: '2005',
  clause,
  basis: 'memory',
});

/** Steels by the name of Table 4.1; each has one correlation factor. */
const steels = {
  S235: 'S235: correlation factor 0.80',
  S275: 'S275: correlation factor 0.85',
  S355: 'S355: correlation factor 0.90',
  S420: 'S420: correlation factor 1.00',
  S460: 'S460: correlation factor 1.00',
} as const;
export type WeldedSteel = keyof typeof steels;

export const correlation: Readonly<Record<WeldedSteel, number>> = {
  S235: 0.8,
  S275: 0.85,
  S355: 0.9,
  S420: 1,
  S460: 1,
};

export const thinReason = `not calculable by EN 1993-1-8, which is for parts of 4 mm and more: ${instead}`;

/** Inputs that both methods for fillet welds share. */
export const filletInputs = {
  leg: { symbol: 'z', unit: 'mm', says: 'leg length; the shorter one if they differ' },
  length: { symbol: 'l', unit: 'mm', says: 'length of the weld, ends included' },
  ...partInputs,
  steel: { symbol: 's', says: 'steel of the weaker part', choices: steels },
  yield: { symbol: 'f_y', unit: 'MPa', says: 'yield strength of the weaker part' },
  strength: { symbol: 'f_u', unit: 'MPa', says: 'tensile strength of the weaker part' },
  partial: { symbol: '\\gamma_{M2}', unit: '1', says: 'partial factor for joints', usual: '1.25' },
  partialYield: { symbol: '\\gamma_{M0}', unit: '1', says: 'partial factor for yielding', usual: '1.00' },
} as const;

interface Fillet extends Joined {
  leg: number;
  length: number;
  joint: JointForm;
  yield: number;
  strength: number;
  partial: number;
  partialYield: number;
}

/** Steps up to the size of the weld that counts. */
export const sizeSteps = {
  thinner: thinnerStep,
  counted: {
    symbol: "z'",
    unit: 'mm',
    says: 'leg that counts: along the edge of a lap no more than the thickness there',
    step: true,
  },
  throat: { symbol: 'a', unit: 'mm', says: 'throat', tex: '\\frac{@counted}{\\sqrt{2}}', step: true },
  effectiveLength: {
    symbol: 'l_{eff}',
    unit: 'mm',
    says: 'effective length: one throat is taken off at each end',
    tex: '@length - 2 \\cdot @throat',
    step: true,
  },
} as const;

/** @returns lengths in m */
export function size(x: Pick<Fillet, 'leg' | 'length' | 'joint' | 'thickness' | 'other'>) {
  const thin = thinner(x);
  const counted = x.joint === 'lap' ? Math.min(x.leg, thin) : x.leg;
  const throat = counted / Math.SQRT2;
  return { thinner: thin, counted, throat, effectiveLength: x.length - 2 * throat };
}

/** The metal beside the weld, which bounds what any fillet passes on. */
export const parentSteps = {
  shear: {
    symbol: 'F_{v,Rd}',
    unit: 'kN/mm',
    says: 'design resistance of the thinner part beside the weld in shear',
    tex: '\\frac{@yield \\cdot @thinner}{\\sqrt{3} \\cdot @partialYield}',
    step: true,
  },
  tension: {
    symbol: 'F_{t,Rd}',
    unit: 'kN/mm',
    says: 'design resistance of the thinner part beside the weld in tension',
    tex: '\\min\\left(\\frac{@yield \\cdot @thinner}{@partialYield}, \\frac{0.9 \\cdot @strength \\cdot @thinner}{@partial}\\right)',
    step: true,
  },
} as const;

/** @returns N/m */
export function parent(x: Fillet) {
  const t = thinner(x);
  return {
    shear: (x.yield * t) / (Math.sqrt(3) * x.partialYield),
    tension: Math.min((x.yield * t) / x.partialYield, (0.9 * x.strength * t) / x.partial),
  };
}

export const filletPerLength = { symbol: 'F_{Rd}', ...leastPerLength } as const;

export const filletSources: readonly Source[] = [
  en1993('4.5.1 and 4.5.2: effective length and throat'),
  en1993('Table 4.1: correlation factors'),
  en1993('4.1: thickness covered'),
  {
    document: 'EN 1993-1-1',
    edition: '2005',
    clause: '6.2.3 and 6.2.6: tension and shear of the parts',
    basis: 'memory',
  },
  { document: 'The edge of a lap is no higher than the part is thick', basis: 'derived' },
];

export const filletValidity = [
  {
    says: 'leg, length, thicknesses, strengths and partial factors must be greater than zero, and the tensile strength not below the yield strength',
    holds: (x: Fillet) =>
      Math.min(x.leg, x.length, x.thickness, x.other, x.yield, x.partial, x.partialYield) > 0 && x.strength >= x.yield,
  },
  { says: thinReason, holds: (x: Fillet) => thinner(x) >= 0.004 - 1e-9 },
  {
    says: 'the throat must be 3 mm or more to count (a leg of 4.25 mm)',
    holds: (x: Fillet) => size(x).throat >= 0.003,
  },
  {
    says: 'the effective length must be at least 30 mm and six throats, or the weld does not count',
    holds: (x: Fillet) => size(x).effectiveLength >= Math.max(0.03, 6 * size(x).throat),
  },
];
