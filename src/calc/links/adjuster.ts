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

export const adjusterTurn = sheet({
  id: 'adjuster-turn',
  subject: 'links',
  title: 'Length change per turn of an adjuster',
  purpose:
    'How far one turn moves the end joints apart: the sum of the pitches for a left- and a right-hand thread, their difference for two threads of one hand.',
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
    factor: {
      symbol: 's',
      unit: '1',
      says: 'part of the second thread: +1 opposite hands, −1 same hand, 0 where only end A turns',
      step: true,
    },
    perTurn: { ...perTurn, tex: '\\left|@pitchA + @factor \\cdot @pitchB\\right|' },
  },
  assumptions: [adjusterAssumption],
  sources: [screwSource],
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

export const adjusterSetting = sheet({
  id: 'adjuster-setting',
  subject: 'links',
  title: 'Engagement at a new setting of an adjuster',
  purpose: 'Turns for a wanted change of length, and the thread that stays engaged at each end.',
  inputs: {
    change: { symbol: '\\Delta l', unit: 'mm', says: 'wanted change of length; longer is positive' },
    ...pitches,
    ...ends,
  },
  results: {
    perTurn: { ...perTurn, step: true },
    turns: { symbol: 'N', unit: '1', says: 'turns of the body', tex: '\\frac{@change}{@perTurn}' },
    leftA: {
      symbol: "e_A'",
      unit: 'mm',
      says: 'thread engaged at end A afterwards',
      tex: '@engagedA - @turns \\cdot @pitchA',
    },
    leftB: {
      symbol: "e_B'",
      unit: 'mm',
      says: 'thread engaged at end B afterwards',
      tex: '@engagedB - @turns \\cdot @pitchB',
    },
  },
  assumptions: ['Left-hand thread at one end, right-hand at the other.', adjusterAssumption],
  sources: [screwSource],
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
