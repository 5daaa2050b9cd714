import { sheet } from '../sheet.js';
import { correlation, effective, en1993, filletInputs, filletValidity } from './en1993.js';

/** Design resistance of a fillet weld by the simplified method of EN 1993-1-8. */
export const filletEn1993 = sheet({
  id: 'fillet-weld-en1993',
  subject: 'welds',
  title: 'Resistance of a fillet weld (EN 1993-1-8, simplified method)',
  purpose:
    'Design resistance of an equal-leg right-angled fillet weld for each millimetre and over its effective length, whatever the direction of the force.',
  inputs: filletInputs,
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
    shearStrength: {
      symbol: 'f_{vw,d}',
      unit: 'MPa',
      says: 'design shear strength of the weld',
      tex: '\\frac{@strength}{\\sqrt{3} \\cdot @correlation \\cdot @partial}',
      step: true,
    },
    perLength: {
      symbol: 'F_{w,Rd}',
      unit: 'kN/mm',
      says: 'design resistance for each length of weld',
      tex: '@shearStrength \\cdot @throat',
    },
    capacity: {
      symbol: 'R_{w,Rd}',
      unit: 'kN',
      says: 'design resistance of the whole weld, evenly loaded',
      tex: '@perLength \\cdot @effectiveLength',
    },
  },
  assumptions: [
    'Right-angled fillet with equal legs, fused to the root; consumable at least as strong as the parent metal.',
    'The force is spread evenly along the weld; where it is not, work the weld group.',
  ],
  sources: [
    en1993('4.5.3.3: simplified method'),
    en1993('4.5.1 and 4.5.2: effective length and throat'),
    en1993('Table 4.1: correlation factors'),
    en1993('4.1: thickness covered'),
  ],
  validity: filletValidity,
  calculate: (x) => {
    const throat = x.leg / Math.SQRT2;
    const shearStrength = x.strength / (Math.sqrt(3) * correlation[x.steel] * x.partial);
    const perLength = shearStrength * throat;
    const effectiveLength = effective(x);
    return {
      throat,
      effectiveLength,
      correlation: correlation[x.steel],
      shearStrength,
      perLength,
      capacity: perLength * effectiveLength,
    };
  },
  examples: [
    {
      given: { leg: '5.9397 mm', length: '108.4 mm', thickness: '8 mm', steel: 'S275', strength: '410 MPa' },
      gives: { throat: '4.20 mm', shearStrength: '222.8 MPa', perLength: '0.94 kN/mm', capacity: '94 kN' },
      source: {
        document: 'SCI P363, fillet weld table, S275, 6 mm leg with throat 4.2 mm, longitudinal',
        basis: 'memory',
      },
    },
    {
      given: { leg: '5.9397 mm', length: '108.4 mm', thickness: '8 mm', steel: 'S355', strength: '470 MPa' },
      gives: { shearStrength: '241.2 MPa', perLength: '1.01 kN/mm' },
      source: {
        document: 'SCI P363, fillet weld table, S355, 6 mm leg with throat 4.2 mm, longitudinal',
        basis: 'memory',
      },
    },
  ],
});
