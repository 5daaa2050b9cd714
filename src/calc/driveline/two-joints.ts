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

const shaft = { slope: 'shaftSlope', plan: 'shaftPlan' };

/** One shaft with a joint at each end. */
export const twoJoints = sheet({
  id: 'driveline-two-joints',
  subject: 'driveline',
  title: 'Joint angles of a one-piece shaft',
  purpose:
    'The angles at which both joints work, what they leave of each other’s speed variation, and the accelerations this puts on the shaft, the gearbox and the axle.',
  inputs: {
    ...gearboxInputs,
    shaftSlope: slopeOf('v_1', 'the shaft'),
    shaftLength: lengthOf('l_1', 'the shaft'),
    shaftOffset: offsetOf('y_1', 'the shaft'),
    shaftTwist: twistOf('\\gamma_1', 'the shaft'),
    ...pinionInputs,
    ...speedInput,
  },
  results: {
    shaftPlan: planStep('h_1', 'the shaft', { slope: 'shaftSlope', length: 'shaftLength', offset: 'shaftOffset' }),
    joint1: jointStep(
      '\\theta_1',
      'angle of the joint at the gearbox',
      { slope: 'gearboxSlope', plan: 'gearboxPlan' },
      shaft,
    ),
    joint2: jointStep('\\theta_2', 'angle of the joint at the pinion', shaft, {
      slope: 'pinionSlope',
      plan: 'pinionPlan',
    }),
    difference: {
      symbol: '\\Delta\\theta',
      unit: 'deg',
      says: 'difference of the two joint angles',
      tex: '\\left|@joint1 - @joint2\\right|',
    },
    plane1: planeStep('\\psi_1', 'the joint at the gearbox'),
    plane2: planeStep('\\psi_2', 'the joint at the pinion'),
    half1: halfStep('t_1', 'joint1'),
    half2: halfStep('t_2', 'joint2'),
    equivalent: {
      symbol: '\\theta_e',
      unit: 'deg',
      says: `equivalent angle: ${equivalentSays} at the pinion`,
      tex: '2 \\arctan\\left(\\sqrt{\\left|\\frac{@half1\\, e^{2i \\cdot @plane1} - @half2\\, e^{2i \\cdot (@plane2 - @shaftTwist)}}{1 - @half1 \\cdot @half2 \\cdot e^{2i \\cdot (@plane1 - @plane2 + @shaftTwist)}}\\right|}\\right)',
    },
    fluctuation: fluctuationResult,
    torsional: torsionalResult,
    inertiaDrive: {
      symbol: '\\alpha_d',
      unit: 'rad/s²',
      says: 'acceleration of the shaft when driven from the gearbox, second order',
      tex: '@speed^2 \\cdot @joint1^2',
    },
    inertiaCoast: {
      symbol: '\\alpha_c',
      unit: 'rad/s²',
      says: 'acceleration of the shaft when driven from the axle, second order',
      tex: '@speed^2 \\cdot @joint2^2',
    },
  },
  method:
    'The plane of each bend is found by vector geometry in a frame that is carried along the line without turning about the shafts. The relation tan φ2 = tan φ1/cos θ of each joint is put into the next one with the turn between their planes, which gives the relation of one joint again.',
  assumptions: [...jointAssumptions, ...chainAssumptions],
  sources: drivelineSources,
  validity: [
    {
      says: 'the shaft must be longer than its sideways offset',
      holds: (x) => x.shaftLength > Math.abs(x.shaftOffset),
    },
    angleValidity('gearboxSlope', 'gearboxPlan', 'shaftSlope', 'pinionSlope', 'pinionPlan'),
    { says: 'the speed must be greater than zero', holds: (x) => x.speed > 0 },
  ],
  calculate: (x) => {
    const shaftPlan = planOf(x.shaftSlope, x.shaftLength, x.shaftOffset);
    const joints = jointAngles([
      { slope: x.gearboxSlope, plan: x.gearboxPlan },
      { slope: x.shaftSlope, plan: shaftPlan },
      { slope: x.pinionSlope, plan: x.pinionPlan },
    ]);
    const [one, two] = joints as [(typeof joints)[0], (typeof joints)[0]];
    const equivalent = equivalentJoints(joints, [x.shaftTwist])[1]!.angle;
    return {
      shaftPlan,
      joint1: one.angle,
      joint2: two.angle,
      difference: Math.abs(one.angle - two.angle),
      plane1: one.plane,
      plane2: two.plane,
      half1: Math.tan(one.angle / 2) ** 2,
      half2: Math.tan(two.angle / 2) ** 2,
      equivalent,
      fluctuation: Math.sin(equivalent) * Math.tan(equivalent),
      torsional: (x.speed * equivalent) ** 2,
      inertiaDrive: (x.speed * one.angle) ** 2,
      inertiaCoast: (x.speed * two.angle) ** 2,
    };
  },
  remark:
    'Equal angles at both joints do not cancel where the joints bend in different planes: 4° and 4° in planes square to each other leave 5.65°.',
  examples: [
    {
      given: {
        gearboxSlope: '3.0 deg',
        shaftSlope: '7.0 deg',
        shaftLength: '1200 mm',
        pinionSlope: '4.5 deg',
        speed: '3000 rpm',
      },
      gives: {
        joint1: '4.0 deg',
        joint2: '2.5 deg',
        equivalent: '3.12 deg',
        torsional: '293 rad/s²',
        inertiaDrive: '481 rad/s²',
        inertiaCoast: '188 rad/s²',
      },
      source: {
        document: 'Worked by hand and confirmed by simulation of two joints, regression only',
        basis: 'derived',
      },
    },
    {
      given: {
        gearboxSlope: '3 deg',
        shaftSlope: '6 deg',
        shaftLength: '1300 mm',
        shaftTwist: '90 deg',
        pinionSlope: '3 deg',
        speed: '4000 rpm',
      },
      gives: { joint1: '3.00 deg', joint2: '3.00 deg', equivalent: '4.24 deg' },
      source: { document: 'Yokes set at 90°: cos θ_e = cos² 3°, worked by hand, regression only', basis: 'derived' },
    },
    {
      given: {
        gearboxSlope: '20 deg',
        shaftSlope: '0 deg',
        shaftLength: '1300 mm',
        shaftTwist: '90 deg',
        pinionSlope: '20 deg',
        speed: '1000 rpm',
      },
      gives: { equivalent: '27.991 deg', fluctuation: '24.95 %' },
      source: {
        document: 'Yokes set at 90°: the speed ratio runs from cos² 20° to 1/cos² 20°, worked by hand, regression only',
        basis: 'derived',
      },
    },
  ],
});
