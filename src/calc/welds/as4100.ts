import type { Source } from '../sheet.js';

/** Figures of AS 4100 for welds, all recalled: each report says so until somebody reads them in their own copy. */
export const as4100 = (clause: string): Source => ({
  document: 'AS 4100 Steel structures',
  edition: '2020',
  clause,
  basis: 'memory',
});

export const categories = {
  SP: 'structural purpose (AS/NZS 1554.1, category SP)',
  GP: 'general purpose (AS/NZS 1554.1, category GP)',
} as const;
export type Category = keyof typeof categories;

export const parts = {
  plate: 'plate, flat, rolled section or tube of another standard',
  'as-nzs-1163': 'hollow section to AS/NZS 1163',
} as const;
export type Joined = keyof typeof parts;

/** AS 4100 is for steel of 3 mm and more; hollow sections to AS/NZS 1163 may be thinner (clause 1.1). SI. */
export function withinAs4100(thickness: number, joined: Joined): boolean {
  return thickness >= 0.003 || joined === 'as-nzs-1163';
}

/** Capacity factor of a fillet weld (Table 3.4); for a hollow section under 3 mm there is one for category SP only. */
export function filletFactor(category: Category, thickness: number): number {
  if (category === 'GP') return 0.6;
  return thickness < 0.003 ? 0.7 : 0.8;
}

export const thinReason =
  'AS 4100 is for steel of 3 mm and more (hollow sections to AS/NZS 1163 excepted): for thinner metal a welding procedure, a test coupon of the same joint and a crack test take the place of a calculated capacity';
export const thinHollowReason =
  'a weld to a hollow section under 3 mm must be of category SP: there is no capacity factor for category GP';
