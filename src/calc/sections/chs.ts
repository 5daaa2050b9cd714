import { sheet } from '../sheet.js';
import { densityInput, lossInput, propertyResults, type SectionProperties, steelDensity } from './properties.js';

/** Round tube of outside diameter `D` and wall `t`, m. */
export function chs({ D, t, density = steelDensity }: { D: number; t: number; density?: number }): SectionProperties {
  const d = D - 2 * t;
  const A = (Math.PI * (D ** 2 - d ** 2)) / 4;
  const I = (Math.PI * (D ** 4 - d ** 4)) / 64;
  const S = (D ** 3 - d ** 3) / 6;
  return { A, Ix: I, Iy: I, Zx: (2 * I) / D, Zy: (2 * I) / D, Sx: S, Sy: S, J: 2 * I, mass: A * density };
}

export const chsSection = sheet({
  id: 'section-chs',
  subject: 'sections',
  title: 'Section properties of a round tube (CHS)',
  purpose: 'Area, second moments, moduli, torsion constant and mass of a circular hollow section.',
  inputs: {
    diameter: { symbol: 'D', unit: 'mm', says: 'outside diameter' },
    wall: { symbol: 't', unit: 'mm', says: 'wall thickness' },
    loss: lossInput,
    density: densityInput,
  },
  results: {
    inside: {
      symbol: 'd',
      unit: 'mm',
      says: 'inside diameter that counts',
      tex: '@diameter - 2 \\cdot (@wall - @loss)',
      step: true,
    },
    ...propertyResults({
      A: '\\frac{\\pi \\cdot (@diameter^2 - @inside^2)}{4}',
      Ix: '\\frac{\\pi \\cdot (@diameter^4 - @inside^4)}{64}',
      Iy: '@Ix',
      Zx: '\\frac{2 \\cdot @Ix}{@diameter}',
      Zy: '@Zx',
      Sx: '\\frac{@diameter^3 - @inside^3}{6}',
      Sy: '@Sx',
      J: '2 \\cdot @Ix',
    }),
    C: {
      symbol: 'C',
      unit: 'mm³',
      says: 'torsion modulus: torque over it is the greatest shear stress',
      tex: '2 \\cdot @Zx',
    },
    r: { symbol: 'r', unit: 'mm', says: 'radius of gyration', tex: '\\sqrt{\\frac{@Ix}{@A}}' },
  },
  sources: [{ document: 'EN 10219-2', edition: '2006', clause: 'Annex B', basis: 'memory' }],
  validity: [
    { says: 'wall and density must be greater than zero', holds: (x) => x.wall > 0 && x.density > 0 },
    { says: 'the loss must be zero or more and leave some wall', holds: (x) => x.loss >= 0 && x.loss < x.wall },
    { says: 'the wall must be less than half the diameter', holds: (x) => x.wall < x.diameter / 2 },
  ],
  calculate: ({ diameter, wall, loss, density }) => {
    const properties = chs({ D: diameter, t: wall - loss, density });
    return {
      inside: diameter - 2 * (wall - loss),
      ...properties,
      C: 2 * properties.Zx,
      r: Math.sqrt(properties.Ix / properties.A),
    };
  },
  examples: [
    {
      given: { diameter: '48.3 mm', wall: '3.2 mm' },
      gives: { A: '4.53 cm²', Ix: '11.6 cm⁴', Zx: '4.80 cm³', J: '23.2 cm⁴', mass: '3.56 kg/m' },
      source: { document: 'EN 10219-2', clause: 'table of circular hollow sections', basis: 'memory' },
    },
  ],
});
