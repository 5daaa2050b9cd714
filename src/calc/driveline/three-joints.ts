import { sheet } from '../sheet.js';
import { equivalentJoints, jointAngles, planOf } from './geometry.js';
import {
  angleValidity,
  chainAssumptions,
  drivelineSources,
  equivalentSays,
  fluctuationResult,
  gearboxInputs,
  halfStep,
  jointAssumptions,
  jointStep,
  lengthOf,
  offsetOf,
  pinionInputs,
  planeStep,
  planStep,
  slopeOf,
  speedInput,
  torsionalResult,
  twistOf,
} from './parts.js';

const front = { slope: 'frontSlope', plan: 'frontPlan' };
const rear = { slope: 'rearSlope', plan: 'rearPlan' };
/** The first two joints as one: its size is tan²(θ/2), half its argument the plane. */
const firstPair =
  '\\frac{@half1\\, e^{2i \\cdot @plane1} - @half2\\, e^{2i \\cdot (@plane2 - @frontTwist)}}{1 - @half1 \\cdot @half2 \\cdot e^{2i \\cdot (@plane1 - @plane2 + @frontTwist)}}';
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
    half1: halfStep('t_1', 'joint1'),
    half2: halfStep('t_2', 'joint2'),
    half3: halfStep('t_3', 'joint3'),
    pair: {
      symbol: '\\theta_{12}',
      unit: 'deg',
      says: 'equivalent angle of the first two joints, which the rear shaft sees',
      tex: `2 \\arctan\\left(\\sqrt{\\left|${firstPair}\\right|}\\right)`,
      step: true,
    },
    pairPlane: {
      symbol: '\\psi_{12}',
      unit: 'deg',
      says: 'plane in which that one joint would bend',
      tex: `\\frac{1}{2} \\arg\\left(${firstPair}\\right)`,
      step: true,
    },
    lastPair: {
      symbol: '\\theta_{32}',
      unit: 'deg',
      says: 'equivalent angle of the last two joints, which the front shaft sees when driven from the axle',
      tex: '2 \\arctan\\left(\\sqrt{\\left|\\frac{@half2\\, e^{2i \\cdot @plane2} - @half3\\, e^{2i \\cdot (@plane3 - @rearTwist)}}{1 - @half2 \\cdot @half3 \\cdot e^{2i \\cdot (@plane2 - @plane3 + @rearTwist)}}\\right|}\\right)',
      step: true,
    },
    equivalent: {
      symbol: '\\theta_e',
      unit: 'deg',
      says: `equivalent angle of the whole line: ${equivalentSays} at the pinion`,
      tex: '2 \\arctan\\left(\\sqrt{\\left|\\frac{\\left(\\tan \\frac{@pair}{2}\\right)^2\\, e^{2i \\cdot @pairPlane} + @half3\\, e^{2i \\cdot (@plane3 - @frontTwist - @rearTwist)}}{1 + \\left(\\tan \\frac{@pair}{2}\\right)^2 \\cdot @half3 \\cdot e^{2i \\cdot (@pairPlane - @plane3 + @frontTwist + @rearTwist)}}\\right|}\\right)',
    },
    fluctuation: fluctuationResult,
    torsional: torsionalResult,
    driveFront: {
      symbol: '\\alpha_{d1}',
      unit: 'rad/s²',
      says: 'acceleration of the front shaft when driven from the gearbox, second order',
      tex: '@speed^2 \\cdot @joint1^2',
    },
    driveRear: {
      symbol: '\\alpha_{d2}',
      unit: 'rad/s²',
      says: 'acceleration of the rear shaft when driven from the gearbox, second order',
      tex: '@speed^2 \\cdot @pair^2',
    },
    coastRear: {
      symbol: '\\alpha_{c2}',
      unit: 'rad/s²',
      says: 'acceleration of the rear shaft when driven from the axle, second order',
      tex: '@speed^2 \\cdot @joint3^2',
    },
    coastFront: {
      symbol: '\\alpha_{c1}',
      unit: 'rad/s²',
      says: 'acceleration of the front shaft when driven from the axle, second order',
      tex: '@speed^2 \\cdot @lastPair^2',
    },
  },
  method:
    'The plane of each bend is found by vector geometry in a frame that is carried along the line without turning about the shafts. The relation tan φ2 = tan φ1/cos θ of each joint is put into the next one with the turn between their planes, which gives the relation of one joint again.',
  assumptions: [
    ...jointAssumptions,
    ...chainAssumptions,
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
    const chain = equivalentJoints(joints, [x.frontTwist, x.rearTwist]);
    const { angle: pair, plane: pairPlane } = chain[1]!;
    const equivalent = chain[2]!.angle;
    const lastPair = equivalentJoints([two, three], [x.rearTwist])[1]!.angle;
    return {
      frontPlan,
      rearPlan,
      joint1: one.angle,
      joint2: two.angle,
      joint3: three.angle,
      plane1: one.plane,
      plane2: two.plane,
      plane3: three.plane,
      half1: Math.tan(one.angle / 2) ** 2,
      half2: Math.tan(two.angle / 2) ** 2,
      half3: Math.tan(three.angle / 2) ** 2,
      pair,
      pairPlane,
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
