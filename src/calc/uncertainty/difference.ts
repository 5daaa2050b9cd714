import { sheet } from '../sheet.js';

/** Difference of two measured lengths, with the uncertainty of both. */
export const lengthDifference = sheet({
  id: 'length-difference',
  subject: 'uncertainty',
  title: 'Difference of two lengths',
  purpose: 'How far a length has changed, or two sides differ, with the uncertainty of both measurements.',
  inputs: {
    before: { symbol: 'a', unit: 'mm', says: 'length before, or on the one side' },
    after: { symbol: 'b', unit: 'mm', says: 'length now, or on the other side' },
  },
  results: {
    change: { symbol: '\\Delta', unit: 'mm', says: 'second less first', tex: '@after - @before' },
    apart: { symbol: '|\\Delta|', unit: 'mm', says: 'difference either way', tex: '\\left|@after - @before\\right|' },
    share: {
      symbol: '\\delta',
      unit: '%',
      says: 'difference either way against the first',
      tex: '\\frac{@apart}{@before}',
    },
  },
  assumptions: [
    'Both were measured in the same state of load, with the errors of one reading independent of those of the other.',
  ],
  sources: [
    {
      document: 'JCGM 100 Guide to the expression of uncertainty in measurement',
      edition: '2008',
      clause: '5.1',
      basis: 'memory',
    },
  ],
  validity: [{ says: 'the first length must be greater than zero', holds: (x) => x.before > 0 }],
  calculate: ({ before, after }) => {
    const change = after - before;
    return { change, apart: Math.abs(change), share: Math.abs(change) / before };
  },
  examples: [
    {
      given: { before: '632 mm', after: '652 mm' },
      gives: { change: '20 mm', apart: '20 mm', share: '3.165 %' },
      source: { document: 'Subtraction, worked by hand', basis: 'derived' },
    },
  ],
});
