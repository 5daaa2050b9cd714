import { sheet } from '../sheet.js';
import { massSteps, vehicleInputs, vehicleValidity } from './parts.js';
import { centreOfMass } from './vehicle.js';

/** Up to which braking rate the front axle locks first where a valve holds the rear pressure back. */
export const valveCrossing = sheet({
  id: 'brake-valve-crossing',
  subject: 'brakes',
  title: 'Rate up to which the front locks first, with a pressure-reducing valve',
  purpose:
    'A valve gives the rear less of the force the harder the car brakes. The lowest braking rate at which the rear axle uses as much adhesion as the front, over all pressures.',
  inputs: {
    ...vehicleInputs,
    frontForce: { symbol: 'F_f', unit: 'N', says: 'braking force of the front axle at the pressures below' },
    rearForce: { symbol: 'F_r', unit: 'N', says: 'braking force of the rear axle at the pressures below' },
    frontPressure: { symbol: 'p_f', unit: 'MPa', says: 'pressure in the line, front brakes' },
    rearPressure: { symbol: 'p_r', unit: 'MPa', says: 'pressure at the rear brakes' },
    valveKnee: { symbol: 'p_k', unit: 'MPa', says: 'pressure above which the valve reduces the rear pressure' },
    valveSlope: { symbol: 's', unit: '1', says: 'rise of rear pressure per front pressure above that' },
  },
  results: {
    ...massSteps,
    kneeShare: {
      symbol: '\\varphi_k',
      unit: '%',
      says: 'front share below the knee',
      tex: '\\frac{@frontForce / @frontPressure}{@frontForce / @frontPressure + @rearForce / @rearPressure}',
    },
    kneeRate: {
      symbol: 'z_k',
      unit: '1',
      says: 'braking rate at the knee',
      tex: '\\frac{@valveKnee}{@weight} \\left(\\frac{@frontForce}{@frontPressure} + \\frac{@rearForce}{@rearPressure}\\right)',
    },
    crossing: {
      symbol: 'z^*',
      unit: '1',
      says: 'braking rate above which the rear axle uses more adhesion than the front',
    },
  },
  method:
    'Below the knee the share is constant, and the rate follows as without a valve; it holds where it is not above the rate of the knee. Above the knee both forces are straight lines of the front pressure, and the rate is where front share times wheelbase less the distance of the centre of mass to the rear axle equals rate times its height: the greater root of a quadratic equation in the pressure.',
  assumptions: [
    'Two axles, level road, steady deceleration; suspension movement, air drag and rolling resistance are left out.',
    'Forces grow in proportion to pressure.',
  ],
  sources: [
    { document: 'Equilibrium of moments about the contact patches', basis: 'derived' },
    {
      document: 'Limpert, Brake Design and Safety',
      edition: '3rd ed., 2011',
      clause: 'chapter 7, reducer valves',
      basis: 'memory',
    },
  ],
  validity: [
    ...vehicleValidity,
    {
      says: 'forces and pressures must be greater than zero',
      holds: (x) => Math.min(x.frontForce, x.rearForce, x.frontPressure, x.rearPressure) > 0,
    },
    {
      says: 'the valve’s knee must not be negative and its slope must lie between 0 and 1',
      holds: (x) => x.valveKnee >= 0 && x.valveSlope >= 0 && x.valveSlope <= 1,
    },
  ],
  calculate: (x) => {
    const centre = centreOfMass(x);
    const { weight, toRear } = centre;
    const [front, rear] = [x.frontForce / x.frontPressure, x.rearForce / x.rearPressure];
    const kneeShare = front / (front + rear);
    const kneeRate = ((front + rear) * x.valveKnee) / weight;
    const below = (kneeShare * x.wheelbase - toRear) / x.massHeight;
    const crossing = below <= kneeRate ? below : above();
    return { ...centre, kneeShare, kneeRate, crossing };

    /** Sum of the forces is `slope · p + offset` above the knee. */
    function above(): number {
      const slope = front + rear * x.valveSlope;
      const offset = rear * x.valveKnee * (1 - x.valveSlope);
      const lever = x.massHeight / weight;
      const a = lever * slope ** 2;
      const b = 2 * lever * slope * offset + toRear * slope - front * x.wheelbase;
      const c = toRear * offset + lever * offset ** 2;
      const pressure = (-b + Math.sqrt(Math.max(0, b ** 2 - 4 * a * c))) / (2 * a);
      return (slope * pressure + offset) / weight;
    }
  },
  examples: [
    {
      given: {
        frontMass: '807.6923 kg',
        rearMass: '692.3077 kg',
        wheelbase: '2.6 m',
        massHeight: '0.55 m',
        frontForce: '4617 N',
        rearForce: '1978.71 N',
        frontPressure: '3.6169 MPa',
        rearPressure: '3.6169 MPa',
        valveKnee: '3.0 MPa',
        valveSlope: '1',
      },
      gives: { kneeShare: '70.00 %', crossing: '0.7636' },
      source: { document: 'A valve that reduces nothing, by hand, regression only', basis: 'derived' },
    },
  ],
});
