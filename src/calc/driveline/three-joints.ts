import { sheet } from '../sheet.js';
import { equivalentAngles, jointAngles, planOf } from './geometry.js';
import {
  angleValidity,
  drivelineSources,
  gearboxInputs,
  jointAssumptions,
  jointStep,
  lengthOf,
  offsetOf,
  pinionInputs,
  planeStep,
  planStep,
  slopeOf,
  speedInput,
  twistOf,
} from './parts.js';

const front = { slope: 'frontSlope', plan: 'frontPlan' };
const rear = { slope: 'rearSlope', plan: 'rearPlan' };
const square = (omega: number, angle: number) => (omega * angle) ** 2;

/** Two shafts with a centre bearing and three joints. */
export const threeJoints = sheet({
  id: 'driveline-three-joints',
  subject: 'driveline',
  title: 'Joint angles of a two-piece shaft',
  purpose:
    'The angles at which three joints work, what they leave of each other’s speed variation, and the accelerations this puts on both shafts, the gearbox and the axle.',
  inputs: {
    ...gearboxInputs,
    frontSlope: slopeOf('v_1', 'the front shaft'),
    frontLength: lengthOf('l_1', 'the front shaft'),
    frontOffset: offsetOf('y_1', 'the front shaft'),
    frontTwist: twistOf('\\gamma_1', 'the front shaft'),
    rearSlope: slopeOf('v_2', 'the rear shaft'),
    rearLength: lengthOf('l_2', 'the rear shaft'),
    rearOffset: offsetOf('y_2', 'the rear shaft'),
    rearTwist: twistOf('\\gamma_2', 'the rear shaft'),
    ...pinionInputs,
    ...speedInput,
  },
  results: {
    frontPlan: planStep('h_1', 'the front shaft', {
      slope: 'frontSlope',
      length: 'frontLength',
      offset: 'frontOffset',
    }),
    rearPlan: planStep('h_2', 'the rear shaft', { slope: 'rearSlope', length: 'rearLength', offset: 'rearOffset' }),
    joint1: jointStep(
      '\\theta_1',
      'angle of the joint at the gearbox',
      { slope: 'gearboxSlope', plan: 'gearboxPlan' },
      front,
    ),
    joint2: jointStep('\\theta_2', 'angle of the joint behind the centre bearing', front, rear),
    joint3: jointStep('\\theta_3', 'angle of the joint at the pinion', rear, {
      slope: 'pinionSlope',
      plan: 'pinionPlan',
    }),
    plane1: planeStep('\\psi_1', 'the joint at the gearbox'),
    plane2: planeStep('\\psi_2', 'the joint behind the centre bearing'),
    plane3: planeStep('\\psi_3', 'the joint at the pinion'),
    pair: {
      symbol: '\\theta_{12}',
      unit: 'deg',
      says: 'equivalent angle of the first two joints, which the rear shaft sees',
      tex: '\\sqrt{\\left|@joint1^2\\, e^{2i \\cdot @plane1} - @joint2^2\\, e^{2i \\cdot (@plane2 - @frontTwist)}\\right|}',
      step: true,
    },
    lastPair: {
      symbol: '\\theta_{32}',
      unit: 'deg',
      says: 'equivalent angle of the last two joints, which the front shaft sees when driven from the axle',
      tex: '\\sqrt{\\left|@joint2^2\\, e^{2i \\cdot @plane2} - @joint3^2\\, e^{2i \\cdot (@plane3 - @rearTwist)}\\right|}',
      step: true,
    },
    equivalent: {
      symbol: '\\theta_e',
      unit: 'deg',
      says: 'equivalent angle of the whole line',
      tex: '\\sqrt{\\left|@joint1^2\\, e^{2i \\cdot @plane1} - @joint2^2\\, e^{2i \\cdot (@plane2 - @frontTwist)} + @joint3^2\\, e^{2i \\cdot (@plane3 - @frontTwist - @rearTwist)}\\right|}',
    },
    fluctuation: {
      symbol: 'U',
      unit: '%',
      says: 'speed variation at the pinion, greatest less smallest over mean',
      tex: '\\sin @equivalent \\cdot \\tan @equivalent',
    },
    torsional: {
      symbol: '\\alpha_t',
      unit: 'rad/s²',
      says: 'torsional acceleration at the pinion',
      tex: '@speed^2 \\cdot @equivalent^2',
    },
    driveFront: {
      symbol: '\\alpha_{d1}',
      unit: 'rad/s²',
      says: 'acceleration of the front shaft when driven from the gearbox',
      tex: '@speed^2 \\cdot @joint1^2',
    },
    driveRear: {
      symbol: '\\alpha_{d2}',
      unit: 'rad/s²',
      says: 'acceleration of the rear shaft when driven from the gearbox',
      tex: '@speed^2 \\cdot @pair^2',
    },
    coastRear: {
      symbol: '\\alpha_{c2}',
      unit: 'rad/s²',
      says: 'acceleration of the rear shaft when driven from the axle',
      tex: '@speed^2 \\cdot @joint3^2',
    },
    coastFront: {
      symbol: '\\alpha_{c1}',
      unit: 'rad/s²',
      says: 'acceleration of the front shaft when driven from the axle',
      tex: '@speed^2 \\cdot @lastPair^2',
    },
  },
  method:
    'The plane of each bend is found by vector geometry in a frame that is carried along the line without turning about the shafts.',
  assumptions: [
    ...jointAssumptions,
    'The centre bearing holds its place. The joint nearest to it belongs to the rear shaft’s front end.',
    'Accelerations are given for each shaft by itself; published three-joint forms add them with the shafts’ inertias.',
  ],
  sources: drivelineSources,
  validity: [
    {
      says: 'each shaft must be longer than its sideways offset',
      holds: (x) => x.frontLength > Math.abs(x.frontOffset) && x.rearLength > Math.abs(x.rearOffset),
    },
    angleValidity('gearboxSlope', 'gearboxPlan', 'frontSlope', 'rearSlope', 'pinionSlope', 'pinionPlan'),
    { says: 'the speed must be greater than zero', holds: (x) => x.speed > 0 },
  ],
  calculate: (x) => {
    const frontPlan = planOf(x.frontSlope, x.frontLength, x.frontOffset);
    const rearPlan = planOf(x.rearSlope, x.rearLength, x.rearOffset);
    const joints = jointAngles([
      { slope: x.gearboxSlope, plan: x.gearboxPlan },
      { slope: x.frontSlope, plan: frontPlan },
      { slope: x.rearSlope, plan: rearPlan },
      { slope: x.pinionSlope, plan: x.pinionPlan },
    ]);
    const [one, two, three] = joints as [(typeof joints)[0], (typeof joints)[0], (typeof joints)[0]];
    const [, pair, equivalent] = equivalentAngles(joints, [x.frontTwist, x.rearTwist]) as [number, number, number];
    const lastPair = equivalentAngles([two, three], [x.rearTwist])[1]!;
    return {
      frontPlan,
      rearPlan,
      joint1: one.angle,
      joint2: two.angle,
      joint3: three.angle,
      plane1: one.plane,
      plane2: two.plane,
      plane3: three.plane,
      pair,
      lastPair,
      equivalent,
      fluctuation: Math.sin(equivalent) * Math.tan(equivalent),
      torsional: square(x.speed, equivalent),
      driveFront: square(x.speed, one.angle),
      driveRear: square(x.speed, pair),
      coastRear: square(x.speed, three.angle),
      coastFront: square(x.speed, lastPair),
    };
  },
  examples: [
    {
      given: {
        gearboxSlope: '3 deg',
        frontSlope: '3.5 deg',
        frontLength: '700 mm',
        rearSlope: '6.5 deg',
        rearLength: '900 mm',
        pinionSlope: '3.5 deg',
        speed: '4000 rpm',
      },
      gives: { joint1: '0.50 deg', joint2: '3.00 deg', joint3: '3.00 deg', equivalent: '0.50 deg' },
      source: {
        document: 'Joints two and three cancel and leave the first, worked by hand, regression only',
        basis: 'derived',
      },
    },
  ],
});
