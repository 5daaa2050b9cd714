import { sheet } from '../sheet.js';

/** Where a link stands at one position of the axle: from its body joint to its axle joint, and the roll of the axle. */
export interface LinkStand {
  rearward: number;
  leftward: number;
  upward: number;
  roll: number;
}

/**
 * Angle by which a link is out of square with the bolt through its end.
 *
 * @param plan turn of the bolt in plan from straight across the car, its left end forward positive
 * @param roll turn of the bolt about the length of the car, its left end up positive
 */
export function misalignment(
  { rearward, leftward, upward }: Pick<LinkStand, 'rearward' | 'leftward' | 'upward'>,
  plan: number,
  roll: number,
): number {
  const along =
    -rearward * Math.sin(plan) + leftward * Math.cos(plan) * Math.cos(roll) + upward * Math.cos(plan) * Math.sin(roll);
  return Math.abs(Math.asin(along / Math.hypot(rearward, leftward, upward)));
}

/** Slope of the link in side view, which the bush or the ball turns through. */
const swing = ({ rearward, upward }: LinkStand) => Math.atan2(upward, Math.abs(rearward));

export const jointMisalignment = sheet({
  id: 'joint-misalignment',
  subject: 'links',
  title: 'Misalignment and swing of a link’s joints through travel',
  purpose:
    'How far the ends of a link tilt out of square with their bolts, and how far they swing about them, over all positions of the axle that are given.',
  inputs: {
    positions: {
      symbol: '\\text{positions}',
      says: 'the link at ride height, at both ends of travel, and with the axle rolled both ways',
      columns: {
        rearward: { symbol: 'x', unit: 'mm', says: 'axle joint behind the body joint' },
        leftward: { symbol: 'y', unit: 'mm', says: 'axle joint to the left of the body joint' },
        upward: { symbol: 'z', unit: 'mm', says: 'axle joint above the body joint' },
        roll: { symbol: '\\varphi', unit: 'deg', says: 'roll of the axle against the body, left side up positive' },
      },
    },
    bodyPlan: {
      symbol: '\\kappa_b',
      unit: 'deg',
      says: 'turn of the body bolt in plan from straight across, left end forward positive',
      usual: '0 deg',
    },
    axlePlan: {
      symbol: '\\kappa_a',
      unit: 'deg',
      says: 'turn of the axle bolt in plan from straight across, left end forward positive',
      usual: '0 deg',
    },
  },
  results: {
    body: { symbol: '\\beta_b', unit: 'deg', says: 'greatest misalignment of the joint at the body' },
    axle: { symbol: '\\beta_a', unit: 'deg', says: 'greatest misalignment of the joint at the axle' },
    swing: {
      symbol: '\\Delta\\alpha',
      unit: 'deg',
      says: 'swing of the link in side view, from its lowest to its highest slope',
    },
  },
  method:
    'The misalignment is the angle between the link and the plane square to the bolt: the sine of it is the scalar product of the link’s direction with the bolt’s. The axle’s bolt rolls with the axle. The greatest over all positions is shown.',
  assumptions: ['A rod end was set in the middle of its play. Bolts lie level at ride height.'],
  sources: [{ document: 'Vector geometry', basis: 'derived' }],
  validity: [
    { says: 'at least two positions are needed', holds: (x) => x.positions.length >= 2 },
    {
      says: 'at every position the axle joint must lie behind or ahead of the body joint',
      holds: (x) => x.positions.every((p) => p.rearward !== 0),
    },
  ],
  calculate: ({ positions, bodyPlan, axlePlan }) => {
    const slopes = positions.map(swing);
    return {
      body: Math.max(...positions.map((p) => misalignment(p, bodyPlan, 0))),
      axle: Math.max(...positions.map((p) => misalignment(p, axlePlan, p.roll))),
      swing: Math.max(...slopes) - Math.min(...slopes),
    };
  },
  remark:
    'A rod end that runs out of misalignment bends its shank; a bush that is twisted beyond its maker’s angle acts as a spring and tears.',
  examples: [
    {
      given: {
        positions: [
          { rearward: '600 mm', leftward: '0 mm', upward: '0 mm', roll: '0 deg' },
          { rearward: '590 mm', leftward: '0 mm', upward: '100 mm', roll: '6 deg' },
          { rearward: '590 mm', leftward: '0 mm', upward: '-100 mm', roll: '-6 deg' },
        ],
      },
      gives: { body: '0.00 deg', axle: '1.00 deg', swing: '19.24 deg' },
      source: {
        document: 'Worked by hand, regression only: asin(100 sin 6° / 598.4), 2 atan(100 / 590)',
        basis: 'derived',
      },
    },
    {
      given: {
        positions: [
          { rearward: '400 mm', leftward: '300 mm', upward: '0 mm', roll: '0 deg' },
          { rearward: '400 mm', leftward: '300 mm', upward: '0 mm', roll: '0 deg' },
        ],
        axlePlan: '36.870 deg',
      },
      gives: { body: '36.87 deg', axle: '0.00 deg' },
      source: { document: 'Arm of 3 : 4 : 5 in plan, worked by hand, regression only', basis: 'derived' },
    },
  ],
});
