import { sheet } from '../sheet.js';
import { densityInput, lossInput, propertyResults, type SectionProperties, steelDensity } from './properties.js';

/** Flat of width `b` (along x) and thickness `t` (along y), m. */
export function flat({ b, t, density = steelDensity }: { b: number; t: number; density?: number }): SectionProperties {
  const A = b * t;
  return {
    A,
    Ix: (b * t ** 3) / 12,
    Iy: (t * b ** 3) / 12,
    Zx: (b * t ** 2) / 6,
    Zy: (t * b ** 2) / 6,
    Sx: (b * t ** 2) / 4,
    Sy: (t * b ** 2) / 4,
    J: b * t ** 3 * (1 / 3 - 0.21 * (t / b) * (1 - t ** 4 / (12 * b ** 4))),
    mass: A * density,
  };
}

export const flatSection = sheet({
  id: 'section-flat',
  subject: 'sections',
  title: 'Section properties of a flat',
  purpose: 'Area, second moments, moduli, torsion constant and mass of a flat or square bar.',
  inputs: {
    width: { symbol: 'b', unit: 'mm', says: 'width, the longer side' },
    thickness: { symbol: 't', unit: 'mm', says: 'thickness, the shorter side' },
    loss: lossInput,
    density: densityInput,
  },
  results: {
    effective: { symbol: 't_e', unit: 'mm', says: 'thickness that counts', tex: '@thickness - @loss', step: true },
    ...propertyResults({
      A: '@width \\cdot @effective',
      Ix: '\\frac{@width \\cdot @effective^3}{12}',
      Iy: '\\frac{@effective \\cdot @width^3}{12}',
      Zx: '\\frac{@width \\cdot @effective^2}{6}',
      Zy: '\\frac{@effective \\cdot @width^2}{6}',
      Sx: '\\frac{@width \\cdot @effective^2}{4}',
      Sy: '\\frac{@effective \\cdot @width^2}{4}',
      J: '@width \\cdot @effective^3 \\left(\\frac{1}{3} - 0.21 \\cdot \\frac{@effective}{@width} \\left(1 - \\frac{@effective^4}{12 \\cdot @width^4}\\right)\\right)',
    }),
  },
  assumptions: ['The x axis lies along the width: a flat bent through its thickness bends about x.'],
  sources: [
    { document: 'Geometry of the rectangle', basis: 'derived' },
    { document: 'Roark’s Formulas for Stress and Strain', clause: 'torsion of a solid rectangle', basis: 'memory' },
  ],
  validity: [
    {
      says: 'width, thickness and density must be greater than zero',
      holds: (x) => x.width > 0 && x.thickness > 0 && x.density > 0,
    },
    {
      says: 'the loss must be zero or more and leave some thickness',
      holds: (x) => x.loss >= 0 && x.loss < x.thickness,
    },
    {
      says: 'the width must be the longer side (the torsion formula is for t ≤ b)',
      holds: (x) => x.width >= x.thickness,
    },
  ],
  calculate: ({ width, thickness, loss, density }) => {
    const effective = thickness - loss;
    return { effective, ...flat({ b: width, t: effective, density }) };
  },
  examples: [
    {
      given: { width: '50 mm', thickness: '6 mm' },
      gives: { A: '300 mm²', Ix: '900 mm⁴', Iy: '62500 mm⁴', Zy: '2500 mm³', J: '3327.8 mm⁴' },
      source: { document: 'Worked from the formulas; regression only', basis: 'derived' },
    },
  ],
});
