import { sheet } from '../sheet.js';
import { composite, corner, plasticModuli, rectangle } from './composite.js';
import type { Part } from './part.js';
import {
  areaResult,
  densityInput,
  lossInput,
  otherResults,
  type SectionProperties,
  steelDensity,
} from './properties.js';
import { spandrel } from './spandrel.js';

/** Angle, m: leg `a` up, leg `b` across, thickness `t`, root radius `r1`, toe radius `r2`. */
export interface Angle {
  a: number;
  b: number;
  t: number;
  r1: number;
  r2: number;
}

/** Across and up from the heel. */
export function angleParts({ a, b, t, r1, r2 }: Angle): Part[] {
  return [
    rectangle([0, t], [0, a]),
    rectangle([t, b], [0, t]),
    corner([t, t], [1, 1], r1, 1),
    corner([t, a], [-1, -1], r2, -1),
    corner([b, t], [-1, -1], r2, -1),
  ];
}

export function angle({ density = steelDensity, ...l }: Angle & { density?: number }): SectionProperties {
  const parts = angleParts(l);
  const { A, Ix, Iy, Zx, Zy } = composite(parts);
  return { A, Ix, Iy, Zx, Zy, ...plasticModuli(parts), J: ((l.a + l.b - l.t) * l.t ** 3) / 3, mass: A * density };
}

const centroid = (leg: string, other: string) =>
  `\\frac{\\frac{${other} \\cdot @effective^2}{2} + \\frac{@effective \\cdot (${leg}^2 - @effective^2)}{2} + @rootArea \\cdot (@effective + @rootInset) - @toeArea \\cdot (${leg} + @effective - 2 \\cdot @toeInset)}{@A}`;
const inertia = (leg: string, other: string, c: string) =>
  `\\frac{@effective \\cdot ${leg}^3}{3} + \\frac{(${other} - @effective) \\cdot @effective^3}{3} + @rootInertia + @rootArea \\cdot (@effective + @rootInset)^2` +
  ` - 2 \\cdot @toeInertia - @toeArea \\cdot \\left((${leg} - @toeInset)^2 + (@effective - @toeInset)^2\\right) - @A \\cdot ${c}^2`;
const own = '\\left(\\frac{1}{3} - \\frac{\\pi}{16} - \\frac{1}{3 \\cdot (12 - 3 \\cdot \\pi)}\\right)';
const product =
  '\\left(\\frac{19}{24} - \\frac{\\pi}{4} - \\left(1 - \\frac{\\pi}{4}\\right) \\cdot \\left(\\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi}\\right)^2\\right)';
const spread = '\\sqrt{\\left(\\frac{@Ix - @Iy}{2}\\right)^2 + @Ixy^2}';

export const angleSection = sheet({
  id: 'section-angle',
  subject: 'sections',
  title: 'Section properties of an angle',
  purpose:
    'Area, centroid, second moments about the legs and about the principal axes, moduli, torsion constant and mass of an equal or unequal angle.',
  inputs: {
    depth: { symbol: 'a', unit: 'mm', says: 'length of the upright leg' },
    width: { symbol: 'b', unit: 'mm', says: 'length of the flat leg' },
    thickness: { symbol: 't', unit: 'mm', says: 'thickness' },
    root: { symbol: 'r_1', unit: 'mm', says: 'root radius', usual: '0 mm' },
    toe: { symbol: 'r_2', unit: 'mm', says: 'toe radius', usual: '0 mm' },
    loss: lossInput,
    density: densityInput,
  },
  results: {
    effective: { symbol: 't_e', unit: 'mm', says: 'thickness that counts', tex: '@thickness - @loss', step: true },
    rootArea: {
      symbol: 'A_1',
      unit: 'mm²',
      says: 'area of the root fillet',
      tex: '\\left(1 - \\frac{\\pi}{4}\\right) \\cdot @root^2',
      step: true,
    },
    rootInset: {
      symbol: 'k_1',
      unit: 'mm',
      says: 'distance of its centroid from both legs',
      tex: '\\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi} \\cdot @root',
      step: true,
    },
    rootInertia: {
      symbol: 'I_1',
      unit: 'mm⁴',
      says: 'its second moment about its own centroid',
      tex: `${own} \\cdot @root^4`,
      step: true,
    },
    toeArea: {
      symbol: 'A_2',
      unit: 'mm²',
      says: 'area that one rounded toe lacks',
      tex: '\\left(1 - \\frac{\\pi}{4}\\right) \\cdot @toe^2',
      step: true,
    },
    toeInset: {
      symbol: 'k_2',
      unit: 'mm',
      says: 'distance of its centroid from the toe’s faces',
      tex: '\\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi} \\cdot @toe',
      step: true,
    },
    toeInertia: {
      symbol: 'I_2',
      unit: 'mm⁴',
      says: 'its second moment about its own centroid',
      tex: `${own} \\cdot @toe^4`,
      step: true,
    },
    A: areaResult('@effective \\cdot (@depth + @width - @effective) + @rootArea - 2 \\cdot @toeArea'),
    cx: {
      symbol: 'c_x',
      unit: 'mm',
      says: 'distance of the centroid from the back of the upright leg',
      tex: centroid('@width', '@depth'),
    },
    cy: {
      symbol: 'c_y',
      unit: 'mm',
      says: 'height of the centroid above the back of the flat leg',
      tex: centroid('@depth', '@width'),
    },
    ...otherResults({
      Ix: inertia('@depth', '@width', '@cy'),
      Iy: inertia('@width', '@depth', '@cx'),
      Zx: '\\frac{@Ix}{@depth - @cy}',
      Zy: '\\frac{@Iy}{@width - @cx}',
      J: '\\frac{(@depth + @width - @effective) \\cdot @effective^3}{3}',
    }),
    Ixy: {
      symbol: 'I_{xy}',
      unit: 'mm⁴',
      says: 'product of inertia about the centroid',
      tex:
        `\\frac{@effective^2 \\cdot @depth^2}{4} + \\frac{(@width^2 - @effective^2) \\cdot @effective^2}{4} + ${product} \\cdot (@root^4 - 2 \\cdot @toe^4)` +
        ' + @rootArea \\cdot (@effective + @rootInset)^2 - @toeArea \\cdot (@effective - @toeInset) \\cdot (@depth + @width - 2 \\cdot @toeInset) - @A \\cdot @cx \\cdot @cy',
    },
    Iu: {
      symbol: 'I_u',
      unit: 'mm⁴',
      says: 'greater principal second moment',
      tex: `\\frac{@Ix + @Iy}{2} + ${spread}`,
    },
    Iv: {
      symbol: 'I_v',
      unit: 'mm⁴',
      says: 'lesser principal second moment, which governs buckling',
      tex: `\\frac{@Ix + @Iy}{2} - ${spread}`,
    },
  },
  method:
    'Plastic moduli: the line that halves the area is found, and the first moments of both halves about it are added.',
  assumptions: [
    'Second moments and moduli are about axes along the legs. An angle that is free to move sideways bends about its principal axes instead and is weaker: use the lesser principal second moment.',
    'The torsion constant leaves the root fillet out, which makes it some per cent too small.',
  ],
  sources: [
    { document: 'Geometry of rectangles and quarter circles, theorem of parallel axes', basis: 'derived' },
    {
      document: 'Roark’s Formulas for Stress and Strain',
      clause: 'torsion of thin open sections: J = Σ b t³/3',
      basis: 'memory',
    },
  ],
  validity: [
    {
      says: 'both legs, thickness and density must be greater than zero',
      holds: (x) => Math.min(x.depth, x.width, x.thickness, x.density) > 0,
    },
    {
      says: 'the loss must be zero or more and leave some thickness',
      holds: (x) => x.loss >= 0 && x.loss < x.thickness,
    },
    {
      says: 'the radii must be zero or more; root and toe must fit in the legs, the toe in the thickness',
      holds: (x) =>
        x.root >= 0 && x.toe >= 0 && x.toe <= x.thickness && x.thickness + x.root + x.toe <= Math.min(x.depth, x.width),
    },
  ],
  calculate: (x) => {
    const l = { a: x.depth, b: x.width, t: x.thickness - x.loss, r1: x.root, r2: x.toe };
    const { x: cx, y: cy, Ixy } = composite(angleParts(l));
    const properties = angle({ ...l, density: x.density });
    const middle = (properties.Ix + properties.Iy) / 2;
    const radius = Math.hypot((properties.Ix - properties.Iy) / 2, Ixy);
    return {
      effective: l.t,
      rootArea: spandrel.area * l.r1 ** 2,
      rootInset: spandrel.inset * l.r1,
      rootInertia: spandrel.inertia * l.r1 ** 4,
      toeArea: spandrel.area * l.r2 ** 2,
      toeInset: spandrel.inset * l.r2,
      toeInertia: spandrel.inertia * l.r2 ** 4,
      ...properties,
      cx,
      cy,
      Ixy,
      Iu: middle + radius,
      Iv: middle - radius,
    };
  },
  examples: [
    {
      given: { depth: '50 mm', width: '50 mm', thickness: '5 mm', root: '7 mm', toe: '3.5 mm' },
      gives: { A: '4.80 cm²', cx: '1.40 cm', Ix: '11.0 cm⁴', Zx: '3.05 cm³', Iu: '17.4 cm⁴', Iv: '4.55 cm⁴' },
      source: { document: 'EN 10056-1, 50 × 50 × 5', basis: 'memory' },
    },
    {
      given: { depth: '60 mm', width: '40 mm', thickness: '5 mm', root: '6 mm', toe: '3 mm' },
      gives: {
        A: '4.79 cm²',
        cx: '0.97 cm',
        cy: '1.96 cm',
        Ix: '17.2 cm⁴',
        Iy: '6.11 cm⁴',
        Zx: '4.25 cm³',
        Zy: '2.02 cm³',
      },
      source: { document: 'EN 10056-1, 60 × 40 × 5', basis: 'memory' },
    },
  ],
});
