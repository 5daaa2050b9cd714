import type { Source } from '../sheet.js';

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

export const thinReason =
  'EN 1993-1-8 is for parts of 4 mm and more (2.5 mm in its rules for hollow section joints): for thinner metal a welding procedure, a test coupon of the same joint and a crack test take the place of a calculated capacity';

/** Inputs that both methods for fillet welds share. */
export const filletInputs = {
  leg: { symbol: 'z', unit: 'mm', says: 'leg length; the shorter one if they differ' },
  length: { symbol: 'l', unit: 'mm', says: 'length of the weld, ends included' },
  thickness: { symbol: 't', unit: 'mm', says: 'thickness of the thinner part joined' },
  steel: { symbol: 's', says: 'steel of the weaker part', choices: steels },
  strength: { symbol: 'f_u', unit: 'MPa', says: 'tensile strength of the weaker part' },
  partial: { symbol: '\\gamma_{M2}', unit: '1', says: 'partial factor for joints', usual: '1.25' },
} as const;

interface Fillet {
  leg: number;
  length: number;
  thickness: number;
  strength: number;
  partial: number;
}

export const filletValidity = [
  {
    says: 'leg, length, thickness, strength and partial factor must be greater than zero',
    holds: (x: Fillet) => Math.min(x.leg, x.length, x.thickness, x.strength, x.partial) > 0,
  },
  { says: thinReason, holds: (x: Fillet) => x.thickness >= 0.004 },
  {
    says: 'the throat must be 3 mm or more to count (a leg of 4.25 mm)',
    holds: (x: Fillet) => x.leg / Math.SQRT2 >= 0.003,
  },
  {
    says: 'the effective length must be at least 30 mm and six throats, or the weld does not count',
    holds: (x: Fillet) => effective(x) >= Math.max(0.03, (6 * x.leg) / Math.SQRT2),
  },
];

/** Length less one throat at each end, m. */
export function effective({ leg, length }: Pick<Fillet, 'leg' | 'length'>): number {
  return length - 2 * (leg / Math.SQRT2);
}
