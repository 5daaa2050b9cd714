import { sheet } from '../sheet.js';
import { equivalentJoints } from './geometry.js';
import { drivelineSources } from './parts.js';

const STEEPEST = Math.PI / 4 + 1e-9;

/** Joints whose angles were measured at the joints themselves, such as those of a steering shaft. */
export const jointsInSeries = sheet({
  id: 'joints-in-series',
  subject: 'driveline',
  title: 'Joints in series, by their measured angles',
  purpose:
    'What the joints of a shaft leave of each other’s speed variation: how unevenly the last shaft turns, where the first turns evenly.',
  inputs: {
    joints: {
      symbol: '\\text{joints}',
      says: 'one row a joint, in their order',
      columns: {
        angle: { symbol: '\\theta_i', unit: 'deg', says: 'angle of the joint' },
        plane: {
          symbol: '\\psi_i',
          unit: 'deg',
          says: 'turn of the plane in which it bends against that of the joint before, clockwise along the shaft; 0 where all shafts lie in one plane',
        },
        forks: {
          symbol: '\\gamma_i',
          unit: 'deg',
          says: 'turn of the fork at this joint against the fork at the other end of the shaft before it, clockwise along the shaft; 0 where both lie in one plane',
        },
      },
    },
  },
  results: {
    equivalent: {
      symbol: '\\theta_e',
      unit: 'deg',
      says: 'equivalent angle: one joint at this angle, exactly, would give the same speed variation',
    },
    fluctuation: {
      symbol: 'U',
      unit: '%',
      says: 'speed variation at the last shaft: greatest less smallest over mean',
      tex: '\\sin @equivalent \\cdot \\tan @equivalent',
    },
    fastest: {
      symbol: 'i_{max}',
      unit: '1',
      says: 'greatest speed ratio in a turn',
      tex: '\\frac{1}{\\cos @equivalent}',
    },
    slowest: { symbol: 'i_{min}', unit: '1', says: 'smallest speed ratio in a turn', tex: '\\cos @equivalent' },
  },
  method:
    'The relation tan φ2 = tan φ1/cos θ of each joint is put into the next one with the turn between their planes and forks, which gives the relation of one joint again.',
  assumptions: [
    'Cross-and-bearing joints; a constant-velocity joint and a rubber coupling add nothing and are left out.',
  ],
  sources: drivelineSources,
  validity: [
    { says: 'at least one joint must be given', holds: (x) => x.joints.length > 0 },
    {
      says: 'joint angles must lie from 0 to 45 degrees',
      holds: (x) => x.joints.every(({ angle }) => angle >= 0 && angle <= STEEPEST),
    },
  ],
  calculate: ({ joints }) => {
    let plane = 0;
    const bent = joints.map((joint, i) => {
      plane += i === 0 ? 0 : joint.plane;
      return { angle: joint.angle, plane };
    });
    const twists = joints.slice(1).map((joint) => joint.forks);
    const { angle } = equivalentJoints(bent, twists).at(-1)!;
    const cos = Math.cos(angle);
    return { equivalent: angle, fluctuation: 1 / cos - cos, fastest: 1 / cos, slowest: cos };
  },
  remark:
    'Two equal angles cancel only where the forks stand in line as the planes do. With the forks a quarter turn out, 20° and 20° leave more than either alone.',
  examples: [
    {
      given: { joints: [{ angle: '10 deg', plane: '0 deg', forks: '0 deg' }] },
      gives: { fluctuation: '3.062 %', fastest: '1.01543', slowest: '0.98481' },
      source: {
        document: 'Exact relation of a joint worked independently by stepping through a turn, regression only',
        basis: 'derived',
      },
    },
    {
      given: {
        joints: [
          { angle: '20 deg', plane: '0 deg', forks: '0 deg' },
          { angle: '20 deg', plane: '0 deg', forks: '90 deg' },
        ],
      },
      gives: { fluctuation: '24.95 %' },
      source: {
        document:
          'Two joints a quarter turn out of phase worked independently by stepping through a turn, regression only',
        basis: 'derived',
      },
    },
  ],
});
