import { sheet } from '../sheet.js';
import { massSteps, vehicleInputs, vehicleValidity } from './parts.js';
import { axleLoads, centreOfMass } from './vehicle.js';

/** What brakes: which axles, and which part of each. */
const left = {
  front: { part: 1, frontOn: 1, rearOn: 0 },
  rear: { part: 1, frontOn: 0, rearOn: 1 },
  diagonal: { part: 0.5, frontOn: 1, rearOn: 1 },
} as const;

/** Deceleration that is left when one of two circuits has failed. */
export const circuitFailure = sheet({
  id: 'brake-circuit-failure',
  subject: 'brakes',
  title: 'Deceleration with one circuit failed',
  purpose:
    'What the remaining circuit of a tandem cylinder brakes at the same pedal force, and the adhesion that needs.',
  inputs: {
    frontForce: {
      symbol: 'F_f',
      unit: 'N',
      says: 'braking force of the front axle at this pedal force, both circuits working',
    },
    rearForce: {
      symbol: 'F_r',
      unit: 'N',
      says: 'braking force of the rear axle at this pedal force, both circuits working',
    },
    remaining: {
      symbol: '\\text{remaining circuit}',
      says: 'what still brakes',
      choices: {
        front: 'the front axle',
        rear: 'the rear axle',
        diagonal: 'one front wheel and the opposite rear wheel',
      },
    },
    ...vehicleInputs,
  },
  results: {
    ...massSteps,
    frontOn: {
      symbol: 'e_f',
      unit: '1',
      says: '1 where the circuit brakes at the front, 0 where it does not',
      step: true,
    },
    rearOn: {
      symbol: 'e_r',
      unit: '1',
      says: '1 where the circuit brakes at the rear, 0 where it does not',
      step: true,
    },
    part: {
      symbol: 'w',
      unit: '1',
      says: 'part of an axle’s brakes that it works: 1 both wheels, 1/2 one wheel',
      step: true,
    },
    force: {
      symbol: 'F',
      unit: 'N',
      says: 'braking force that remains',
      tex: '@part \\left(@frontOn \\cdot @frontForce + @rearOn \\cdot @rearForce\\right)',
      step: true,
    },
    deceleration: {
      symbol: 'd',
      unit: 'm/s²',
      says: 'deceleration that remains, as long as no wheel locks',
      tex: '\\frac{@force}{@mass}',
    },
    rate: { symbol: 'z', unit: '1', says: 'braking rate', tex: '\\frac{@force}{@weight}', step: true },
    frontLoad: {
      symbol: 'N_f',
      unit: 'N',
      says: 'load on the front axle',
      tex: '@weight \\cdot \\frac{@toRear + @rate \\cdot @massHeight}{@wheelbase}',
      step: true,
    },
    rearLoad: {
      symbol: 'N_r',
      unit: 'N',
      says: 'load on the rear axle',
      tex: '@weight \\cdot \\frac{@toFront - @rate \\cdot @massHeight}{@wheelbase}',
      step: true,
    },
    frontNeed: {
      symbol: 'k_f',
      unit: '1',
      says: 'adhesion that a braked front wheel needs',
      tex: '@frontOn \\cdot \\frac{@frontForce}{@frontLoad}',
    },
    rearNeed: {
      symbol: 'k_r',
      unit: '1',
      says: 'adhesion that a braked rear wheel needs',
      tex: '@rearOn \\cdot \\frac{@rearForce}{@rearLoad}',
    },
  },
  assumptions: [
    'Tandem master cylinder: the remaining circuit reaches the same pressure at the same pedal force, with a longer pedal. The booster works.',
    'The two wheels of an axle carry the same load.',
    'A pressure-reducing valve that opens when the front circuit fails is not contained.',
  ],
  sources: [{ document: 'Equilibrium of forces and moments', basis: 'derived' }],
  validity: [
    { says: 'braking forces must be greater than zero', holds: (x) => x.frontForce > 0 && x.rearForce > 0 },
    ...vehicleValidity,
  ],
  calculate: (x) => {
    const centre = centreOfMass(x);
    const { part, frontOn, rearOn } = left[x.remaining];
    const force = part * (frontOn * x.frontForce + rearOn * x.rearForce);
    const rate = force / centre.weight;
    const { front: frontLoad, rear: rearLoad } = axleLoads(x, rate);
    return {
      ...centre,
      frontOn,
      rearOn,
      part,
      force,
      deceleration: force / centre.mass,
      rate,
      frontLoad,
      rearLoad,
      frontNeed: (frontOn * x.frontForce) / frontLoad,
      rearNeed: (rearOn * x.rearForce) / rearLoad,
    };
  },
  remark:
    'Where the adhesion needed is more than the road gives, the wheel locks and the deceleration is smaller than shown.',
  examples: [
    {
      given: {
        frontForce: '8000 N',
        rearForce: '3200 N',
        remaining: 'diagonal',
        frontMass: '807.6923 kg',
        rearMass: '692.3077 kg',
        wheelbase: '2.6 m',
        massHeight: '0.55 m',
      },
      gives: { force: '5600 N', deceleration: '3.733 m/s²', rate: '0.3807', frontNeed: '0.879', rearNeed: '0.571' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
    {
      given: {
        frontForce: '8000 N',
        rearForce: '3200 N',
        remaining: 'rear',
        frontMass: '807.6923 kg',
        rearMass: '692.3077 kg',
        wheelbase: '2.6 m',
        massHeight: '0.55 m',
      },
      gives: { deceleration: '2.133 m/s²', frontNeed: '0', rearNeed: '0.524' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});
