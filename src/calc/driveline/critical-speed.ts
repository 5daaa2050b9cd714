import { sheet } from '../sheet.js';
import { elasticity, elasticitySource } from '../steel.js';

export const tubeCriticalSpeed = sheet({
  id: 'tube-critical-speed',
  subject: 'driveline',
  title: 'Critical speed of the shaft tube',
  purpose: 'The speed at which the tube whirls, and the speed up to which a stated share of it lets the shaft run.',
  inputs: {
    length: { symbol: 'L', unit: 'mm', says: 'length between the centres of the joints, or joint and centre bearing' },
    diameter: { symbol: 'D', unit: 'mm', says: 'outside diameter of the tube' },
    wall: { symbol: 't', unit: 'mm', says: 'wall of the tube' },
    modulus: { symbol: 'E', says: 'modulus of elasticity', ...elasticity },
    density: { symbol: '\\rho', unit: 'kg/m³', says: 'density', usual: '7850 kg/m³' },
    share: {
      symbol: 'c',
      unit: '%',
      says: 'share of the critical speed up to which the shaft may run, with its source',
    },
  },
  results: {
    bore: { symbol: 'd', unit: 'mm', says: 'inside diameter', tex: '@diameter - 2 \\cdot @wall', step: true },
    critical: {
      symbol: 'n_c',
      unit: 'rpm',
      says: 'first critical speed',
      tex: '\\frac{\\pi^2}{4 \\cdot @length^2} \\sqrt{\\frac{@modulus}{@density} \\left(@diameter^2 + @bore^2\\right)}',
    },
    half: {
      symbol: 'n_h',
      unit: 'rpm',
      says: 'half of it, where joints excite a second-order whirl',
      tex: '\\frac{@critical}{2}',
    },
    ceiling: { symbol: 'n_{max}', unit: 'rpm', says: 'highest operating speed', tex: '@share \\cdot @critical' },
  },
  assumptions: [
    'Uniform tube, free to tilt at both ends, over the whole length. Yokes, weld ends and a slip joint make the real speed differ, mostly lower.',
    'Straight, balanced, without dents.',
  ],
  sources: [
    { document: 'Beam theory: first bending frequency of a uniform beam on two pivots', basis: 'derived' },
    {
      document: 'SAE joint selection graph, page on critical speeds',
      clause: 'same equation; ceiling 70 % for road cars, 65 % for industry',
      basis: 'quoted',
    },
    elasticitySource,
  ],
  validity: [
    {
      says: 'length, modulus and density must be greater than zero',
      holds: (x) => x.length > 0 && x.modulus > 0 && x.density > 0,
    },
    {
      says: 'the wall must be greater than zero and at most half the diameter',
      holds: (x) => x.wall > 0 && 2 * x.wall <= x.diameter,
    },
    {
      says: 'the tube must be at least five times as long as its diameter, or the beam equation overstates its speed',
      holds: (x) => x.length >= 5 * x.diameter,
    },
    { says: 'the share must be greater than zero and below 100 %', holds: (x) => x.share > 0 && x.share < 1 },
  ],
  calculate: ({ length, diameter, wall, modulus, density, share }) => {
    const bore = diameter - 2 * wall;
    const critical = (Math.PI ** 2 / (4 * length ** 2)) * Math.sqrt((modulus / density) * (diameter ** 2 + bore ** 2));
    return { bore, critical, half: critical / 2, ceiling: share * critical };
  },
  remark:
    'A thicker wall hardly changes the critical speed: stiffness and mass grow together. Diameter raises it, length lowers it with its square.',
  examples: [
    {
      given: {
        length: '45 in',
        diameter: '3.5 in',
        wall: '0.083 in',
        modulus: '30000 ksi',
        density: '0.283 lb/in³',
        share: '70 %',
      },
      gives: { critical: '1.14e4 rpm' },
      source: {
        document:
          'Page on driveshaft critical speed: 45 in, 3.5 in × 0.083 in steel, printed as 11 390 rpm from rounded steps, of which three digits are kept',
        basis: 'quoted',
      },
    },
    {
      given: { length: '1400 mm', diameter: '76.2 mm', wall: '1.65 mm', modulus: '207 GPa', share: '70 %' },
      gives: { critical: '6.51e3 rpm', ceiling: '4.56e3 rpm' },
      source: {
        document:
          'SAE joint selection graph, page on critical speeds, metric constant for steel 1.21e8, which belongs to 207 GPa',
        basis: 'quoted',
      },
    },
  ],
});
