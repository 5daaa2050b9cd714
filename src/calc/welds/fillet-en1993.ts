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

/** Design resistance of a fillet weld by the simplified method of EN 1993-1-8. */
export const filletEn1993 = sheet({
  id: 'fillet-weld-en1993',
  subject: 'welds',
  title: 'Resistance of a fillet weld (EN 1993-1-8, simplified method)',
  method:
    'Along the edge of a lap the leg counts up to the thickness of the thinner part; at a tee or corner as it is.',
  purpose:
    'Design resistance of an equal-leg right-angled fillet weld for each millimetre and over its effective length, whatever the direction of the force.',
  inputs: filletInputs,
  results: {
    ...sizeSteps,
    correlation: { symbol: '\\beta_w', unit: '1', says: 'correlation factor of the steel', step: true },
    shearStrength: {
      symbol: 'f_{vw,d}',
      unit: 'MPa',
      says: 'design shear strength of the weld',
      tex: '\\frac{@strength}{\\sqrt{3} \\cdot @correlation \\cdot @partial}',
      step: true,
    },
    weld: {
      symbol: 'F_{w,Rd}',
      unit: 'kN/mm',
      says: 'design resistance of the weld itself for each length',
      tex: '@shearStrength \\cdot @throat',
    },
    ...parentSteps,
    perLength: filletPerLength,
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
    parentAssumption,
  ],
  sources: [en1993('4.5.3.3: simplified method'), ...filletSources],
  validity: filletValidity,
  calculate: (x) => {
    const steps = size(x);
    const beside = parent(x);
    const shearStrength = x.strength / (Math.sqrt(3) * correlation[x.steel] * x.partial);
    const weld = shearStrength * steps.throat;
    const perLength = Math.min(weld, beside.shear, beside.tension);
    return {
      ...steps,
      correlation: correlation[x.steel],
      shearStrength,
      weld,
      ...beside,
      perLength,
      capacity: perLength * steps.effectiveLength,
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
      },
      gives: { throat: '4.20 mm', shearStrength: '222.8 MPa', perLength: '0.94 kN/mm', capacity: '94 kN' },
      source: {
        document: 'SCI P363, fillet weld table, S275, 6 mm leg with throat 4.2 mm, longitudinal',
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
      },
      gives: { shearStrength: '241.2 MPa', perLength: '1.01 kN/mm' },
      source: {
        document: 'SCI P363, fillet weld table, S355, 6 mm leg with throat 4.2 mm, longitudinal',
        basis: 'memory',
      },
    },
  ],
});
