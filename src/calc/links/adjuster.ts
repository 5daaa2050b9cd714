import { sheet } from '../sheet.js';

/**
 * Change of length between the end joints for one turn.
 *
 * @param hands `opposite`: a body with a left- and a right-hand thread is turned; `same`: a body with two threads of one
 *   hand is turned; `single`: one end is taken off and turned on its thread (`pitchB` plays no part)
 */
export function lengthPerTurn(hands: 'opposite' | 'same' | 'single', pitchA: number, pitchB: number): number {
  return hands === 'opposite' ? pitchA + pitchB : hands === 'same' ? Math.abs(pitchA - pitchB) : pitchA;
}

const source = { document: 'Geometry of a screw thread: one turn moves one pitch', basis: 'derived' } as const;
const pitches = {
  pitchA: { symbol: 'P_A', unit: 'mm', says: 'pitch of the thread at end A' },
  pitchB: { symbol: 'P_B', unit: 'mm', says: 'pitch of the thread at end B' },
} as const;
const pitchesPositive = {
  says: 'both pitches must be greater than zero',
  holds: (x: { pitchA: number; pitchB: number }) => x.pitchA > 0 && x.pitchB > 0,
} as const;
const perTurn = { symbol: '\\Delta l_1', unit: 'mm', says: 'change of length per turn of the body', tex: '@pitchA + @pitchB' } as const;
const single = 'Single-thread starts. The lock nuts are loose while the body is turned and are tightened afterwards.';

export const adjusterTurn = sheet({
  id: 'adjuster-turn',
  subject: 'links',
  title: 'Length change per turn of an adjuster',
  purpose: 'How far one turn moves the end joints apart: the sum of the pitches for a left- and a right-hand thread, their difference for two threads of one hand.',
  inputs: {
    hands: {
      symbol: '\\text{threads}',
      says: 'the threads of the two ends',
      choices: {
        opposite: 'left-hand at one end, right-hand at the other; the body is turned',
        same: 'the same hand at both ends; the body is turned',
        single: 'end A is taken off its bracket and turned on its own thread',
      },
    },
    ...pitches,
  },
  results: {
    factor: { symbol: 's', unit: '1', says: 'part of the second thread: +1 opposite hands, −1 same hand, 0 where only end A turns', step: true },
    perTurn: { ...perTurn, tex: '\\left|@pitchA + @factor \\cdot @pitchB\\right|' },
  },
  assumptions: [single],
  sources: [source],
  validity: [pitchesPositive],
  calculate: ({ hands, pitchA, pitchB }) => ({
    factor: { opposite: 1, same: -1, single: 0 }[hands],
    perTurn: lengthPerTurn(hands, pitchA, pitchB),
  }),
  examples: [
    {
      given: { hands: 'opposite', pitchA: '1/16 in', pitchB: '1/16 in' },
      gives: { perTurn: '3.175 mm' },
      source: { document: 'Two threads of 16 to the inch worked by hand, regression only', basis: 'derived' },
    },
    {
      given: { hands: 'same', pitchA: '1.5 mm', pitchB: '1.25 mm' },
      gives: { perTurn: '0.25 mm' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});

const ends = {
  engagedA: { symbol: 'e_A', unit: 'mm', says: 'thread engaged at end A now' },
  engagedB: { symbol: 'e_B', unit: 'mm', says: 'thread engaged at end B now' },
} as const;

/** How far an adjuster with opposite hands can be turned before a thread runs short or runs home. */
export const adjusterRange = sheet({
  id: 'adjuster-range',
  subject: 'links',
  title: 'Range of an adjuster and engagement left at its ends',
  purpose: 'The longest and shortest setting that leave the least engagement at both ends, and the thread engaged there.',
  inputs: {
    length: { symbol: 'l', unit: 'mm', says: 'length between the end joints now' },
    ...pitches,
    ...ends,
    homeA: { symbol: 'h_A', unit: 'mm', says: 'thread engaged at end A when screwed home: the shorter of male thread and tapped depth' },
    homeB: { symbol: 'h_B', unit: 'mm', says: 'thread engaged at end B when screwed home' },
    leastA: { symbol: 'm_A', unit: 'mm', says: 'least engagement allowed at end A, with its source' },
    leastB: { symbol: 'm_B', unit: 'mm', says: 'least engagement allowed at end B, with its source' },
  },
  results: {
    perTurn: { ...perTurn, step: true },
    turnsOut: {
      symbol: 'N_o',
      unit: '1',
      says: 'turns left towards longer (negative: an end is already too far out)',
      tex: '\\min\\left(\\frac{@engagedA - @leastA}{@pitchA},\\ \\frac{@engagedB - @leastB}{@pitchB}\\right)',
    },
    turnsIn: { symbol: 'N_i', unit: '1', says: 'turns left towards shorter', tex: '\\min\\left(\\frac{@homeA - @engagedA}{@pitchA},\\ \\frac{@homeB - @engagedB}{@pitchB}\\right)' },
    longest: { symbol: 'l_{max}', unit: 'mm', says: 'longest setting', tex: '@length + @turnsOut \\cdot @perTurn' },
    shortest: { symbol: 'l_{min}', unit: 'mm', says: 'shortest setting', tex: '@length - @turnsIn \\cdot @perTurn' },
    longestA: { symbol: 'e_{A,max}', unit: 'mm', says: 'thread engaged at end A at the longest setting', tex: '@engagedA - @turnsOut \\cdot @pitchA' },
    longestB: { symbol: 'e_{B,max}', unit: 'mm', says: 'thread engaged at end B at the longest setting', tex: '@engagedB - @turnsOut \\cdot @pitchB' },
    shortestA: { symbol: 'e_{A,min}', unit: 'mm', says: 'thread engaged at end A at the shortest setting', tex: '@engagedA + @turnsIn \\cdot @pitchA' },
    shortestB: { symbol: 'e_{B,min}', unit: 'mm', says: 'thread engaged at end B at the shortest setting', tex: '@engagedB + @turnsIn \\cdot @pitchB' },
  },
  assumptions: ['Left-hand thread at one end, right-hand at the other.', single],
  sources: [source],
  validity: [
    pitchesPositive,
    { says: 'the length must be greater than zero', holds: (x) => x.length > 0 },
    { says: 'no end can be engaged further than home', holds: (x) => x.engagedA <= x.homeA && x.engagedB <= x.homeB },
    { says: 'engagements must not be negative', holds: (x) => Math.min(x.engagedA, x.engagedB, x.leastA, x.leastB) >= 0 },
  ],
  calculate: (x) => {
    const perTurn = lengthPerTurn('opposite', x.pitchA, x.pitchB);
    const turnsOut = Math.min((x.engagedA - x.leastA) / x.pitchA, (x.engagedB - x.leastB) / x.pitchB);
    const turnsIn = Math.min((x.homeA - x.engagedA) / x.pitchA, (x.homeB - x.engagedB) / x.pitchB);
    return {
      perTurn,
      turnsOut,
      turnsIn,
      longest: x.length + turnsOut * perTurn,
      shortest: x.length - turnsIn * perTurn,
      longestA: x.engagedA - turnsOut * x.pitchA,
      longestB: x.engagedB - turnsOut * x.pitchB,
      shortestA: x.engagedA + turnsIn * x.pitchA,
      shortestB: x.engagedB + turnsIn * x.pitchB,
    };
  },
  remark: 'A thread that cannot be seen needs a witness: measure the exposed thread on each side, and keep the two sides alike so that neither runs short first.',
  examples: [
    {
      given: {
        length: '620 mm', pitchA: '1.5 mm', pitchB: '1.5 mm', engagedA: '28 mm', engagedB: '25 mm',
        homeA: '40 mm', homeB: '40 mm', leastA: '22 mm', leastB: '22 mm',
      },
      gives: { perTurn: '3.0 mm', turnsOut: '2.0', turnsIn: '8.0', longest: '626 mm', shortest: '596 mm', longestA: '25 mm', longestB: '22 mm', shortestA: '40 mm', shortestB: '37 mm' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});

export const adjusterSetting = sheet({
  id: 'adjuster-setting',
  subject: 'links',
  title: 'Engagement at a new setting of an adjuster',
  purpose: 'Turns for a wanted change of length, and the thread that stays engaged at each end.',
  inputs: { change: { symbol: '\\Delta l', unit: 'mm', says: 'wanted change of length; longer is positive' }, ...pitches, ...ends },
  results: {
    perTurn: { ...perTurn, step: true },
    turns: { symbol: 'N', unit: '1', says: 'turns of the body', tex: '\\frac{@change}{@perTurn}' },
    leftA: { symbol: "e_A'", unit: 'mm', says: 'thread engaged at end A afterwards', tex: '@engagedA - @turns \\cdot @pitchA' },
    leftB: { symbol: "e_B'", unit: 'mm', says: 'thread engaged at end B afterwards', tex: '@engagedB - @turns \\cdot @pitchB' },
  },
  assumptions: ['Left-hand thread at one end, right-hand at the other.', single],
  sources: [source],
  validity: [pitchesPositive],
  calculate: ({ change, pitchA, pitchB, engagedA, engagedB }) => {
    const perTurn = lengthPerTurn('opposite', pitchA, pitchB);
    const turns = change / perTurn;
    return { perTurn, turns, leftA: engagedA - turns * pitchA, leftB: engagedB - turns * pitchB };
  },
  examples: [
    {
      given: { change: '6 mm', pitchA: '1.5 mm', pitchB: '1.5 mm', engagedA: '28 mm', engagedB: '25 mm' },
      gives: { turns: '2.0', leftA: '25 mm', leftB: '22 mm' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
