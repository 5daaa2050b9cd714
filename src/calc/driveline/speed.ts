import { sheet } from '../sheet.js';

export const highestShaftSpeed = sheet({
  id: 'highest-shaft-speed',
  subject: 'driveline',
  title: 'Highest speed of the shaft',
  purpose:
    'How fast the shaft turns at the highest engine speed in the highest gear; an overdrive makes it faster than the engine.',
  inputs: {
    engineSpeed: { symbol: 'n_e', unit: 'rpm', says: 'highest engine speed, at the limiter or the maker’s red line' },
    gearRatio: { symbol: 'i_g', unit: '1', says: 'ratio of the highest gear (below 1 for an overdrive gear)' },
    overdriveRatio: {
      symbol: 'i_o',
      unit: '1',
      says: 'ratio of a separate overdrive or transfer case in its fastest setting',
      usual: '1',
    },
  },
  results: {
    speed: {
      symbol: 'n_s',
      unit: 'rpm',
      says: 'highest speed of the shaft',
      tex: '\\frac{@engineSpeed}{@gearRatio \\cdot @overdriveRatio}',
    },
  },
  assumptions: [
    'The engine can reach its highest speed in the highest gear. Where it cannot, this is on the safe side.',
  ],
  sources: [{ document: 'Ratio of a gear train: engine speed over shaft speed', basis: 'derived' }],
  validity: [
    { says: 'the engine speed must be greater than zero', holds: (x) => x.engineSpeed > 0 },
    { says: 'ratios must be greater than zero', holds: (x) => x.gearRatio > 0 && x.overdriveRatio > 0 },
  ],
  calculate: ({ engineSpeed, gearRatio, overdriveRatio }) => ({ speed: engineSpeed / (gearRatio * overdriveRatio) }),
  examples: [
    {
      given: { engineSpeed: '6000 rpm', gearRatio: '0.80' },
      gives: { speed: '7500 rpm' },
      source: { document: 'Worked by hand, regression only', basis: 'derived' },
    },
  ],
});

const speed = { symbol: '\\omega', unit: 'rpm', says: 'highest speed of the shaft' } as const;
const positive = {
  says: 'the speed and the limit must be greater than zero',
  holds: (x: { speed: number; limit: number }) => x.speed > 0 && x.limit > 0,
} as const;

export const jointAngleLimit = sheet({
  id: 'joint-angle-limit',
  subject: 'driveline',
  title: 'Largest joint angle for a speed',
  purpose: 'The angle at which one joint brings the shaft to a stated limit of acceleration.',
  inputs: { speed, limit: { symbol: '\\alpha_{lim}', unit: 'rad/s²', says: 'limit of acceleration, with its source' } },
  results: {
    angle: {
      symbol: '\\theta_{max}',
      unit: 'deg',
      says: 'largest joint angle',
      tex: '\\sqrt{\\frac{@limit}{@speed^2}}',
    },
  },
  assumptions: ['Small angles; at 10° the exact acceleration is about half a per cent higher.'],
  sources: [
    {
      document: 'SAE AE-7, Universal Joint and Driveshaft Design Manual',
      clause: 'inertia excitation',
      basis: 'memory',
    },
  ],
  validity: [positive],
  calculate: ({ speed, limit }) => ({ angle: Math.sqrt(limit) / speed }),
  remark:
    'The limit is the maker’s or the handbook’s and differs between them; it is an input and stands in the note with its source.',
  examples: [
    {
      given: { speed: '1500 rpm', limit: '400 rad/s²' },
      gives: { angle: '7.3 deg' },
      source: {
        document: 'Design guidelines for drive shaft installation angle',
        clause: 'table for two joints, first joint straight, 1500 rpm',
        basis: 'quoted',
      },
    },
  ],
});

export const secondJointAngle = sheet({
  id: 'second-joint-angle',
  subject: 'driveline',
  title: 'Allowable angle of the second joint',
  purpose:
    'The range within which the second joint of a shaft must lie, so that both together stay within a stated limit of torsional acceleration.',
  inputs: {
    speed,
    limit: { symbol: '\\alpha_{lim}', unit: 'rad/s²', says: 'limit of torsional acceleration, with its source' },
    first: { symbol: '\\theta_1', unit: 'deg', says: 'angle of the first joint' },
  },
  results: {
    largest: {
      symbol: '\\theta_{2,max}',
      unit: 'deg',
      says: 'largest angle of the second joint',
      tex: '\\sqrt{@first^2 + \\frac{@limit}{@speed^2}}',
    },
    smallest: {
      symbol: '\\theta_{2,min}',
      unit: 'deg',
      says: 'smallest angle of the second joint',
      tex: '\\sqrt{\\max\\left(0,\\ @first^2 - \\frac{@limit}{@speed^2}\\right)}',
    },
  },
  assumptions: ['Both joints bend in one plane and the yokes of the shaft are aligned.'],
  sources: [{ document: 'Design guidelines for drive shaft installation angle, after SAE AE-7', basis: 'quoted' }],
  validity: [
    positive,
    {
      says: 'the first joint angle must lie between 0 and 30 degrees',
      holds: (x) => x.first >= 0 && x.first <= Math.PI / 6,
    },
  ],
  calculate: ({ speed, limit, first }) => {
    const room = limit / speed ** 2;
    return { largest: Math.sqrt(first ** 2 + room), smallest: Math.sqrt(Math.max(0, first ** 2 - room)) };
  },
  examples: [
    {
      given: { speed: '1500 rpm', limit: '400 rad/s²', first: '3 deg' },
      gives: { largest: '7.9 deg' },
      source: {
        document: 'Design guidelines for drive shaft installation angle',
        clause: 'table for two joints, 1500 rpm',
        basis: 'quoted',
      },
    },
  ],
});
