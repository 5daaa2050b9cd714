import { sheet } from '../sheet.js';

/** Height of the centre of mass by raising the rear axle. */
export const centreOfMassHeight = sheet({
  id: 'centre-of-mass-height',
  subject: 'mass',
  title: 'Height of the centre of mass',
  purpose:
    'Height of the centre of mass above the ground from the load that moves to the front axle when the rear axle is raised.',
  inputs: {
    mass: { symbol: 'm', unit: 'kg', says: 'mass of the vehicle' },
    rearLevel: { symbol: 'm_r', unit: 'kg', says: 'mass on the rear axle, level' },
    frontLevel: { symbol: 'm_f', unit: 'kg', says: 'mass on the front axle, level' },
    frontRaised: { symbol: 'm_{f,H}', unit: 'kg', says: 'mass on the front axle with the rear axle raised' },
    wheelbase: { symbol: 'L', unit: 'mm', says: 'wheelbase, level' },
    raise: { symbol: 'H', unit: 'mm', says: 'how far the rear wheel centres were raised above the front ones' },
    radiusFront: { symbol: 'r_f', unit: 'mm', says: 'height of the front wheel centres above the ground' },
    radiusRear: { symbol: 'r_r', unit: 'mm', says: 'height of the rear wheel centres above the ground, level' },
  },
  results: {
    moved: {
      symbol: '\\Delta m',
      unit: 'kg',
      says: 'mass that moved to the front axle',
      tex: '@frontRaised - @frontLevel',
      step: true,
    },
    angle: {
      symbol: '\\theta',
      unit: 'deg',
      says: 'slope of the raised vehicle, nose down',
      tex: '\\arcsin\\frac{@raise}{@wheelbase}',
      step: true,
    },
    behindFront: {
      symbol: 'a',
      unit: 'mm',
      says: 'centre of mass behind the front axle',
      tex: '\\frac{@wheelbase \\cdot @rearLevel}{@mass}',
      step: true,
    },
    axleLine: {
      symbol: 'h_0',
      unit: 'mm',
      says: 'height of the line of wheel centres under the centre of mass',
      tex: '@radiusFront + (@radiusRear - @radiusFront) \\cdot \\frac{@behindFront}{@wheelbase}',
      step: true,
    },
    height: {
      symbol: 'h',
      unit: 'mm',
      says: 'height of the centre of mass above the ground',
      tex: '@axleLine + \\frac{@wheelbase \\cdot @moved}{@mass \\cdot \\tan @angle}',
    },
    sensitivity: {
      symbol: 'dh/d(\\Delta m)',
      unit: 'mm/kg',
      says: 'how far one kilogram of weighing error moves the height',
      tex: '\\frac{@wheelbase}{@mass \\cdot \\tan @angle}',
    },
  },
  method:
    'The line of wheel centres slopes at the arc sine of raise over wheelbase; the moved load then follows from moments about the front axle.',
  assumptions: [
    'Suspension locked at ride height, brakes off, gearbox in neutral, tank full or empty, wheels free to roll.',
  ],
  sources: [
    { document: 'ISO 10392 Road vehicles: determination of centre of gravity', edition: '2011', basis: 'memory' },
    { document: 'Equilibrium of moments about the front axle', basis: 'derived' },
  ],
  validity: [
    {
      says: 'masses, wheelbase and wheel centre heights must be greater than zero',
      holds: (x) => [x.mass, x.rearLevel, x.frontLevel, x.wheelbase, x.radiusFront, x.radiusRear].every((n) => n > 0),
    },
    {
      says: 'the axle must be raised by at least a tenth and at most half of the wheelbase',
      holds: (x) => x.raise >= 0.1 * x.wheelbase && x.raise <= 0.5 * x.wheelbase,
    },
    { says: 'raising the rear axle must bring load to the front axle', holds: (x) => x.frontRaised > x.frontLevel },
  ],
  calculate: ({ mass, rearLevel, frontLevel, frontRaised, wheelbase, raise, radiusFront, radiusRear }) => {
    const moved = frontRaised - frontLevel;
    const angle = Math.asin(raise / wheelbase);
    const behindFront = (wheelbase * rearLevel) / mass;
    const axleLine = radiusFront + (radiusRear - radiusFront) * (behindFront / wheelbase);
    const sensitivity = wheelbase / (mass * Math.tan(angle));
    return { moved, angle, behindFront, axleLine, height: axleLine + sensitivity * moved, sensitivity };
  },
  remark:
    'Raise the axle as far as is safe and weigh several times: the whole result rests on a small difference of two weighings.',
  examples: [
    {
      given: {
        mass: '1500 kg',
        rearLevel: '692.308 kg',
        frontLevel: '807.692 kg',
        frontRaised: '840.692 kg',
        wheelbase: '2600 mm',
        raise: '600 mm',
        radiusFront: '310 mm',
        radiusRear: '310 mm',
      },
      gives: { angle: '13.3424 deg', behindFront: '1200.0 mm', height: '551.18 mm', sensitivity: '7.308 mm/kg' },
      source: { document: 'Equilibrium of moments, worked by hand', basis: 'derived' },
    },
  ],
});
