import { OutOfRange, sheet } from '../sheet.js';

/** A length of less than this counts as none, m: what binary fractions leave of a difference. */
const NONE = 1e-9;

export const slipEngagement = sheet({
  id: 'slip-engagement',
  subject: 'driveline',
  title: 'Engagement of the slip joint through travel',
  purpose:
    'How much spline is left engaged where the shaft is longest, and how much room is left where it is shortest.',
  inputs: {
    lengthRide: { symbol: 'l_0', unit: 'mm', says: 'length between the joints at ride height' },
    lengthLongest: { symbol: 'l_{max}', unit: 'mm', says: 'greatest length between the joints through travel' },
    lengthShortest: { symbol: 'l_{min}', unit: 'mm', says: 'smallest length between the joints through travel' },
    engagedRide: { symbol: 'e_0', unit: 'mm', says: 'spline engaged at ride height' },
    roomRide: { symbol: 'g_0', unit: 'mm', says: 'room at ride height before the slip joint bottoms' },
  },
  results: {
    extends: {
      symbol: '\\Delta l_{max}',
      unit: 'mm',
      says: 'growth of the length from ride height',
      tex: '@lengthLongest - @lengthRide',
      step: true,
    },
    shortens: {
      symbol: '\\Delta l_{min}',
      unit: 'mm',
      says: 'loss of length from ride height',
      tex: '@lengthRide - @lengthShortest',
      step: true,
    },
    engagedLeast: {
      symbol: 'e_{min}',
      unit: 'mm',
      says: 'spline left engaged at the greatest length, which decides',
      tex: '@engagedRide - @extends',
    },
    roomLeast: {
      symbol: 'g_{min}',
      unit: 'mm',
      says: 'room left at the smallest length',
      tex: '@roomRide - @shortens',
    },
  },
  assumptions: [
    'Movement of engine and gearbox on their mounts is contained only if it was measured with the lengths.',
  ],
  sources: [{ document: 'Difference of lengths', basis: 'derived' }],
  validity: [
    {
      says: 'lengths, engagement and room must be greater than zero',
      holds: (x) => Math.min(x.lengthShortest, x.engagedRide, x.roomRide) > 0,
    },
    {
      says: 'the length at ride height lies between the smallest and the greatest',
      holds: (x) => x.lengthShortest <= x.lengthRide && x.lengthRide <= x.lengthLongest,
    },
  ],
  calculate: (x) => {
    const [growth, loss] = [x.lengthLongest - x.lengthRide, x.lengthRide - x.lengthShortest];
    const [engagedLeast, roomLeast] = [x.engagedRide - growth, x.roomRide - loss];
    if (engagedLeast < NONE)
      throw new OutOfRange('the slip joint comes apart: no spline is left engaged at the greatest length');
    if (roomLeast < NONE) throw new OutOfRange('the slip joint bottoms: no room is left at the smallest length');
    return { extends: growth, shortens: loss, engagedLeast, roomLeast };
  },
  examples: [
    {
      given: {
        lengthRide: '1215 mm',
        lengthLongest: '1223 mm',
        lengthShortest: '1204 mm',
        engagedRide: '90 mm',
        roomRide: '60 mm',
      },
      gives: { engagedLeast: '82 mm', roomLeast: '49 mm' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
