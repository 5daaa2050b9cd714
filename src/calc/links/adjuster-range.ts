import { sheet } from '../sheet.js';
import {
  adjusterAssumption,
  ends,
  lengthPerTurn,
  perTurn,
  pitches,
  pitchesPositive,
  screwSource,
} from './adjuster-parts.js';

/** How far an adjuster with opposite hands can be turned before a thread runs short or runs home. */
export const adjusterRange = sheet({
  id: 'adjuster-range',
  subject: 'links',
  title: 'Range of an adjuster and engagement left at its ends',
  purpose:
    'The longest and shortest setting that leave the least engagement at both ends, and the thread engaged there.',
  inputs: {
    length: { symbol: 'l', unit: 'mm', says: 'length between the end joints now' },
    ...pitches,
    ...ends,
    homeA: {
      symbol: 'h_A',
      unit: 'mm',
      says: 'thread engaged at end A when screwed home: the shorter of male thread and tapped depth',
    },
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
    turnsIn: {
      symbol: 'N_i',
      unit: '1',
      says: 'turns left towards shorter',
      tex: '\\min\\left(\\frac{@homeA - @engagedA}{@pitchA},\\ \\frac{@homeB - @engagedB}{@pitchB}\\right)',
    },
    longest: { symbol: 'l_{max}', unit: 'mm', says: 'longest setting', tex: '@length + @turnsOut \\cdot @perTurn' },
    shortest: { symbol: 'l_{min}', unit: 'mm', says: 'shortest setting', tex: '@length - @turnsIn \\cdot @perTurn' },
    longestA: {
      symbol: 'e_{A,max}',
      unit: 'mm',
      says: 'thread engaged at end A at the longest setting',
      tex: '@engagedA - @turnsOut \\cdot @pitchA',
    },
    longestB: {
      symbol: 'e_{B,max}',
      unit: 'mm',
      says: 'thread engaged at end B at the longest setting',
      tex: '@engagedB - @turnsOut \\cdot @pitchB',
    },
    shortestA: {
      symbol: 'e_{A,min}',
      unit: 'mm',
      says: 'thread engaged at end A at the shortest setting',
      tex: '@engagedA + @turnsIn \\cdot @pitchA',
    },
    shortestB: {
      symbol: 'e_{B,min}',
      unit: 'mm',
      says: 'thread engaged at end B at the shortest setting',
      tex: '@engagedB + @turnsIn \\cdot @pitchB',
    },
  },
  assumptions: ['Left-hand thread at one end, right-hand at the other.', adjusterAssumption],
  sources: [screwSource],
  validity: [
    pitchesPositive,
    { says: 'the length must be greater than zero', holds: (x) => x.length > 0 },
    { says: 'no end can be engaged further than home', holds: (x) => x.engagedA <= x.homeA && x.engagedB <= x.homeB },
    {
      says: 'engagements must not be negative',
      holds: (x) => Math.min(x.engagedA, x.engagedB, x.leastA, x.leastB) >= 0,
    },
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
  remark:
    'A thread that cannot be seen needs a witness: measure the exposed thread on each side, and keep the two sides alike so that neither runs short first.',
  examples: [
    {
      given: {
        length: '620 mm',
        pitchA: '1.5 mm',
        pitchB: '1.5 mm',
        engagedA: '28 mm',
        engagedB: '25 mm',
        homeA: '40 mm',
        homeB: '40 mm',
        leastA: '22 mm',
        leastB: '22 mm',
      },
      gives: {
        perTurn: '3.0 mm',
        turnsOut: '2.0',
        turnsIn: '8.0',
        longest: '626 mm',
        shortest: '596 mm',
        longestA: '25 mm',
        longestB: '22 mm',
        shortestA: '40 mm',
        shortestB: '37 mm',
      },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
