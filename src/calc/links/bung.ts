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
  thinReason,
  withinAs4100,
} from '../welds/as4100.js';
import { leastPerLength } from '../welds/joint.js';

export const bungWeld = sheet({
  id: 'bung-weld',
  subject: 'links',
  title: 'Weld of a threaded bung in a tube',
  purpose: 'Pull or push along the link that the fillet weld around the end of the tube carries.',
  inputs: {
    diameter: { symbol: 'D', unit: 'mm', says: 'outside diameter of the tube, around which the fillet runs' },
    wall: { symbol: 't', unit: 'mm', says: 'wall of the tube' },
    leg: { symbol: 's', unit: 'mm', says: 'leg of the fillet' },
    weldStrength: {
      symbol: 'f_{uw}',
      unit: 'MPa',
      says: 'nominal tensile strength of the weld metal, from the consumable',
    },
    yield: { symbol: 'f_y', unit: 'MPa', says: 'yield strength of the tube' },
    tensile: { symbol: 'f_u', unit: 'MPa', says: 'tensile strength of the tube' },
    category: { symbol: '\\text{category}', says: 'quality category of the weld', choices: categories },
  },
  results: {
    factor: { symbol: '\\varphi', unit: '1', says: 'capacity factor of the category (0.80 SP, 0.60 GP)', step: true },
    throat: {
      symbol: 't_t',
      unit: 'mm',
      says: 'throat of an equal-leg fillet',
      tex: '\\frac{@leg}{\\sqrt{2}}',
      step: true,
    },
    weld: {
      symbol: '\\varphi v_w',
      unit: 'kN/mm',
      says: 'capacity of the weld itself for each length',
      tex: '@factor \\cdot 0.6 \\cdot @weldStrength \\cdot @throat',
      step: true,
    },
    ...parentSteps('wall'),
    perLength: { symbol: '\\varphi v', ...leastPerLength, step: true },
    length: { symbol: 'l_w', unit: 'mm', says: 'length of the weld', tex: '\\pi \\cdot @diameter', step: true },
    capacity: {
      symbol: '\\varphi V_w',
      unit: 'kN',
      says: 'design capacity along the link',
      tex: '@perLength \\cdot @length',
    },
  },
  assumptions: [
    'The fillet runs all the way round, with equal legs and full throat, and the force lies along the link without bending.',
    'Fatigue is not covered; the toe of a weld on a link that is loaded both ways is where it begins.',
  ],
  sources: [
    as4100('9.6.3.10 (9.7.3.10 in the 1998 edition): capacity; Table 3.4: capacity factors'),
    edgeSource,
    parentSource,
    {
      document: 'Worked page on Australian weld capacity',
      clause: 'base formula, table for E48XX SP',
      basis: 'quoted',
    },
  ],
  validity: [
    { says: thinReason, holds: (x) => withinAs4100(x.wall, 'plate') },
    { says: 'the leg must be at least 3 mm', holds: (x) => x.leg >= 0.003 },
    {
      says: 'the leg cannot be larger than the edge of the tube allows: the wall under 6 mm, 1 mm less from there up',
      holds: (x) => x.leg <= edgeLeg(x.wall) + 1e-9,
    },
    {
      says: 'the wall must be less than half the diameter, strengths greater than zero, and the tensile strength not below the yield strength',
      holds: (x) => 2 * x.wall < x.diameter && x.weldStrength > 0 && x.yield > 0 && x.tensile >= x.yield,
    },
  ],
  calculate: (x) => {
    const factor = filletFactor(x.category, x.wall);
    const throat = x.leg / Math.SQRT2;
    const weld = factor * 0.6 * x.weldStrength * throat;
    const beside = parent(x, x.wall);
    const perLength = Math.min(weld, beside.shear, beside.tension);
    const length = Math.PI * x.diameter;
    return { factor, throat, weld, ...beside, perLength, length, capacity: perLength * length };
  },
  examples: [
    {
      given: {
        diameter: '60.3 mm',
        wall: '8 mm',
        leg: '6 mm',
        weldStrength: '480 MPa',
        yield: '350 MPa',
        tensile: '430 MPa',
        category: 'SP',
      },
      gives: { weld: '0.98 kN/mm', capacity: '185 kN' },
      source: {
        document: 'Worked page on Australian weld capacity, 6 mm E48XX SP 0.98 kN/mm; the rest by hand',
        basis: 'quoted',
      },
    },
  ],
});
