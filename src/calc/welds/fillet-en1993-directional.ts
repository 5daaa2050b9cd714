import { sheet } from '../sheet.js';
import {
  correlation,
  en1993,
  filletInputs,
  filletPerLength,
  filletSources,
  filletValidity,
  parent,
  parentSteps,
  size,
  sizeSteps,
} from './en1993.js';
import { parentAssumption } from './joint.js';

/** A fillet weld under a force of known direction by the directional method of EN 1993-1-8. */
export const filletEn1993Directional = sheet({
  id: 'fillet-weld-en1993-directional',
  subject: 'welds',
  title: 'Fillet weld under a force of known direction (EN 1993-1-8, directional method)',
  method:
    'Along the edge of a lap the leg counts up to the thickness of the thinner part; at a tee or corner as it is.',
  purpose:
    'Stresses on the throat of an equal-leg right-angled fillet weld, how much of the resistance they use, and the resistance in the direction of the force.',
  inputs: {
    ...filletInputs,
    along: { symbol: 'F_\\parallel', unit: 'kN', says: 'force along the weld', usual: '0 kN' },
    acrossOne: {
      symbol: 'F_1',
      unit: 'kN',
      says: 'force across the weld on the upright plate, square to that plate, positive where it pulls the plate off the weld',
      usual: '0 kN',
    },
    acrossTwo: {
      symbol: 'F_2',
      unit: 'kN',
      says: 'force across the weld on the upright plate, in its own plane, positive where it pulls the plate off the other',
      usual: '0 kN',
    },
  },
  results: {
    ...sizeSteps,
    correlation: { symbol: '\\beta_w', unit: '1', says: 'correlation factor of the steel', step: true },
    normal: {
      symbol: '\\sigma_\\perp',
      unit: 'MPa',
      says: 'stress square to the throat',
      tex: '\\frac{@acrossOne + @acrossTwo}{\\sqrt{2} \\cdot @throat \\cdot @effectiveLength}',
      step: true,
    },
    shearAcross: {
      symbol: '\\tau_\\perp',
      unit: 'MPa',
      says: 'shear stress on the throat, across the weld',
      tex: '\\frac{@acrossOne - @acrossTwo}{\\sqrt{2} \\cdot @throat \\cdot @effectiveLength}',
      step: true,
    },
    shearAlong: {
      symbol: '\\tau_\\parallel',
      unit: 'MPa',
      says: 'shear stress on the throat, along the weld',
      tex: '\\frac{@along}{@throat \\cdot @effectiveLength}',
      step: true,
    },
    combined: {
      symbol: '\\sigma_v',
      unit: 'MPa',
      says: 'combined stress',
      tex: '\\sqrt{@normal^2 + 3 \\cdot (@shearAcross^2 + @shearAlong^2)}',
    },
    combinedLimit: {
      symbol: 'f_{v,Rd}',
      unit: 'MPa',
      says: 'limit of the combined stress',
      tex: '\\frac{@strength}{@correlation \\cdot @partial}',
    },
    normalLimit: {
      symbol: 'f_{\\sigma,Rd}',
      unit: 'MPa',
      says: 'limit of the stress square to the throat',
      tex: '\\frac{0.9 \\cdot @strength}{@partial}',
    },
    force: {
      symbol: 'F',
      unit: 'kN',
      says: 'force',
      tex: '\\sqrt{@along^2 + @acrossOne^2 + @acrossTwo^2}',
      step: true,
    },
    weldUse: {
      symbol: 'u_w',
      unit: '1',
      says: 'use of the weld itself, the greater of both',
      tex: '\\max\\left(\\frac{@combined}{@combinedLimit}, \\frac{\\left|@normal\\right|}{@normalLimit}\\right)',
      step: true,
    },
    weld: {
      symbol: 'F_{w,Rd}',
      unit: 'kN/mm',
      says: 'resistance of the weld itself to a force of this direction, for each length',
      tex: '\\frac{@force}{@weldUse \\cdot @effectiveLength}',
    },
    ...parentSteps,
    perLength: filletPerLength,
    capacity: {
      symbol: 'R_{w,Rd}',
      unit: 'kN',
      says: 'resistance to a force of this direction',
      tex: '@perLength \\cdot @effectiveLength',
    },
    utilisation: {
      symbol: 'u',
      unit: '1',
      says: 'use of the resistance',
      tex: '\\frac{@force}{@capacity}',
    },
  },
  assumptions: [
    'Right-angled fillet with equal legs, fused to the root; consumable at least as strong as the parent metal.',
    'The force acts at the middle of the weld and is spread evenly along it.',
    parentAssumption,
  ],
  sources: [en1993('4.5.3.2: directional method'), ...filletSources],
  validity: [
    ...filletValidity,
    { says: 'state at least one force', holds: (x) => x.along !== 0 || x.acrossOne !== 0 || x.acrossTwo !== 0 },
  ],
  calculate: (x) => {
    const steps = size(x);
    const beside = parent(x);
    const area = steps.throat * steps.effectiveLength;
    const normal = (x.acrossOne + x.acrossTwo) / (Math.SQRT2 * area);
    const shearAcross = (x.acrossOne - x.acrossTwo) / (Math.SQRT2 * area);
    const shearAlong = x.along / area;
    const combined = Math.sqrt(normal ** 2 + 3 * (shearAcross ** 2 + shearAlong ** 2));
    const combinedLimit = x.strength / (correlation[x.steel] * x.partial);
    const normalLimit = (0.9 * x.strength) / x.partial;
    const force = Math.hypot(x.along, x.acrossOne, x.acrossTwo);
    const weldUse = Math.max(combined / combinedLimit, Math.abs(normal) / normalLimit);
    const weld = force / (weldUse * steps.effectiveLength);
    const perLength = Math.min(weld, beside.shear, beside.tension);
    const capacity = perLength * steps.effectiveLength;
    return {
      ...steps,
      correlation: correlation[x.steel],
      normal,
      shearAcross,
      shearAlong,
      combined,
      combinedLimit,
      normalLimit,
      force,
      weldUse,
      weld,
      ...beside,
      perLength,
      capacity,
      utilisation: force / capacity,
    };
  },
  examples: [
    {
      given: {
        leg: '5.9397 mm',
        length: '108.4 mm',
        thickness: '8 mm',
        other: '8 mm',
        joint: 'tee',
        steel: 'S275',
        yield: '275 MPa',
        strength: '410 MPa',
        acrossOne: '50 kN',
      },
      gives: { perLength: '1.15 kN/mm' },
      source: {
        document: 'SCI P363, fillet weld table, S275, 6 mm leg with throat 4.2 mm, transverse',
        basis: 'memory',
      },
    },
    {
      given: {
        leg: '5.9397 mm',
        length: '108.4 mm',
        thickness: '8 mm',
        other: '8 mm',
        joint: 'tee',
        steel: 'S355',
        yield: '355 MPa',
        strength: '470 MPa',
        acrossTwo: '50 kN',
      },
      gives: { perLength: '1.24 kN/mm' },
      source: {
        document: 'SCI P363, fillet weld table, S355, 6 mm leg with throat 4.2 mm, transverse',
        basis: 'memory',
      },
    },
  ],
});
