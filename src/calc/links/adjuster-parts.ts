/**
 * Change of length between the end joints for one turn.
 *
 * @param hands `opposite`: a body with a left- and a right-hand thread is turned; `same`: a body with two threads of one
 *   hand is turned; `single`: one end is taken off and turned on its thread (`pitchB` plays no part)
 */
export function lengthPerTurn(hands: 'opposite' | 'same' | 'single', pitchA: number, pitchB: number): number {
  return hands === 'opposite' ? pitchA + pitchB : hands === 'same' ? Math.abs(pitchA - pitchB) : pitchA;
}

export const screwSource = {
  document: 'Geometry of a screw thread: one turn moves one pitch',
  basis: 'derived',
} as const;
export const pitches = {
  pitchA: { symbol: 'P_A', unit: 'mm', says: 'pitch of the thread at end A' },
  pitchB: { symbol: 'P_B', unit: 'mm', says: 'pitch of the thread at end B' },
} as const;
export const pitchesPositive = {
  says: 'both pitches must be greater than zero',
  holds: (x: { pitchA: number; pitchB: number }) => x.pitchA > 0 && x.pitchB > 0,
} as const;
export const perTurn = {
  symbol: '\\Delta l_1',
  unit: 'mm',
  says: 'change of length per turn of the body',
  tex: '@pitchA + @pitchB',
} as const;
export const adjusterAssumption =
  'Single-thread starts. The lock nuts are loose while the body is turned and are tightened afterwards.';

export const ends = {
  engagedA: { symbol: 'e_A', unit: 'mm', says: 'thread engaged at end A now' },
  engagedB: { symbol: 'e_B', unit: 'mm', says: 'thread engaged at end B now' },
} as const;
