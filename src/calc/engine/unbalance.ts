import { sheet } from '../sheet.js';

/** Unbalance of a mass at a radius, and its rotating force. */
export const unbalance = sheet({
  id: 'unbalance',
  subject: 'engine',
  title: 'Unbalance and its force',
  purpose:
    'Unbalance that a mass at a radius makes, in every unit that balancers print, and the force that turns with it.',
  inputs: {
    mass: { symbol: 'm_u', unit: 'g', says: 'unbalanced mass' },
    radius: { symbol: 'r', unit: 'mm', says: 'radius at which it sits' },
    speed: { symbol: 'n', unit: 'rpm', says: 'speed of the shaft' },
  },
  results: {
    unbalance: { symbol: 'U', unit: 'g·mm', says: 'unbalance', tex: '@mass \\cdot @radius' },
    force: { symbol: 'F', unit: 'N', says: 'rotating force', tex: '@unbalance \\cdot @speed^2' },
  },
  assumptions: ['In the formula the speed counts in radians a second.'],
  sources: [{ document: 'ISO 21940-2 (definition of unbalance); centripetal force', basis: 'memory' }],
  validity: [
    {
      says: 'mass, radius and speed must be greater than zero',
      holds: (x) => x.mass > 0 && x.radius > 0 && x.speed > 0,
    },
  ],
  calculate: ({ mass, radius, speed }) => ({ unbalance: mass * radius, force: mass * radius * speed ** 2 }),
  remark: '1 oz·in is 720.078 g·mm.',
  examples: [
    {
      given: { mass: '1 oz', radius: '1 in', speed: '1000 rpm' },
      gives: { unbalance: '720.078 g·mm', force: '7.8965 N' },
      source: { document: 'Exact definitions of ounce and inch (NIST SP 811)', basis: 'derived' },
    },
  ],
});

const grades = { 'G2.5': 2.5, 'G6.3': 6.3, G16: 16, G40: 40, G100: 100 } as const;

/** Permissible residual unbalance of a rigid rotor. */
export const permissibleUnbalance = sheet({
  id: 'permissible-unbalance',
  subject: 'engine',
  title: 'Permissible residual unbalance',
  purpose: 'Residual unbalance that a balance quality grade allows a rigid rotor at its highest service speed.',
  inputs: {
    grade: {
      symbol: 'G',
      says: 'balance quality grade',
      choices: {
        'G2.5': 'e·Ω = 2.5 mm/s',
        'G6.3': 'e·Ω = 6.3 mm/s; machinery in general, gears',
        G16: 'e·Ω = 16 mm/s; drive shafts (cardan shafts, propeller shafts)',
        G40: 'e·Ω = 40 mm/s; car wheels, rims, car drive shafts',
        G100: 'e·Ω = 100 mm/s',
      },
    },
    mass: { symbol: 'm', unit: 'kg', says: 'mass of the rotor' },
    speed: { symbol: 'n', unit: 'rpm', says: 'highest service speed of the rotor' },
  },
  results: {
    product: { symbol: 'e\\Omega', unit: 'mm/s', says: 'eccentricity times speed of the grade', step: true },
    eccentricity: {
      symbol: 'e_{per}',
      unit: 'µm',
      says: 'permissible eccentricity of the centre of mass',
      tex: '\\frac{@product}{@speed}',
    },
    unbalance: {
      symbol: 'U_{per}',
      unit: 'g·mm',
      says: 'permissible residual unbalance of the whole rotor',
      tex: '@eccentricity \\cdot @mass',
    },
    perPlane: {
      symbol: 'U_{per,1}',
      unit: 'g·mm',
      says: 'half of it, for each of two planes equally far from the centre of mass',
      tex: '\\frac{@unbalance}{2}',
    },
  },
  assumptions: ['The rotor is rigid up to its service speed. In the formula the speed counts in radians a second.'],
  sources: [
    {
      document: 'ISO 21940-11',
      edition: '2016',
      clause: 'balance quality grades and permissible residual unbalance',
      basis: 'quoted',
    },
  ],
  validity: [{ says: 'mass and speed must be greater than zero', holds: (x) => x.mass > 0 && x.speed > 0 }],
  calculate: ({ grade, mass, speed }) => {
    const product = grades[grade] * 1e-3;
    const eccentricity = product / speed;
    return { product, eccentricity, unbalance: eccentricity * mass, perPlane: (eccentricity * mass) / 2 };
  },
  remark: 'The grades are guidance of the standard, not a limit of a code.',
  examples: [
    {
      given: { grade: 'G16', mass: '10 kg', speed: '4000 rpm' },
      gives: { unbalance: '382.0 g·mm' },
      source: { document: 'ISO 21940-11 formula 9549·G·m/n, worked by hand', basis: 'derived' },
    },
  ],
});
