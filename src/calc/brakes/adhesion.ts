import { OutOfRange, sheet } from '../sheet.js';
import {
  crossingResult,
  massSteps,
  shareInput,
  shareValidity,
  vehicleAssumptions,
  vehicleInputs,
  vehicleValidity,
} from './parts.js';
import { centreOfMass, crossingRate, ratesAtAdhesion, type Vehicle } from './vehicle.js';

const [lowest, highest] = [0.2, 0.8];

/** Slope of the line z = 0.1 + c (k − 0.2); undefined where nobody has read it in the regulation yet. */
const slopes: Readonly<Record<'un-r13' | 'directive-71-320' | 'un-r13-h', number | undefined>> = {
  'un-r13': 0.85,
  'directive-71-320': 0.85,
  'un-r13-h': undefined,
};

export const requiredRate = (adhesion: number, slope: number) => 0.1 + slope * (adhesion - lowest);

/** Where the braking rate reached comes closest to the line, or falls furthest below it. */
export function tightestAdhesion(
  vehicle: Vehicle,
  frontShare: number,
  slope: number,
): { adhesion: number; reached: number } {
  const { toRear } = centreOfMass(vehicle);
  // The front axle's rate bends upwards with k, so that its nearest point to the line can lie inside the range; the rear's cannot.
  const inside =
    (frontShare * vehicle.wheelbase - Math.sqrt((toRear * frontShare * vehicle.wheelbase) / slope)) /
    vehicle.massHeight;
  const at = (adhesion: number) => {
    const { front, rear } = ratesAtAdhesion(vehicle, frontShare, adhesion);
    return { adhesion, reached: Math.min(front, rear) };
  };
  const margin = (p: { adhesion: number; reached: number }) => p.reached - requiredRate(p.adhesion, slope);
  return [lowest, Math.min(highest, Math.max(lowest, inside)), highest]
    .map(at)
    .reduce((a, b) => (margin(b) < margin(a) ? b : a));
}

export const adhesionUtilisation = sheet({
  id: 'adhesion-utilisation',
  subject: 'brakes',
  title: 'Adhesion utilisation over the whole range',
  purpose:
    'Whether, at every adhesion from 0.2 to 0.8, the vehicle reaches the braking rate that the regulation asks for before an axle locks, and which axle locks first. Work it laden and unladen.',
  inputs: {
    ...vehicleInputs,
    ...shareInput,
    regulation: {
      symbol: '\\text{regulation}',
      says: 'regulation whose line is used',
      choices: {
        'un-r13': 'UN Regulation 13 family',
        'directive-71-320': 'Directive 71/320/EEC',
        'un-r13-h': 'UN Regulation 13-H (coefficient not confirmed: gives no number)',
      },
    },
  },
  results: {
    ...massSteps,
    slope: { symbol: 'c', unit: '1', says: 'coefficient of the regulation', step: true },
    adhesion: { symbol: 'k', unit: '1', says: 'adhesion at which the margin is smallest', step: true },
    reached: {
      symbol: 'z_r',
      unit: '1',
      says: 'braking rate reached there when the first axle uses it up',
      tex: '\\min\\left(\\frac{@adhesion \\cdot @toRear}{@frontShare \\cdot @wheelbase - @adhesion \\cdot @massHeight},\\ \\frac{@adhesion \\cdot @toFront}{(1 - @frontShare) \\cdot @wheelbase + @adhesion \\cdot @massHeight}\\right)',
    },
    required: {
      symbol: 'z_{req}',
      unit: '1',
      says: 'braking rate asked for there',
      tex: '0.1 + @slope \\cdot (@adhesion - 0.2)',
    },
    margin: { symbol: '\\Delta z', unit: '1', says: 'smallest margin over the range', tex: '@reached - @required' },
    ...crossingResult,
  },
  method:
    'The margin is taken at both ends of the range of adhesion and, for the front axle, at the point between them where its curve runs parallel to the line; the smallest is shown. An axle that never uses up the adhesion is left out.',
  assumptions: vehicleAssumptions,
  sources: [
    {
      document: 'Directive 71/320/EEC and UN Regulation 13',
      clause: 'line z = 0.1 + 0.85 (k − 0.2), as a handbook of automotive engineering (chapter 12.1) reproduces it',
      basis: 'quoted',
    },
    {
      document: 'UN Regulation 13',
      clause: 'Annex 10: front curve above rear curve for z from 0.15 to 0.8',
      basis: 'memory',
    },
  ],
  validity: [...vehicleValidity, shareValidity],
  calculate: (x) => {
    const slope = slopes[x.regulation];
    if (slope === undefined) throw new OutOfRange('coefficient not confirmed, read Annex 5 of UN Regulation 13-H');
    const { adhesion, reached } = tightestAdhesion(x, x.frontShare, slope);
    const required = requiredRate(adhesion, slope);
    return {
      ...centreOfMass(x),
      slope,
      adhesion,
      reached,
      required,
      margin: reached - required,
      crossing: crossingRate(x, x.frontShare),
    };
  },
  examples: [
    {
      given: {
        frontMass: '807.6923 kg',
        rearMass: '692.3077 kg',
        wheelbase: '2.6 m',
        massHeight: '0.55 m',
        frontShare: '70 %',
        regulation: 'un-r13',
      },
      gives: { slope: '0.85', crossing: '0.7636' },
      source: { document: 'Worked by hand, regression only: no published numbers were found', basis: 'derived' },
    },
  ],
});
