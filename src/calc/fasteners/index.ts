import type { Sheet } from '../sheet.js';
import { bearingAs4100, boltAs4100 } from './bolt-as4100.js';
import { bearingEn1993, boltEn1993 } from './bolt-en1993.js';
import { boltLoadsCoarse, boltLoadsFine } from './bolt-loads.js';
import { boltLoadsInch } from './bolt-loads-inch.js';
import { boltedJoint, jointStiffness } from './joint.js';
import { pipeThread } from './npt.js';
import { metricStressAreaSheet, unifiedStressAreaSheet } from './stress-area.js';
import { threadEngagement } from './thread-engagement.js';
import { tighteningTorque, tighteningTorqueFriction } from './torque.js';

export const sheets = [
  metricStressAreaSheet,
  unifiedStressAreaSheet,
  boltLoadsCoarse,
  boltLoadsFine,
  boltLoadsInch,
  tighteningTorque,
  tighteningTorqueFriction,
  jointStiffness,
  boltedJoint,
  boltAs4100,
  bearingAs4100,
  boltEn1993,
  bearingEn1993,
  threadEngagement,
  pipeThread,
] as unknown as readonly Sheet[];
