import { sheet } from '../sheet.js';
import {
  chainAssumptions,
  chainSources,
  pedalInputs,
  pedalValidity,
  rodResult,
  wheelInputs,
  wheelResults,
  wheels,
  wheelValidity,
} from './chain-parts.js';

const bore = (symbol: string, of: string) => ({ symbol, unit: 'mm', says: `bore of the ${of}` }) as const;
const boreArea = (diameter: number) => (Math.PI / 4) * diameter ** 2;

/** A tandem master cylinder, with or without a booster and a pressure-reducing valve for the rear. */
export const tandemBrakes = sheet({
  id: 'brake-chain-tandem',
  subject: 'brakes',
  title: 'From pedal to deceleration, tandem master cylinder',
  purpose:
    'Pressure, braking forces, their distribution and the deceleration for a pedal force, with both circuits working.',
  inputs: {
    ...pedalInputs,
    boosterRatio: {
      symbol: 'i_b',
      unit: '1',
      says: 'booster ratio: force out over force in, below run-out',
      usual: '1',
    },
    boosterAssist: { symbol: 'F_b', unit: 'N', says: 'greatest force that the booster adds, at run-out', usual: '0 N' },
    bore: bore('D', 'master cylinder'),
    valveKnee: {
      symbol: 'p_k',
      unit: 'MPa',
      says: 'pressure above which a valve reduces the rear pressure',
      usual: '0 MPa',
    },
    valveSlope: {
      symbol: 's',
      unit: '1',
      says: 'rise of rear pressure per front pressure above that; 1 without a valve',
      usual: '1',
    },
    ...wheelInputs,
  },
  results: {
    ...rodResult,
    boosted: {
      symbol: 'F_o',
      unit: 'N',
      says: 'force on the master cylinder',
      tex: '@rod + \\min\\left((@boosterRatio - 1) \\cdot @rod,\\ @boosterAssist\\right)',
      step: true,
    },
    frontPressure: {
      symbol: 'p_f',
      unit: 'MPa',
      says: 'pressure in the line, front brakes',
      tex: '\\frac{4 \\cdot @boosted}{\\pi \\cdot @bore^2}',
    },
    rearPressure: {
      symbol: 'p_r',
      unit: 'MPa',
      says: 'pressure at the rear brakes',
      tex: '\\min\\left(@frontPressure,\\ @valveKnee + @valveSlope \\cdot (@frontPressure - @valveKnee)\\right)',
    },
    ...wheelResults,
  },
  assumptions: [...chainAssumptions, 'Both chambers of the master cylinder hold the same pressure.'],
  sources: chainSources,
  validity: [
    pedalValidity,
    { says: 'the bore must be greater than zero', holds: (x) => x.bore > 0 },
    {
      says: 'a booster ratio above 1 needs the greatest force that the booster adds',
      holds: (x) => x.boosterRatio === 1 || (x.boosterRatio > 1 && x.boosterAssist > 0),
    },
    {
      says: 'the valve’s knee must not be negative and its slope must lie between 0 and 1',
      holds: (x) => x.valveKnee >= 0 && x.valveSlope >= 0 && x.valveSlope <= 1,
    },
    ...wheelValidity,
  ],
  calculate: (x) => {
    const rod = x.pedalForce * x.pedalRatio * x.efficiency;
    const boosted = rod + Math.min((x.boosterRatio - 1) * rod, x.boosterAssist);
    const frontPressure = boosted / boreArea(x.bore);
    const rearPressure = Math.min(frontPressure, x.valveKnee + x.valveSlope * (frontPressure - x.valveKnee));
    return { rod, boosted, frontPressure, rearPressure, ...wheels(x, frontPressure, rearPressure) };
  },
  remark:
    'A larger master cylinder lowers the pressure for the same foot and shortens the pedal; work out both sheets, pressure and displacement.',
  examples: [
    {
      given: {
        pedalForce: '350 N',
        pedalRatio: '4.0',
        efficiency: '1',
        bore: '22.2 mm',
        frontPistons: '1',
        frontPiston: '54 mm',
        frontFactor: '0.76',
        frontRadius: '110 mm',
        frontRolling: '300 mm',
        rearPistons: '1',
        rearPiston: '34 mm',
        rearFactor: '0.76',
        rearRadius: '115 mm',
        rearRolling: '300 mm',
        mass: '1500 kg',
      },
      gives: {
        rod: '1400 N',
        frontPressure: '3.6169 MPa',
        frontTorque: '692.5 N·m',
        frontForce: '4617 N',
        share: '70.7 %',
      },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});

/** Two master cylinders on a balance bar. */
export const dualBrakes = sheet({
  id: 'brake-chain-dual',
  subject: 'brakes',
  title: 'From pedal to deceleration, two master cylinders on a balance bar',
  purpose:
    'Pressures, braking forces, their distribution and the deceleration for a pedal force, with both circuits working.',
  inputs: {
    ...pedalInputs,
    barShare: {
      symbol: '\\beta',
      unit: '%',
      says: 'share of the pushrod force that the balance bar gives the front master cylinder',
    },
    frontBore: bore('D_f', 'front master cylinder'),
    rearBore: bore('D_r', 'rear master cylinder'),
    ...wheelInputs,
  },
  results: {
    ...rodResult,
    frontPressure: {
      symbol: 'p_f',
      unit: 'MPa',
      says: 'pressure at the front brakes',
      tex: '\\frac{4 \\cdot @barShare \\cdot @rod}{\\pi \\cdot @frontBore^2}',
    },
    rearPressure: {
      symbol: 'p_r',
      unit: 'MPa',
      says: 'pressure at the rear brakes',
      tex: '\\frac{4 \\cdot (1 - @barShare) \\cdot @rod}{\\pi \\cdot @rearBore^2}',
    },
    ...wheelResults,
  },
  assumptions: [...chainAssumptions, 'The balance bar is free to tilt and not at its stop.'],
  sources: chainSources,
  validity: [
    pedalValidity,
    {
      says: 'the share of the balance bar must lie between 0 and 100 %',
      holds: (x) => x.barShare > 0 && x.barShare < 1,
    },
    { says: 'both bores must be greater than zero', holds: (x) => x.frontBore > 0 && x.rearBore > 0 },
    ...wheelValidity,
  ],
  calculate: (x) => {
    const rod = x.pedalForce * x.pedalRatio * x.efficiency;
    const frontPressure = (x.barShare * rod) / boreArea(x.frontBore);
    const rearPressure = ((1 - x.barShare) * rod) / boreArea(x.rearBore);
    return { rod, frontPressure, rearPressure, ...wheels(x, frontPressure, rearPressure) };
  },
  examples: [
    {
      given: {
        pedalForce: '500 N',
        pedalRatio: '5.0',
        efficiency: '1',
        barShare: '50 %',
        frontBore: '19.05 mm',
        rearBore: '22.2 mm',
        frontPistons: '2',
        frontPiston: '38 mm',
        frontFactor: '0.80',
        frontRadius: '120 mm',
        frontRolling: '300 mm',
        rearPistons: '2',
        rearPiston: '30 mm',
        rearFactor: '0.80',
        rearRadius: '120 mm',
        rearRolling: '300 mm',
        mass: '1200 kg',
      },
      gives: {
        frontPressure: '4.386 MPa',
        rearPressure: '3.229 MPa',
        frontForce: '6366 N',
        rearForce: '2922 N',
        deceleration: '7.74 m/s²',
      },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
