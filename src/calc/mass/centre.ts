import { sheet } from '../sheet.js';

const positive = 'every mass, the wheelbase and the tracks must be greater than zero';

/** Longitudinal and lateral place of the centre of mass from four wheel loads. */
export const cornerMasses = sheet({
  id: 'corner-masses',
  subject: 'mass',
  title: 'Centre of mass from wheel loads',
  purpose:
    'Mass, its split and the place of the centre of mass, seen from above, from the masses under the four wheels.',
  inputs: {
    frontLeft: { symbol: 'm_{fl}', unit: 'kg', says: 'mass under the left front wheel' },
    frontRight: { symbol: 'm_{fr}', unit: 'kg', says: 'mass under the right front wheel' },
    rearLeft: { symbol: 'm_{rl}', unit: 'kg', says: 'mass under the left rear wheel' },
    rearRight: { symbol: 'm_{rr}', unit: 'kg', says: 'mass under the right rear wheel' },
    wheelbase: { symbol: 'L', unit: 'mm', says: 'wheelbase' },
    trackFront: { symbol: 's_f', unit: 'mm', says: 'front track' },
    trackRear: { symbol: 's_r', unit: 'mm', says: 'rear track' },
  },
  results: {
    front: { symbol: 'm_f', unit: 'kg', says: 'front axle', tex: '@frontLeft + @frontRight', step: true },
    rear: { symbol: 'm_r', unit: 'kg', says: 'rear axle', tex: '@rearLeft + @rearRight', step: true },
    total: { symbol: 'm', unit: 'kg', says: 'mass of the vehicle', tex: '@front + @rear' },
    frontShare: { symbol: 'k_f', unit: '%', says: 'share on the front axle', tex: '\\frac{@front}{@total}' },
    behindFront: {
      symbol: 'a',
      unit: 'mm',
      says: 'centre of mass behind the front axle',
      tex: '\\frac{@wheelbase \\cdot @rear}{@total}',
    },
    toRight: {
      symbol: 'y',
      unit: 'mm',
      says: 'centre of mass beside the middle: positive to the right, negative to the left',
      tex: '\\frac{(@frontRight - @frontLeft) \\cdot @trackFront + (@rearRight - @rearLeft) \\cdot @trackRear}{2 @total}',
    },
    diagonal: {
      symbol: 'k_d',
      unit: '%',
      says: 'share on the diagonal of left front and right rear',
      tex: '\\frac{@frontLeft + @rearRight}{@total}',
    },
  },
  assumptions: ['Level floor, all four wheels on scales of the same height, suspension settled, brakes off.'],
  sources: [
    { document: 'ISO 10392 Road vehicles: determination of centre of gravity', edition: '2011', basis: 'memory' },
  ],
  validity: [{ says: positive, holds: (x) => Object.values(x).every((n) => n > 0) }],
  calculate: ({ frontLeft, frontRight, rearLeft, rearRight, wheelbase, trackFront, trackRear }) => {
    const [front, rear] = [frontLeft + frontRight, rearLeft + rearRight];
    const total = front + rear;
    return {
      front,
      rear,
      total,
      frontShare: front / total,
      behindFront: (wheelbase * rear) / total,
      toRight: ((frontRight - frontLeft) * trackFront + (rearRight - rearLeft) * trackRear) / (2 * total),
      diagonal: (frontLeft + rearRight) / total,
    };
  },
  remark:
    'The diagonal share shows how the springs are set. On a floor out of level by a few millimetres it moves first.',
  examples: [
    {
      given: {
        frontLeft: '420 kg',
        frontRight: '390 kg',
        rearLeft: '340 kg',
        rearRight: '350 kg',
        wheelbase: '2600 mm',
        trackFront: '1450 mm',
        trackRear: '1440 mm',
      },
      gives: {
        total: '1500 kg',
        frontShare: '54.0 %',
        behindFront: '1196 mm',
        toRight: '-9.7 mm',
        diagonal: '51.33 %',
      },
      source: { document: 'Equilibrium of moments, worked by hand', basis: 'derived' },
    },
  ],
});

/** Longitudinal place of the centre of mass from two axle loads. */
export const axleMasses = sheet({
  id: 'axle-masses',
  subject: 'mass',
  title: 'Centre of mass from axle loads',
  purpose:
    'Mass, its split and the distance of the centre of mass behind the front axle from the masses on the two axles.',
  inputs: {
    front: { symbol: 'm_f', unit: 'kg', says: 'mass on the front axle' },
    rear: { symbol: 'm_r', unit: 'kg', says: 'mass on the rear axle' },
    wheelbase: { symbol: 'L', unit: 'mm', says: 'wheelbase' },
  },
  results: {
    total: { symbol: 'm', unit: 'kg', says: 'mass of the vehicle', tex: '@front + @rear' },
    frontShare: { symbol: 'k_f', unit: '%', says: 'share on the front axle', tex: '\\frac{@front}{@total}' },
    behindFront: {
      symbol: 'a',
      unit: 'mm',
      says: 'centre of mass behind the front axle',
      tex: '\\frac{@wheelbase \\cdot @rear}{@total}',
    },
    aheadOfRear: {
      symbol: 'b',
      unit: 'mm',
      says: 'centre of mass ahead of the rear axle',
      tex: '\\frac{@wheelbase \\cdot @front}{@total}',
    },
  },
  assumptions: ['Level floor, suspension settled, brakes off.'],
  sources: [
    { document: 'ISO 10392 Road vehicles: determination of centre of gravity', edition: '2011', basis: 'memory' },
  ],
  validity: [
    {
      says: 'masses and wheelbase must be greater than zero',
      holds: (x) => x.front > 0 && x.rear > 0 && x.wheelbase > 0,
    },
  ],
  calculate: ({ front, rear, wheelbase }) => {
    const total = front + rear;
    return {
      total,
      frontShare: front / total,
      behindFront: (wheelbase * rear) / total,
      aheadOfRear: (wheelbase * front) / total,
    };
  },
  examples: [
    {
      given: { front: '3500 lb', rear: '5500 lb', wheelbase: '155 in' },
      gives: { total: '9000 lb', behindFront: '94.72 in' },
      source: {
        document: 'Vehicle lift maker’s guide to the centre of balance',
        clause: 'first example: axles 40 in and 195 in behind the reference, balance at 134.72 in',
        basis: 'published',
      },
    },
  ],
});
