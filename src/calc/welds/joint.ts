/** What a fillet weld and the metal beside it have in common, whatever the standard. SI. */

export const joints = {
  lap: 'lap: the weld runs along the edge of a part that lies on the other',
  tee: 'tee or corner: one part stands on the other',
} as const;
export type JointForm = keyof typeof joints;

/** Inputs about the two parts joined. */
export const partInputs = {
  thickness: { symbol: 't_1', unit: 'mm', says: 'thickness of one part' },
  other: { symbol: 't_2', unit: 'mm', says: 'thickness of the other part' },
  joint: { symbol: 'j', says: 'form of the joint', choices: joints },
} as const;

export interface Joined {
  thickness: number;
  other: number;
}

export const thinnerStep = {
  symbol: 't',
  unit: 'mm',
  says: 'thickness of the thinner part',
  tex: '\\min(@thickness, @other)',
  step: true,
} as const;

export const thinner = ({ thickness, other }: Joined) => Math.min(thickness, other);

/** The least of what weld and parent metal hold. */
export const leastPerLength = {
  unit: 'kN/mm',
  says: 'design capacity for each length: the least of weld, shear and tension beside it',
  tex: '\\min(@weld, @shear, @tension)',
} as const;

export const parentAssumption =
  'The thinner part carries this weld alone, with the strengths of the weaker steel of both: of two welds on both sides of one part each has half of what its metal holds.';

/** What takes the place of a capacity where the metal is too thin for a standard. */
export const instead =
  'it is met by a welding procedure, a sectioned coupon of the same thickness and position and a crack test, or by a sheet-steel standard read at first hand';
