import { sheet } from '../sheet.js';
import { elasticitySource, shearModulus } from '../steel.js';

/** Rate of a coil spring from its wire, as a check on the maker's figure. */
export const coilRate = sheet({
  id: 'coil-rate',
  subject: 'suspension',
  title: 'Rate of a coil spring from its wire',
  purpose:
    'Rate that a cylindrical coil spring of round wire has by its dimensions, to set beside the figure on its paper.',
  inputs: {
    wire: { symbol: 'd', unit: 'mm', says: 'diameter of the wire' },
    outside: { symbol: 'D_a', unit: 'mm', says: 'outside diameter of the coils' },
    active: {
      symbol: 'n',
      unit: '1',
      says: 'active coils: those that move, all coils less those that lie on the seats (about one an end)',
    },
    shear: { symbol: 'G', says: 'shear modulus of the wire', ...shearModulus },
  },
  results: {
    mean: { symbol: 'D', unit: 'mm', says: 'mean diameter of the coils', tex: '@outside - @wire', step: true },
    index: { symbol: 'C', unit: '1', says: 'spring index', tex: '\\frac{@mean}{@wire}', step: true },
    rate: {
      symbol: 'k',
      unit: 'N/mm',
      says: 'rate',
      tex: '\\frac{@shear \\cdot @wire^4}{8 \\cdot @mean^3 \\cdot @active}',
    },
  },
  assumptions: [
    'Round wire and coils of one diameter. The rate of a barrel-shaped or progressive spring changes with its length and is measured instead.',
    'Steel wire: makers give 77 to 82 GPa; give the value that the maker of the wire states.',
  ],
  sources: [
    {
      document: "Shigley's Mechanical Engineering Design",
      clause: 'chapter 10, deflection of helical springs',
      basis: 'memory',
    },
    {
      document: 'EN 13906-1 Cylindrical helical springs made from round wire and bar, compression springs',
      basis: 'memory',
    },
    elasticitySource,
  ],
  validity: [
    {
      says: 'wire, coils and modulus must be greater than zero',
      holds: (x) => x.wire > 0 && x.active > 0 && x.shear > 0,
    },
    {
      says: 'the coils must be at least four wires across on the outside, as springs that can be wound are',
      holds: (x) => x.outside >= 4 * x.wire,
    },
  ],
  calculate: ({ wire, outside, active, shear }) => {
    const mean = outside - wire;
    return { mean, index: mean / wire, rate: (shear * wire ** 4) / (8 * mean ** 3 * active) };
  },
  remark:
    'The rate goes with the fourth power of the wire: a tenth of a millimetre on 12 mm is three parts in a hundred of the rate. Measure over bare wire, in two directions.',
  examples: [
    {
      given: { wire: '0.037 in', outside: '0.437 in', active: '10.5', shear: '11850 ksi' },
      gives: { rate: '4.13 lbf/in' },
      source: {
        document: "Shigley's Mechanical Engineering Design",
        clause:
          'chapter 10, first worked spring (music wire, 7/16 in outside, rounded there to a mean diameter of 0.400 in; 12.5 turns with squared ends)',
        basis: 'memory',
      },
    },
  ],
});
