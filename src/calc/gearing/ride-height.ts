import { sheet } from '../sheet.js';

/** What springs and tyres together do to the height of the body and to ground clearance. */
export const rideHeight = sheet({
  id: 'ride-height',
  subject: 'gearing',
  title: 'Ride height and ground clearance after a change',
  purpose:
    'Lift or drop of the body at one axle from suspension and tyres together, and the ground clearance that is left.',
  inputs: {
    heightBefore: { symbol: 'h_o', unit: 'mm', says: 'wheel centre to edge of the guard above it, before' },
    heightAfter: { symbol: 'h_n', unit: 'mm', says: 'the same now, in the same state of load' },
    diameterBefore: { symbol: 'D_o', unit: 'mm', says: 'overall tyre diameter before' },
    diameterAfter: { symbol: 'D_n', unit: 'mm', says: 'overall tyre diameter now' },
    clearanceBefore: { symbol: 'c_o', unit: 'mm', says: 'ground clearance of the lowest point before' },
    lowestPoint: {
      symbol: 'point',
      says: 'what the lowest point belongs to',
      choices: { body: 'sprung: body, engine, exhaust', axle: 'unsprung: axle or hub' },
      usual: 'body',
    },
  },
  results: {
    suspension: {
      symbol: '\\Delta h_s',
      unit: 'mm',
      says: 'change by the suspension, positive up',
      tex: '@heightAfter - @heightBefore',
    },
    tyre: {
      symbol: '\\Delta h_t',
      unit: 'mm',
      says: 'change by the tyres, positive up',
      tex: '\\frac{@diameterAfter - @diameterBefore}{2}',
    },
    total: {
      symbol: '\\Delta h',
      unit: 'mm',
      says: 'change of the body’s height, positive up',
      tex: '@suspension + @tyre',
    },
    clearance: { symbol: 'c', unit: 'mm', says: 'ground clearance now' },
  },
  method: 'A lowest point on the body moves by the whole change, one on the axle by that of the tyres alone.',
  assumptions: [
    'The lowest point stands at the axle in question; between the axles its height follows the line through both.',
  ],
  sources: [{ document: 'Geometry', basis: 'derived' }],
  validity: [
    { says: 'diameters must be greater than zero', holds: (x) => x.diameterBefore > 0 && x.diameterAfter > 0 },
    { says: 'the clearance before must be greater than zero', holds: (x) => x.clearanceBefore > 0 },
  ],
  calculate: ({ heightBefore, heightAfter, diameterBefore, diameterAfter, clearanceBefore, lowestPoint }) => {
    const suspension = heightAfter - heightBefore;
    const tyre = (diameterAfter - diameterBefore) / 2;
    const clearance = clearanceBefore + tyre + (lowestPoint === 'body' ? suspension : 0);
    return { suspension, tyre, total: suspension + tyre, clearance };
  },
  examples: [
    {
      given: {
        heightBefore: '395 mm',
        heightAfter: '365 mm',
        diameterBefore: '632 mm',
        diameterAfter: '652 mm',
        clearanceBefore: '150 mm',
        lowestPoint: 'body',
      },
      gives: { suspension: '-30 mm', tyre: '10 mm', total: '-20 mm', clearance: '130 mm' },
      source: { document: 'Geometry, worked by hand', basis: 'derived' },
    },
  ],
});
