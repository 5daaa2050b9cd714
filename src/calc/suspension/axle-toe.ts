import { sheet } from '../sheet.js';

/** Toe of an axle and the direction in which it points, from the toe of its two wheels. */
export const axleToe = sheet({
  id: 'axle-toe',
  subject: 'suspension',
  title: 'Toe of an axle and its direction',
  purpose:
    'Toe of both wheels together, and the direction in which the axle steers the car: of a rear axle, the thrust angle.',
  inputs: {
    left: { symbol: '\\delta_l', unit: 'deg', says: 'toe of the left wheel against the centre line, in positive' },
    right: { symbol: '\\delta_r', unit: 'deg', says: 'toe of the right wheel against the centre line, in positive' },
    rim: {
      symbol: 'd',
      unit: 'mm',
      says: 'diameter of the rim, over which toe is counted in millimetres',
      usual: '381 mm',
    },
  },
  results: {
    total: { symbol: '\\delta', unit: 'deg', says: 'toe of the axle, in positive', tex: '@left + @right' },
    across: {
      symbol: 't',
      unit: 'mm',
      says: 'the same as the difference between the fronts and the backs of the rims',
      tex: '@rim \\cdot \\left(\\sin @left + \\sin @right\\right)',
    },
    direction: {
      symbol: '\\beta',
      unit: 'deg',
      says: 'direction of the axle, to the left positive',
      tex: '\\frac{@right - @left}{2}',
    },
    turned: {
      symbol: '|\\beta|',
      unit: 'deg',
      says: 'direction of the axle, either way',
      tex: '\\left|@direction\\right|',
    },
  },
  assumptions: ['Both were measured against the centre line of the car, the steering held in the middle.'],
  sources: [
    {
      document: 'ISO 8855 Road vehicles, vehicle dynamics and road-holding ability, vocabulary',
      clause: 'toe angles',
      basis: 'memory',
    },
    { document: 'Geometry', basis: 'derived' },
  ],
  validity: [
    { says: 'the rim must have a diameter greater than zero', holds: (x) => x.rim > 0 },
    {
      says: 'a wheel points less than 20 degrees away from straight ahead',
      holds: (x) => Math.abs(x.left) < Math.PI / 9 && Math.abs(x.right) < Math.PI / 9,
    },
  ],
  calculate: ({ left, right, rim }) => ({
    total: left + right,
    across: rim * (Math.sin(left) + Math.sin(right)),
    direction: (right - left) / 2,
    turned: Math.abs(right - left) / 2,
  }),
  remark: 'The same toe of the axle can hide an axle that steers: look at both results.',
  examples: [
    {
      given: { left: '0.20 deg', right: '-0.10 deg', rim: '381 mm' },
      gives: { total: '0.10 deg', across: '0.665 mm', direction: '-0.150 deg', turned: '0.150 deg' },
      source: {
        document:
          'Geometry, worked by hand: the left wheel points in and the right one out, so that both point to the right',
        basis: 'derived',
      },
    },
  ],
});
