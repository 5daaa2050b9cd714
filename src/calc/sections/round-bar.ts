import { sheet } from '../sheet.js';
import { densityInput, lossInput, propertyResults, type SectionProperties, steelDensity } from './properties.js';

/** Round bar of diameter `D`, m. */
export function roundBar({ D, density = steelDensity }: { D: number; density?: number }): SectionProperties {
  const A = (Math.PI * D ** 2) / 4;
  const I = (Math.PI * D ** 4) / 64;
  return {
    A,
    Ix: I,
    Iy: I,
    Zx: (2 * I) / D,
    Zy: (2 * I) / D,
    Sx: D ** 3 / 6,
    Sy: D ** 3 / 6,
    J: 2 * I,
    mass: A * density,
  };
}

export const roundBarSection = sheet({
  id: 'section-round-bar',
  subject: 'sections',
  title: 'Section properties of a round bar',
  purpose: 'Area, second moments, moduli, torsion constant and mass of a solid round bar.',
  inputs: {
    diameter: { symbol: 'D', unit: 'mm', says: 'diameter' },
    loss: { ...lossInput, says: 'depth of corrosion all round, taken off the radius' },
    density: densityInput,
  },
  results: {
    effective: {
      symbol: 'D_e',
      unit: 'mm',
      says: 'diameter that counts',
      tex: '@diameter - 2 \\cdot @loss',
      step: true,
    },
    ...propertyResults({
      A: '\\frac{\\pi \\cdot @effective^2}{4}',
      Ix: '\\frac{\\pi \\cdot @effective^4}{64}',
      Iy: '@Ix',
      Zx: '\\frac{2 \\cdot @Ix}{@effective}',
      Zy: '@Zx',
      Sx: '\\frac{@effective^3}{6}',
      Sy: '@Sx',
      J: '2 \\cdot @Ix',
    }),
  },
  sources: [{ document: 'Geometry of the circle', basis: 'derived' }],
  validity: [
    { says: 'diameter and density must be greater than zero', holds: (x) => x.diameter > 0 && x.density > 0 },
    { says: 'the loss must be zero or more and leave some bar', holds: (x) => x.loss >= 0 && 2 * x.loss < x.diameter },
  ],
  calculate: ({ diameter, loss, density }) => {
    const effective = diameter - 2 * loss;
    return { effective, ...roundBar({ D: effective, density }) };
  },
  examples: [
    {
      given: { diameter: '20 mm' },
      gives: { A: '314 mm²', mass: '2.47 kg/m' },
      source: { document: 'EN 10060, mass table of round bars', basis: 'memory' },
    },
    {
      given: { diameter: '20 mm' },
      gives: { Ix: '7854 mm⁴', Zx: '785.4 mm³', Sx: '1333 mm³', J: '15708 mm⁴' },
      source: { document: 'Worked from the formulas; regression only', basis: 'derived' },
    },
  ],
});
