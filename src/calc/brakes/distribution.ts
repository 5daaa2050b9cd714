import { sheet } from '../sheet.js';
import {
  crossingResult,
  massSteps,
  shareInput,
  shareValidity,
  vehicleAssumptions,
  vehicleInputs,
  vehicleValidity,
} from './parts.js';
import { adhesionUsed, axleLoads, centreOfMass, crossingRate, idealFrontShare } from './vehicle.js';

/** Ideal and installed brake distribution at one braking rate. Worked once laden and once unladen. */
export const brakeDistribution = sheet({
  id: 'brake-distribution',
  subject: 'brakes',
  title: 'Brake distribution and adhesion used',
  purpose:
    'How the load moves forward under braking, what share of the force each axle could take, and what adhesion each uses with the share that is installed. Work it laden and unladen.',
  inputs: {
    ...vehicleInputs,
    ...shareInput,
    rate: { symbol: 'z', unit: '1', says: 'braking rate: deceleration over g' },
  },
  results: {
    ...massSteps,
    frontLoad: {
      symbol: 'N_f',
      unit: 'N',
      says: 'load on the front axle under braking',
      tex: '@weight \\cdot \\frac{@toRear + @rate \\cdot @massHeight}{@wheelbase}',
    },
    rearLoad: {
      symbol: 'N_r',
      unit: 'N',
      says: 'load on the rear axle under braking',
      tex: '@weight \\cdot \\frac{@toFront - @rate \\cdot @massHeight}{@wheelbase}',
    },
    idealFront: {
      symbol: 'F_f',
      unit: 'N',
      says: 'ideal braking force at the front axle',
      tex: '@rate \\cdot @frontLoad',
    },
    idealRear: {
      symbol: 'F_r',
      unit: 'N',
      says: 'ideal braking force at the rear axle',
      tex: '@rate \\cdot @rearLoad',
    },
    idealShare: {
      symbol: '\\varphi_i',
      unit: '%',
      says: 'ideal front share at this braking rate',
      tex: '\\frac{@frontLoad}{@weight}',
    },
    frontUsed: {
      symbol: 'k_f',
      unit: '1',
      says: 'adhesion used at the front axle',
      tex: '\\frac{@frontShare \\cdot @rate \\cdot @weight}{@frontLoad}',
    },
    rearUsed: {
      symbol: 'k_r',
      unit: '1',
      says: 'adhesion used at the rear axle',
      tex: '\\frac{(1 - @frontShare) \\cdot @rate \\cdot @weight}{@rearLoad}',
    },
    ...crossingResult,
  },
  assumptions: vehicleAssumptions,
  sources: [
    {
      document: 'Limpert, Brake Design and Safety',
      edition: '3rd ed., 2011',
      clause: 'chapter 7, vehicle braking dynamics',
      basis: 'memory',
    },
    { document: 'Equilibrium of moments about the contact patches', basis: 'derived' },
  ],
  validity: [
    ...vehicleValidity,
    shareValidity,
    { says: 'the braking rate must be greater than zero and at most 1.5', holds: (x) => x.rate > 0 && x.rate <= 1.5 },
  ],
  calculate: (x) => {
    const loads = axleLoads(x, x.rate);
    const used = adhesionUsed(x, x.frontShare, x.rate);
    return {
      ...centreOfMass(x),
      frontLoad: loads.front,
      rearLoad: loads.rear,
      idealFront: x.rate * loads.front,
      idealRear: x.rate * loads.rear,
      idealShare: idealFrontShare(x, x.rate),
      frontUsed: used.front,
      rearUsed: used.rear,
      crossing: crossingRate(x, x.frontShare),
    };
  },
  remark: 'Where the rear axle uses more adhesion than the front, it locks first and the vehicle spins.',
  examples: [
    {
      given: {
        frontMass: '807.6923 kg',
        rearMass: '692.3077 kg',
        wheelbase: '2.6 m',
        massHeight: '0.55 m',
        frontShare: '70 %',
        rate: '0.8',
      },
      gives: {
        frontLoad: '10410.1 N',
        rearLoad: '4299.8 N',
        idealFront: '8328.1 N',
        idealRear: '3439.9 N',
        idealShare: '70.77 %',
        frontUsed: '0.7913',
        rearUsed: '0.8211',
        crossing: '0.7636',
      },
      source: { document: 'Worked by hand, regression only: no published numbers were found', basis: 'derived' },
    },
    {
      given: {
        frontMass: '807.6923 kg',
        rearMass: '692.3077 kg',
        wheelbase: '2.6 m',
        massHeight: '0.55 m',
        frontShare: '70 %',
        rate: '0.3',
      },
      gives: { frontUsed: '0.3489', rearUsed: '0.2261' },
      source: { document: 'Worked by hand, regression only: no published numbers were found', basis: 'derived' },
    },
  ],
});
