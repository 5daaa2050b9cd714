import { sheet } from '../sheet.js';
import { as4100, categories, filletFactor, parts, thinHollowReason, thinReason, withinAs4100 } from './as4100.js';

/** Design capacity of an equal-leg fillet weld by AS 4100. */
export const filletAs4100 = sheet({
  id: 'fillet-weld-as4100',
  subject: 'welds',
  title: 'Capacity of a fillet weld (AS 4100)',
  purpose:
    'Design capacity of an equal-leg right-angled fillet weld, for each millimetre and over its length, whatever the direction of the force.',
  inputs: {
    leg: { symbol: 't_w', unit: 'mm', says: 'leg length; the shorter one if they differ' },
    length: { symbol: 'l_w', unit: 'mm', says: 'length of full-size weld, ends and craters left out' },
    thickness: { symbol: 't_p', unit: 'mm', says: 'thickness of the thinner part joined' },
    joined: { symbol: 'j', says: 'what the thinner part is', choices: parts, usual: 'plate' },
    category: { symbol: 'c', says: 'weld category', choices: categories },
    strength: {
      symbol: 'f_{uw}',
      unit: 'MPa',
      says: 'nominal tensile strength of the weld metal, from the class of the consumable',
    },
  },
  results: {
    throat: { symbol: 't_t', unit: 'mm', says: 'design throat', tex: '\\frac{@leg}{\\sqrt{2}}', step: true },
    factor: {
      symbol: '\\phi',
      unit: '1',
      says: 'capacity factor: 0.80 for SP, 0.60 for GP, 0.70 for SP on a hollow section under 3 mm',
      step: true,
    },
    lap: { symbol: 'k_r', unit: '1', says: 'reduction for long laps, 1 up to 1.7 m', step: true },
    perLength: {
      symbol: '\\phi v_w',
      unit: 'kN/mm',
      says: 'design capacity for each length of weld',
      tex: '@factor \\cdot 0.6 \\cdot @strength \\cdot @throat \\cdot @lap',
    },
    capacity: {
      symbol: '\\phi V_w',
      unit: 'kN',
      says: 'design capacity of the whole weld, evenly loaded',
      tex: '@perLength \\cdot @length',
    },
  },
  assumptions: [
    'Right-angled fillet with equal legs, full throat along the length, fused to the root.',
    'The force is spread evenly along the weld; where it is not, work the weld group.',
    'AS 4100 gives no more for a weld across the force than for one along it.',
    'Weld metal at least as strong as the parent metal; the parent metal beside the weld is checked on its own.',
  ],
  sources: [
    as4100('9.6.3.10 (9.7.3.10 in the 1998 edition): capacity'),
    as4100('9.6.3.4: design throat'),
    as4100('Table 3.4: capacity factors'),
    as4100('1.1: thickness of steel covered'),
  ],
  validity: [
    {
      says: 'leg, length, thickness and weld metal strength must be greater than zero',
      holds: (x) => Math.min(x.leg, x.length, x.thickness, x.strength) > 0,
    },
    { says: thinReason, holds: (x) => withinAs4100(x.thickness, x.joined) },
    { says: thinHollowReason, holds: (x) => x.thickness >= 0.003 || x.category === 'SP' },
    { says: 'a weld shorter than four legs is no structural fillet weld', holds: (x) => x.length >= 4 * x.leg },
    { says: 'beyond 1.7 m a lap weld is reduced (k_r); this sheet stops there', holds: (x) => x.length <= 1.7 },
  ],
  calculate: ({ leg, length, thickness, category, strength }) => {
    const throat = leg / Math.SQRT2;
    const factor = filletFactor(category, thickness);
    const lap = 1;
    const perLength = factor * 0.6 * strength * throat * lap;
    return { throat, factor, lap, perLength, capacity: perLength * length };
  },
  remark:
    'The classes of consumable changed with the 2012 amendment of AS 4100: 410 and 480 MPa before, 430 and 490 MPa since. Take the strength that the packet and its standard state.',
  examples: [
    {
      given: { leg: '6 mm', length: '100 mm', thickness: '6 mm', category: 'SP', strength: '480 MPa' },
      gives: { throat: '4.24 mm', perLength: '0.98 kN/mm', capacity: '98 kN' },
      source: {
        document: 'Table of AS 4100 fillet weld capacities, 480 MPa, category SP, on a public web page',
        basis: 'quoted',
      },
    },
    {
      given: { leg: '6 mm', length: '100 mm', thickness: '6 mm', category: 'SP', strength: '480 MPa' },
      gives: { perLength: '0.978 kN/mm' },
      source: { document: 'Design capacity tables for structural steel (AS 4100), fillet welds', basis: 'memory' },
    },
  ],
});
