import type { Sheet } from '../sheet.js';
import { tubeCriticalSpeed } from './critical-speed.js';
import { jointsInSeries } from './joints-in-series.js';
import { singleJoint } from './single-joint.js';
import { slipEngagement } from './slip.js';
import { highestShaftSpeed, jointAngleLimit, secondJointAngle } from './speed.js';
import { threeJoints } from './three-joints.js';
import { shaftTorque, tubeTorsion } from './torsion.js';
import { twoJoints } from './two-joints.js';

export const sheets = [
  highestShaftSpeed,
  singleJoint,
  twoJoints,
  threeJoints,
  jointsInSeries,
  jointAngleLimit,
  secondJointAngle,
  tubeCriticalSpeed,
  shaftTorque,
  tubeTorsion,
  slipEngagement,
] as unknown as readonly Sheet[];
