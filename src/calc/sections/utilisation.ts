import { sheet } from '../sheet.js';

/** How much of a capacity a load case uses. */
export const utilisation = sheet({
  id: 'utilisation',
  subject: 'sections',
  title: 'Demand of a load case against capacity',
  purpose:
    'Which part of the capacity of a part the demand of the load case takes up, with the factor of the load case.',
  inputs: {
    demand: { symbol: 'F', unit: 'kN', says: 'demand of the load case' },
    factor: { symbol: 'n', unit: '1', says: 'factor of the load case on its demand', usual: '1' },
    capacity: { symbol: 'R', unit: 'kN', says: 'capacity of the part in the same direction' },
  },
  results: {
    utilisation: {
      symbol: 'u',
      unit: '1',
      says: 'demand over capacity; 1 is all of it',
      tex: '\\frac{@factor \\cdot @demand}{@capacity}',
    },
    reserve: { symbol: 'r', unit: '1', says: 'capacity over demand', tex: '\\frac{@capacity}{@factor \\cdot @demand}' },
  },
  assumptions: ['Demand and capacity act in the same direction at the same place.'],
  sources: [{ document: 'Ratio of two forces', basis: 'derived' }],
  validity: [
    {
      says: 'demand, factor and capacity must be greater than zero',
      holds: (x) => x.demand > 0 && x.factor > 0 && x.capacity > 0,
    },
  ],
  calculate: ({ demand, factor, capacity }) => ({
    utilisation: (factor * demand) / capacity,
    reserve: capacity / (factor * demand),
  }),
  remark:
    'The factor stands for what nobody knows exactly: shock, fatigue, the quality of the work. It is agreed with the certifier, not taken from a sheet.',
  examples: [
    {
      given: { demand: '8 kN', factor: '1.5', capacity: '24 kN' },
      gives: { utilisation: '0.500', reserve: '2.00' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
