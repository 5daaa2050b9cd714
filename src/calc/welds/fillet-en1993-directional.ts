import { sheet } from '../sheet.js';
import { correlation, effective, en1993, filletInputs, filletValidity } from './en1993.js';

/** A fillet weld under a force of known direction by the directional method of EN 1993-1-8. */
export const filletEn1993Directional = sheet({
  id: 'fillet-weld-en1993-directional',
  subject: 'welds',
  title: 'Fillet weld under a force of known direction (EN 1993-1-8, directional method)',
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
    throat: { symbol: 'a', unit: 'mm', says: 'throat', tex: '\\frac{@leg}{\\sqrt{2}}', step: true },
    effectiveLength: {
      symbol: 'l_{eff}',
      unit: 'mm',
      says: 'effective length: one throat is taken off at each end',
      tex: '@length - 2 \\cdot @throat',
      step: true,
    },
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
    utilisation: {
      symbol: 'u',
      unit: '1',
      says: 'use of the resistance, the greater of both',
      tex: '\\max\\left(\\frac{@combined}{@combinedLimit}, \\frac{\\left|@normal\\right|}{@normalLimit}\\right)',
    },
    capacity: {
      symbol: 'R_{w,Rd}',
      unit: 'kN',
      says: 'resistance to a force of this direction',
      tex: '\\frac{\\sqrt{@along^2 + @acrossOne^2 + @acrossTwo^2}}{@utilisation}',
    },
    perLength: {
      symbol: 'F_{w,Rd}',
      unit: 'kN/mm',
      says: 'the same for each length of weld',
      tex: '\\frac{@capacity}{@effectiveLength}',
    },
  },
  assumptions: [
    'Right-angled fillet with equal legs, fused to the root; consumable at least as strong as the parent metal.',
    'The force acts at the middle of the weld and is spread evenly along it.',
  ],
  sources: [
    en1993('4.5.3.2: directional method'),
    en1993('4.5.1 and 4.5.2: effective length and throat'),
    en1993('Table 4.1: correlation factors'),
    en1993('4.1: thickness covered'),
  ],
  validity: [
    ...filletValidity,
    { says: 'state at least one force', holds: (x) => x.along !== 0 || x.acrossOne !== 0 || x.acrossTwo !== 0 },
  ],
  calculate: (x) => {
    const throat = x.leg / Math.SQRT2;
    const effectiveLength = effective(x);
    const area = throat * effectiveLength;
    const normal = (x.acrossOne + x.acrossTwo) / (Math.SQRT2 * area);
    const shearAcross = (x.acrossOne - x.acrossTwo) / (Math.SQRT2 * area);
    const shearAlong = x.along / area;
    const combined = Math.sqrt(normal ** 2 + 3 * (shearAcross ** 2 + shearAlong ** 2));
    const combinedLimit = x.strength / (correlation[x.steel] * x.partial);
    const normalLimit = (0.9 * x.strength) / x.partial;
    const utilisation = Math.max(combined / combinedLimit, Math.abs(normal) / normalLimit);
    const capacity = Math.hypot(x.along, x.acrossOne, x.acrossTwo) / utilisation;
    return {
      throat,
      effectiveLength,
      correlation: correlation[x.steel],
      normal,
      shearAcross,
      shearAlong,
      combined,
      combinedLimit,
      normalLimit,
      utilisation,
      capacity,
      perLength: capacity / effectiveLength,
    };
  },
  examples: [
    {
      given: {
        leg: '5.9397 mm',
        length: '108.4 mm',
        thickness: '8 mm',
        steel: 'S275',
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
        steel: 'S355',
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
