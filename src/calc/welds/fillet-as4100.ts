import { sheet } from '../sheet.js';
import {
  as4100,
  categories,
  edgeLeg,
  edgeSource,
  filletFactor,
  parent,
  parentSource,
  parentSteps,
  parts,
  thinHollowReason,
  thinReason,
  withinAs4100,
} from './as4100.js';
import { leastPerLength, parentAssumption, partInputs, thinner, thinnerStep } from './joint.js';

/** Design capacity of an equal-leg fillet weld by AS 4100. */
export const filletAs4100 = sheet({
  id: 'fillet-weld-as4100',
  subject: 'welds',
  title: 'Capacity of a fillet weld (AS 4100)',
  method:
    'Along the edge of a lap the leg counts up to the largest that the clause allows there, by the thinner part; at a tee or corner as it is. The metal beside the weld bounds both.',
  purpose:
    'Design capacity of an equal-leg right-angled fillet weld, for each millimetre and over its length, whatever the direction of the force.',
  inputs: {
    leg: { symbol: 't_w', unit: 'mm', says: 'leg length; the shorter one if they differ' },
    length: { symbol: 'l_w', unit: 'mm', says: 'length of full-size weld, ends and craters left out' },
    ...partInputs,
    joined: { symbol: 'p', says: 'what every part under 3 mm is', choices: parts, usual: 'plate' },
    category: { symbol: 'c', says: 'weld category', choices: categories },
    strength: {
      symbol: 'f_{uw}',
      unit: 'MPa',
      says: 'nominal tensile strength of the weld metal, from the class of the consumable',
    },
    yield: { symbol: 'f_y', unit: 'MPa', says: 'yield strength of the weaker part' },
    tensile: { symbol: 'f_u', unit: 'MPa', says: 'tensile strength of the weaker part' },
  },
  results: {
    thinner: thinnerStep,
    counted: {
      symbol: "t_w'",
      unit: 'mm',
      says: 'leg that counts: along the edge of a lap no more than the thickness under 6 mm, and 1 mm less from there up',
      step: true,
    },
    throat: { symbol: 't_t', unit: 'mm', says: 'design throat', tex: '\\frac{@counted}{\\sqrt{2}}', step: true },
    factor: {
      symbol: '\\phi',
      unit: '1',
      says: 'capacity factor: 0.80 for SP, 0.60 for GP, 0.70 for SP on a hollow section under 3 mm',
      step: true,
    },
    lap: { symbol: 'k_r', unit: '1', says: 'reduction for long laps, 1 up to 1.7 m', step: true },
    weld: {
      symbol: '\\phi v_w',
      unit: 'kN/mm',
      says: 'design capacity of the weld itself for each length',
      tex: '@factor \\cdot 0.6 \\cdot @strength \\cdot @throat \\cdot @lap',
    },
    ...parentSteps('thinner'),
    perLength: { symbol: '\\phi v', ...leastPerLength },
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
    'Weld metal at least as strong as the parent metal.',
    parentAssumption,
  ],
  sources: [
    as4100('9.6.3.10 (9.7.3.10 in the 1998 edition): capacity'),
    as4100('9.6.3.4: design throat'),
    edgeSource,
    parentSource,
    as4100('Table 3.4: capacity factors'),
    as4100('1.1: thickness of steel covered'),
  ],
  validity: [
    {
      says: 'leg, length, thicknesses and strengths must be greater than zero, and the tensile strength not below the yield strength',
      holds: (x) => Math.min(x.leg, x.length, x.thickness, x.other, x.strength, x.yield) > 0 && x.tensile >= x.yield,
    },
    { says: thinReason, holds: (x) => withinAs4100(thinner(x), x.joined) },
    { says: thinHollowReason, holds: (x) => withinAs4100(thinner(x), 'plate') || x.category === 'SP' },
    { says: 'a weld shorter than four legs is no structural fillet weld', holds: (x) => x.length >= 4 * x.leg },
    { says: 'beyond 1.7 m a lap weld is reduced (k_r); this sheet stops there', holds: (x) => x.length <= 1.7 },
  ],
  calculate: (x) => {
    const thin = thinner(x);
    const counted = x.joint === 'lap' ? Math.min(x.leg, edgeLeg(thin)) : x.leg;
    const throat = counted / Math.SQRT2;
    const factor = filletFactor(x.category, thin);
    const lap = 1;
    const weld = factor * 0.6 * x.strength * throat * lap;
    const beside = parent(x, thin);
    const perLength = Math.min(weld, beside.shear, beside.tension);
    return {
      thinner: thin,
      counted,
      throat,
      factor,
      lap,
      weld,
      ...beside,
      perLength,
      capacity: perLength * x.length,
    };
  },
  remark:
    'The classes of consumable changed with the 2012 amendment of AS 4100: 410 and 480 MPa before, 430 and 490 MPa since. Take the strength that the packet and its standard state.',
  examples: [
    {
      given: {
        leg: '6 mm',
        length: '100 mm',
        thickness: '10 mm',
        other: '12 mm',
        joint: 'tee',
        category: 'SP',
        strength: '480 MPa',
        yield: '300 MPa',
        tensile: '430 MPa',
      },
      gives: { throat: '4.24 mm', weld: '0.98 kN/mm', capacity: '98 kN' },
      source: {
        document: 'Table of AS 4100 fillet weld capacities, 480 MPa, category SP, on a public web page',
        basis: 'quoted',
      },
    },
    {
      given: {
        leg: '6 mm',
        length: '100 mm',
        thickness: '5 mm',
        other: '8 mm',
        joint: 'lap',
        category: 'SP',
        strength: '490 MPa',
        yield: '250 MPa',
        tensile: '410 MPa',
      },
      gives: {
        counted: '5.0 mm',
        weld: '0.8316 kN/mm',
        shear: '0.6750 kN/mm',
        tension: '1.125 kN/mm',
        capacity: '67.50 kN',
      },
      source: { document: 'Worked by hand from the formulas; regression only', basis: 'derived' },
    },
  ],
});
