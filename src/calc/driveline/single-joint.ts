import { sheet } from '../sheet.js';
import { jointAngles } from './geometry.js';
import {
  angleValidity,
  drivelineSources,
  gearboxInputs,
  jointAssumptions,
  jointStep,
  pinionInputs,
  speedInput,
} from './parts.js';

/** Turn of the driving yoke at which the driven shaft accelerates most, and that acceleration for 1 rad/s. */
function peak(angle: number): { turn: number; perSpeedSquared: number } {
  const s2 = Math.sin(angle) ** 2;
  const [a, b] = [1 - s2 / 2, s2 / 2];
  const cos2 = s2 === 0 ? 0 : (Math.sqrt(a ** 2 + 8 * b ** 2) - a) / (2 * b);
  return {
    turn: Math.acos(cos2) / 2,
    perSpeedSquared: (Math.cos(angle) * s2 * Math.sqrt(1 - cos2 ** 2)) / (a - b * cos2) ** 2,
  };
}

/** One joint between two shafts, exactly: nothing cancels it. */
export const singleJoint = sheet({
  id: 'driveline-single-joint',
  subject: 'driveline',
  title: 'A single joint',
  purpose: 'Angle of one joint between two axes, and the speed variation and acceleration that it passes on in full.',
  inputs: { ...gearboxInputs, ...pinionInputs, ...speedInput },
  results: {
    angle: jointStep(
      '\\beta',
      'angle of the joint',
      { slope: 'gearboxSlope', plan: 'gearboxPlan' },
      { slope: 'pinionSlope', plan: 'pinionPlan' },
    ),
    fastest: { symbol: 'i_{max}', unit: '1', says: 'greatest speed ratio in a turn', tex: '\\frac{1}{\\cos @angle}' },
    slowest: { symbol: 'i_{min}', unit: '1', says: 'smallest speed ratio in a turn', tex: '\\cos @angle' },
    fluctuation: {
      symbol: 'U',
      unit: '%',
      says: 'speed variation, greatest less smallest over mean',
      tex: '@fastest - @slowest',
    },
    lead: {
      symbol: '\\delta_{max}',
      unit: 'deg',
      says: 'greatest lead of the driven shaft',
      tex: '\\arctan\\frac{1 - \\cos @angle}{2 \\sqrt{\\cos @angle}}',
    },
    turn: {
      symbol: '\\varphi',
      unit: 'deg',
      says: 'turn of the driving yoke at the greatest acceleration',
      tex: '\\frac{1}{2} \\arccos\\frac{\\sqrt{(2 - \\sin^2 @angle)^2 + 8 \\cdot \\sin^4 @angle} - (2 - \\sin^2 @angle)}{2 \\sin^2 @angle}',
      step: true,
    },
    acceleration: {
      symbol: '\\alpha_{max}',
      unit: 'rad/s²',
      says: 'greatest acceleration of the driven shaft, exactly',
      tex: '@speed^2 \\cdot \\frac{\\cos @angle \\sin^2 @angle \\sin(2 \\cdot @turn)}{\\left(1 - \\sin^2 @angle \\cos^2 @turn\\right)^2}',
    },
    approximate: {
      symbol: '\\alpha',
      unit: 'rad/s²',
      says: 'the same by the form used for lines of several joints',
      tex: '@speed^2 \\cdot @angle^2',
    },
  },
  assumptions: [...jointAssumptions, 'The driving shaft turns evenly.'],
  sources: [
    {
      document: 'Technical pages on universal joints, two makers of cardan shafts',
      clause: 'relation between the turns of both shafts',
      basis: 'quoted',
    },
    { document: 'Second derivative of the relation between the turns, set to its extreme', basis: 'derived' },
    ...drivelineSources.slice(0, 1),
  ],
  validity: [
    angleValidity('gearboxSlope', 'gearboxPlan', 'pinionSlope', 'pinionPlan'),
    { says: 'the speed must be greater than zero', holds: (x) => x.speed > 0 },
  ],
  calculate: (x) => {
    const { angle } = jointAngles([
      { slope: x.gearboxSlope, plan: x.gearboxPlan },
      { slope: x.pinionSlope, plan: x.pinionPlan },
    ])[0]!;
    const { turn, perSpeedSquared } = peak(angle);
    const cos = Math.cos(angle);
    return {
      angle,
      fastest: 1 / cos,
      slowest: cos,
      fluctuation: 1 / cos - cos,
      lead: Math.atan((1 - cos) / (2 * Math.sqrt(cos))),
      turn,
      acceleration: x.speed ** 2 * perSpeedSquared,
      approximate: (x.speed * angle) ** 2,
    };
  },
  examples: [
    {
      given: { gearboxSlope: '0 deg', pinionSlope: '10 deg', speed: '3000 rpm' },
      gives: {
        fastest: '1.01543',
        slowest: '0.98481',
        fluctuation: '3.062 %',
        lead: '0.4386 deg',
        acceleration: '3022.7 rad/s²',
        approximate: '3006.5 rad/s²',
      },
      source: {
        document: 'Exact relation of a joint worked independently by stepping through a turn, regression only',
        basis: 'derived',
      },
    },
    {
      given: { gearboxSlope: '0 deg', pinionSlope: '3 deg', pinionPlan: '4 deg', speed: '3000 rpm' },
      gives: { angle: '4.9942 deg' },
      source: { document: 'Compound angle 3° and 4° by vector geometry, regression only', basis: 'derived' },
    },
  ],
});
