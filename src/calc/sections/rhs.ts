import { sheet } from '../sheet.js';
import { composite, corner, rectangle } from './composite.js';
import { type CornerRule, cornerRules, outerRadius } from './corner-radii.js';
import type { Part } from './part.js';
import { densityInput, lossInput, propertyResults, type SectionProperties, steelDensity } from './properties.js';
import { spandrel } from './spandrel.js';

/** Rectangular hollow section of depth `H`, width `B`, wall `t` and corner radii `ro`, `ri`, m. */
export interface HollowRectangle {
  H: number;
  B: number;
  t: number;
  ro: number;
  ri: number;
}

/** A rectangle with four rounded edges about the point (x, y). */
export function roundedRectangle(
  h: number,
  b: number,
  r: number,
  sign: 1 | -1,
  [x, y]: readonly [number, number] = [0, 0],
): Part[] {
  const edge = (i: 1 | -1, j: 1 | -1) =>
    corner([x + (i * b) / 2, y + (j * h) / 2], [i === 1 ? -1 : 1, j === 1 ? -1 : 1], r, sign === 1 ? -1 : 1);
  return [
    rectangle([x - b / 2, x + b / 2], [y - h / 2, y + h / 2], sign),
    ...(r > 0 ? [edge(1, 1), edge(1, -1), edge(-1, 1), edge(-1, -1)] : []),
  ];
}

/** Torsion constant of the closed tube by EN 10219-2, Annex B, with the lengths it uses. */
export function hollowTorsion({ H, B, t, ro, ri }: HollowRectangle) {
  const meanRadius = (ro + ri) / 2;
  const meanLength = 2 * (B - t + (H - t)) - 2 * meanRadius * (4 - Math.PI);
  const meanArea = (B - t) * (H - t) - meanRadius ** 2 * (4 - Math.PI);
  return { meanRadius, meanLength, meanArea, J: (t ** 3 * meanLength) / 3 + (4 * meanArea ** 2 * t) / meanLength };
}

function plastic(H: number, B: number, t: number, ro: number, ri: number): number {
  const corners = (h: number, r: number) => 4 * spandrel.area * r ** 2 * (h / 2 - spandrel.inset * r);
  return (B * H ** 2) / 4 - ((B - 2 * t) * (H - 2 * t) ** 2) / 4 - corners(H, ro) + corners(H - 2 * t, ri);
}

export function rhs(section: HollowRectangle & { density?: number }): SectionProperties {
  const { H, B, t, ro, ri, density = steelDensity } = section;
  const { A, Ix, Iy, Zx, Zy } = composite([
    ...roundedRectangle(H, B, ro, 1),
    ...roundedRectangle(H - 2 * t, B - 2 * t, ri, -1),
  ]);
  const [Sx, Sy] = [plastic(H, B, t, ro, ri), plastic(B, H, t, ro, ri)];
  return { A, Ix, Iy, Zx, Zy, Sx, Sy, J: hollowTorsion(section).J, mass: A * density };
}

/** Radii of the tube as it is: the outer one from the rule and the nominal wall, the inner one less the wall that is left. */
export function hollowRectangle(x: {
  depth: number;
  width: number;
  wall: number;
  nominalWall?: number | undefined;
  loss?: number;
  rule: CornerRule;
  radius?: number | undefined;
}): HollowRectangle {
  const t = x.wall - (x.loss ?? 0);
  const ro = outerRadius(x.rule, x.nominalWall ?? x.wall, x.radius);
  return { H: x.depth, B: x.width, t, ro, ri: Math.max(0, ro - t) };
}

const I = (depth: string, width: string, gap: string, innerGap: string) =>
  `\\frac{${width} \\cdot ${depth}^3}{12} - \\frac{(${width} - 2 \\cdot @effective) \\cdot (${depth} - 2 \\cdot @effective)^3}{12}` +
  ` - 4 \\cdot (@outerInertia + @outerArea \\cdot ${gap}^2) + 4 \\cdot (@innerInertia + @innerArea \\cdot ${innerGap}^2)`;
const S = (depth: string, width: string, gap: string, innerGap: string) =>
  `\\frac{${width} \\cdot ${depth}^2}{4} - \\frac{(${width} - 2 \\cdot @effective) \\cdot (${depth} - 2 \\cdot @effective)^2}{4}` +
  ` - 4 \\cdot @outerArea \\cdot ${gap} + 4 \\cdot @innerArea \\cdot ${innerGap}`;

export const rhsSection = sheet({
  id: 'section-rhs',
  subject: 'sections',
  title: 'Section properties of a rectangular tube (RHS, SHS)',
  purpose:
    'Area, second moments, moduli, torsion constant and mass of a rectangular or square hollow section with its corner radii.',
  inputs: {
    depth: { symbol: 'H', unit: 'mm', says: 'outside depth' },
    width: { symbol: 'B', unit: 'mm', says: 'outside width' },
    wall: { symbol: 'T', unit: 'mm', says: 'wall thickness' },
    nominalWall: {
      symbol: 'T_n',
      unit: 'mm',
      says: 'nominal wall that picks the corner radius; the wall itself where left out',
      optional: true,
    },
    loss: lossInput,
    corners: { symbol: 'r', says: 'where the corner radii come from', choices: cornerRules },
    radius: { symbol: 'r_m', unit: 'mm', says: 'outer corner radius, where measured', optional: true },
    density: densityInput,
  },
  results: {
    effective: { symbol: 'T_e', unit: 'mm', says: 'wall that counts', tex: '@wall - @loss', step: true },
    ro: { symbol: 'r_o', unit: 'mm', says: 'outer corner radius by the rule chosen', step: true },
    ri: {
      symbol: 'r_i',
      unit: 'mm',
      says: 'inner corner radius, the outer one less the wall, not below zero',
      step: true,
    },
    outerArea: {
      symbol: 'A_g',
      unit: 'mm²',
      says: 'area that one outer corner lacks',
      tex: '\\left(1 - \\frac{\\pi}{4}\\right) \\cdot @ro^2',
      step: true,
    },
    innerArea: {
      symbol: 'A_\\xi',
      unit: 'mm²',
      says: 'area that one inner corner has more',
      tex: '\\left(1 - \\frac{\\pi}{4}\\right) \\cdot @ri^2',
      step: true,
    },
    outerInertia: {
      symbol: 'I_{gg}',
      unit: 'mm⁴',
      says: 'second moment of that outer piece about its own centroid',
      tex: '\\left(\\frac{1}{3} - \\frac{\\pi}{16} - \\frac{1}{3 \\cdot (12 - 3 \\cdot \\pi)}\\right) \\cdot @ro^4',
      step: true,
    },
    innerInertia: {
      symbol: 'I_{\\xi\\xi}',
      unit: 'mm⁴',
      says: 'second moment of that inner piece about its own centroid',
      tex: '\\left(\\frac{1}{3} - \\frac{\\pi}{16} - \\frac{1}{3 \\cdot (12 - 3 \\cdot \\pi)}\\right) \\cdot @ri^4',
      step: true,
    },
    outerGapX: {
      symbol: 'h_g',
      unit: 'mm',
      says: 'distance of the outer piece from the x axis',
      tex: '\\frac{@depth}{2} - @ro \\cdot \\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi}',
      step: true,
    },
    innerGapX: {
      symbol: 'h_\\xi',
      unit: 'mm',
      says: 'distance of the inner piece from the x axis',
      tex: '\\frac{@depth - 2 \\cdot @effective}{2} - @ri \\cdot \\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi}',
      step: true,
    },
    outerGapY: {
      symbol: 'b_g',
      unit: 'mm',
      says: 'distance of the outer piece from the y axis',
      tex: '\\frac{@width}{2} - @ro \\cdot \\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi}',
      step: true,
    },
    innerGapY: {
      symbol: 'b_\\xi',
      unit: 'mm',
      says: 'distance of the inner piece from the y axis',
      tex: '\\frac{@width - 2 \\cdot @effective}{2} - @ri \\cdot \\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi}',
      step: true,
    },
    meanRadius: { symbol: 'R_c', unit: 'mm', says: 'mean corner radius', tex: '\\frac{@ro + @ri}{2}', step: true },
    meanLength: {
      symbol: 'h',
      unit: 'mm',
      says: 'length of the middle line',
      tex: '2 \\cdot (@width - @effective + @depth - @effective) - 2 \\cdot @meanRadius \\cdot (4 - \\pi)',
      step: true,
    },
    meanArea: {
      symbol: 'A_h',
      unit: 'mm²',
      says: 'area inside the middle line',
      tex: '(@width - @effective) \\cdot (@depth - @effective) - @meanRadius^2 \\cdot (4 - \\pi)',
      step: true,
    },
    ...propertyResults({
      A: '2 \\cdot @effective \\cdot (@width + @depth - 2 \\cdot @effective) - (4 - \\pi) \\cdot (@ro^2 - @ri^2)',
      Ix: I('@depth', '@width', '@outerGapX', '@innerGapX'),
      Iy: I('@width', '@depth', '@outerGapY', '@innerGapY'),
      Zx: '\\frac{2 \\cdot @Ix}{@depth}',
      Zy: '\\frac{2 \\cdot @Iy}{@width}',
      Sx: S('@depth', '@width', '@outerGapX', '@innerGapX'),
      Sy: S('@width', '@depth', '@outerGapY', '@innerGapY'),
      J: '\\frac{@effective^3 \\cdot @meanLength}{3} + \\frac{4 \\cdot @meanArea^2 \\cdot @effective}{@meanLength}',
    }),
    C: {
      symbol: 'C',
      unit: 'mm³',
      says: 'torsion modulus: torque over it is the greatest shear stress',
      tex: '\\frac{@J}{@effective + \\frac{2 \\cdot @meanArea}{@meanLength}}',
    },
    rx: { symbol: 'r_x', unit: 'mm', says: 'radius of gyration about the x axis', tex: '\\sqrt{\\frac{@Ix}{@A}}' },
    ry: { symbol: 'r_y', unit: 'mm', says: 'radius of gyration about the y axis', tex: '\\sqrt{\\frac{@Iy}{@A}}' },
  },
  assumptions: ['The wall is even all round and the section does not buckle locally before it yields.'],
  sources: [
    { document: 'EN 10219-2', edition: '2006', clause: 'Annex B', basis: 'memory' },
    {
      document: 'Rectangular structural hollow sections – EN 10219:2006, table page of a steel stockist',
      clause: 'corner radii for calculation',
      basis: 'quoted',
    },
    { document: 'AS/NZS 1163', clause: 'corner radii of its section tables', basis: 'memory' },
  ],
  validity: [
    {
      says: 'depth, width, wall and density must be greater than zero',
      holds: (x) => Math.min(x.depth, x.width, x.wall, x.density) > 0,
    },
    { says: 'the loss must be zero or more and leave some wall', holds: (x) => x.loss >= 0 && x.loss < x.wall },
    { says: 'the wall must be less than half the smaller side', holds: (x) => x.wall < Math.min(x.depth, x.width) / 2 },
    {
      says: 'the outer corner radius must be measured, or the standard named; it is zero or more and at most half the smaller side',
      holds: (x) => {
        if (x.corners === 'measured' && x.radius === undefined) return false;
        const ro = outerRadius(x.corners, x.nominalWall ?? x.wall, x.radius);
        return ro >= 0 && ro <= Math.min(x.depth, x.width) / 2;
      },
    },
  ],
  calculate: (x) => {
    const section = hollowRectangle({ ...x, rule: x.corners });
    const { H, B, t, ro, ri } = section;
    const { meanRadius, meanLength, meanArea } = hollowTorsion(section);
    const gap = (half: number, r: number) => half - spandrel.inset * r;
    const properties = rhs({ ...section, density: x.density });
    return {
      effective: t,
      ro,
      ri,
      outerArea: spandrel.area * ro ** 2,
      innerArea: spandrel.area * ri ** 2,
      outerInertia: spandrel.inertia * ro ** 4,
      innerInertia: spandrel.inertia * ri ** 4,
      outerGapX: gap(H / 2, ro),
      innerGapX: gap(H / 2 - t, ri),
      outerGapY: gap(B / 2, ro),
      innerGapY: gap(B / 2 - t, ri),
      meanRadius,
      meanLength,
      meanArea,
      ...properties,
      C: properties.J / (t + (2 * meanArea) / meanLength),
      rx: Math.sqrt(properties.Ix / properties.A),
      ry: Math.sqrt(properties.Iy / properties.A),
    };
  },
  examples: [
    {
      given: { depth: '50 mm', width: '30 mm', wall: '2.5 mm', corners: 'en-10219' },
      gives: {
        A: '3.59 cm²',
        Ix: '11.30 cm⁴',
        Zx: '4.52 cm³',
        Sx: '5.70 cm³',
        Iy: '5.05 cm⁴',
        Zy: '3.37 cm³',
        Sy: '3.98 cm³',
        J: '11.74 cm⁴',
      },
      source: {
        document: 'Rectangular structural hollow sections – EN 10219:2006, table page of a steel stockist',
        clause: 'row 50 × 30 × 2.5',
        basis: 'quoted',
      },
    },
  ],
});
