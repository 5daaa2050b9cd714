/** Area and second moment of area of a round bar or tube, as inputs and steps that several sheets of rods share. */

export const solidInputs = {
  diameter: { symbol: 'D', unit: 'mm', says: 'smallest diameter of the bar' },
} as const;

export const tubeInputs = {
  diameter: { symbol: 'D', unit: 'mm', says: 'outside diameter of the tube' },
  wall: { symbol: 't', unit: 'mm', says: 'thinnest wall measured' },
} as const;

const boreStep = {
  symbol: 'd_i',
  unit: 'mm',
  says: 'bore of the tube',
  tex: '@diameter - 2 \\cdot @wall',
  step: true,
} as const;

export const solidArea = {
  area: { symbol: 'A', unit: 'mm2', says: 'area of the bar', tex: '\\frac{\\pi}{4} \\cdot @diameter^2', step: true },
} as const;

export const tubeArea = {
  bore: boreStep,
  area: {
    symbol: 'A',
    unit: 'mm2',
    says: 'area of the tube',
    tex: '\\frac{\\pi}{4} \\left(@diameter^2 - @bore^2\\right)',
    step: true,
  },
} as const;

export const solidInertia = {
  inertia: {
    symbol: 'I',
    unit: 'mm4',
    says: 'second moment of area',
    tex: '\\frac{\\pi}{64} \\cdot @diameter^4',
    step: true,
  },
} as const;

export const tubeInertia = {
  inertia: {
    symbol: 'I',
    unit: 'mm4',
    says: 'second moment of area',
    tex: '\\frac{\\pi}{64} \\left(@diameter^4 - @bore^4\\right)',
    step: true,
  },
} as const;

/** Lengths in one unit; the wall of a solid bar is half its diameter. */
export function round(diameter: number, wall = diameter / 2): { bore: number; area: number; inertia: number } {
  const bore = diameter - 2 * wall;
  return {
    bore,
    area: (Math.PI / 4) * (diameter ** 2 - bore ** 2),
    inertia: (Math.PI / 64) * (diameter ** 4 - bore ** 4),
  };
}

export const solidValidity = {
  says: 'the diameter must be greater than zero',
  holds: (x: { diameter: number }) => x.diameter > 0,
} as const;

export const tubeValidity = {
  says: 'the wall must be greater than zero and less than half the outside diameter',
  holds: (x: { diameter: number; wall: number }) => x.wall > 0 && 2 * x.wall < x.diameter,
} as const;
