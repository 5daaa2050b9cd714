import { sheet } from '../sheet.js';
import { densityInput, propertyResults, steelDensity, type SectionProperties } from './properties.js';

/** Round bar of diameter `D`, m. */
export function roundBar({ D, density = steelDensity }: { D: number; density?: number }): SectionProperties {
  const A = (Math.PI * D ** 2) / 4;
  const I = (Math.PI * D ** 4) / 64;
  return { A, Ix: I, Iy: I, Zx: (2 * I) / D, Zy: (2 * I) / D, Sx: D ** 3 / 6, Sy: D ** 3 / 6, J: 2 * I, mass: A * density };
}

export const roundBarSection = sheet({
  id: 'section-round-bar',
  subject: 'sections',
  title: 'Section properties of a round bar',
  purpose: 'Area, second moments, moduli, torsion constant and mass of a solid round bar.',
  inputs: {
    diameter: { symbol: 'D', unit: 'mm', says: 'diameter' },
    density: densityInput,
  },
  results: propertyResults({
    A: '\\frac{\\pi \\cdot @diameter^2}{4}',
    Ix: '\\frac{\\pi \\cdot @diameter^4}{64}',
    Iy: '@Ix',
    Zx: '\\frac{2 \\cdot @Ix}{@diameter}',
    Zy: '@Zx',
    Sx: '\\frac{@diameter^3}{6}',
    Sy: '@Sx',
    J: '2 \\cdot @Ix',
  }),
  sources: [{ document: 'Geometry of the circle', basis: 'derived' }],
  validity: [{ says: 'diameter and density must be greater than zero', holds: (x) => x.diameter > 0 && x.density > 0 }],
  calculate: ({ diameter, density }) => roundBar({ D: diameter, density }),
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
