import { sheet } from '../sheet.js';
import { composite, plasticModuli } from './composite.js';
import type { Part } from './part.js';
import { densityInput } from './properties.js';
import { hollowTorsion, roundedRectangle } from './rhs.js';

/** One rectangle, round bar or tube of a built-up section, m. `wall` 0 is solid; a round one has a corner radius of half its width. */
interface Element {
  width: number;
  height: number;
  wall: number;
  radius: number;
  x: number;
  y: number;
}

function partsOf({ width: b, height: h, wall: t, radius: r, x, y }: Element): Part[] {
  const outside = roundedRectangle(h, b, r, 1, [x, y]);
  return t === 0 ? outside : [...outside, ...roundedRectangle(h - 2 * t, b - 2 * t, Math.max(0, r - t), -1, [x, y])];
}

function ownTorsion({ width, height, wall, radius }: Element): number {
  if (wall > 0) return hollowTorsion({ H: height, B: width, t: wall, ro: radius, ri: Math.max(0, radius - wall) }).J;
  if (radius > 0) return (Math.PI * (width * height) ** 2) / 32;
  const [b, t] = [Math.max(width, height), Math.min(width, height)];
  return b * t ** 3 * (1 / 3 - 0.21 * (t / b) * (1 - t ** 4 / (12 * b ** 4)));
}

const round = (e: Element) =>
  Math.abs(e.width - e.height) <= 0.01 * e.height && Math.abs(2 * e.radius - e.height) <= 0.01 * e.height;

export const builtUpSection = sheet({
  id: 'section-built-up',
  subject: 'sections',
  title: 'Section properties of a built-up member',
  purpose:
    'Area, centroid, second moments and moduli of several flats, bars and tubes that act as one, such as a rail with a doubler or two tubes side by side.',
  inputs: {
    parts: {
      symbol: 'i',
      says: 'the parts: a flat or bar has no wall; a round one has a corner radius of half its width',
      columns: {
        width: { symbol: 'b_i', unit: 'mm', says: 'width, outside' },
        height: { symbol: 'h_i', unit: 'mm', says: 'height, outside' },
        wall: { symbol: 't_i', unit: 'mm', says: 'wall of a tube; 0 where solid' },
        radius: { symbol: 'r_i', unit: 'mm', says: 'outer corner radius; 0 where sharp' },
        x: { symbol: 'x_i', unit: 'mm', says: 'place of its middle across, from any one line' },
        y: { symbol: 'y_i', unit: 'mm', says: 'place of its middle up, from any one line' },
      },
    },
    density: densityInput,
  },
  results: {
    A: { symbol: 'A', unit: 'mm²', says: 'area', tex: '\\sum A_i' },
    x: {
      symbol: '\\bar{x}',
      unit: 'mm',
      says: 'place of the centroid across',
      tex: '\\frac{\\sum A_i x_i}{\\sum A_i}',
    },
    y: { symbol: '\\bar{y}', unit: 'mm', says: 'place of the centroid up', tex: '\\frac{\\sum A_i y_i}{\\sum A_i}' },
    Ix: {
      symbol: 'I_x',
      unit: 'mm⁴',
      says: 'second moment of area about the x axis through the centroid',
      tex: '\\sum \\left(I_{x,i} + A_i (y_i - \\bar{y})^2\\right)',
    },
    Iy: {
      symbol: 'I_y',
      unit: 'mm⁴',
      says: 'second moment of area about the y axis through the centroid',
      tex: '\\sum \\left(I_{y,i} + A_i (x_i - \\bar{x})^2\\right)',
    },
    Ixy: {
      symbol: 'I_{xy}',
      unit: 'mm⁴',
      says: 'product of inertia; not zero where the section leans',
      tex: '\\sum A_i (x_i - \\bar{x})(y_i - \\bar{y})',
    },
    Zx: { symbol: 'Z_x', unit: 'mm³', says: 'elastic modulus about the x axis, to the farther edge' },
    Zy: { symbol: 'Z_y', unit: 'mm³', says: 'elastic modulus about the y axis, to the farther edge' },
    Sx: { symbol: 'S_x', unit: 'mm³', says: 'plastic modulus about the x axis' },
    Sy: { symbol: 'S_y', unit: 'mm³', says: 'plastic modulus about the y axis' },
    J: {
      symbol: 'J',
      unit: 'mm⁴',
      says: 'torsion constant of the parts side by side, without any cell they close between them',
      tex: '\\sum J_i',
    },
    mass: { symbol: 'm', unit: 'kg/m', says: 'mass for each metre', tex: '@A \\cdot @density' },
  },
  method:
    'The properties of each part follow from its own formulas (flat, round bar, tube) and are moved to the common centroid by the theorem of parallel axes. Elastic moduli are taken to the edge farthest from the centroid; for the plastic moduli the line that halves the area is found.',
  assumptions: [
    'The parts are joined so that they cannot slide on each other: the welds carry the shear flow between them.',
    'All parts have the same modulus of elasticity; none overlaps another.',
    'The torsion constant is a lower bound: a closed cell between the parts makes it much larger.',
  ],
  sources: [
    { document: 'Theorem of parallel axes', basis: 'derived' },
    { document: 'EN 10219-2', edition: '2006', clause: 'Annex B (tubes)', basis: 'memory' },
    { document: 'Roark’s Formulas for Stress and Strain', clause: 'torsion of a solid rectangle', basis: 'memory' },
  ],
  validity: [
    { says: 'name at least one part', holds: (x) => x.parts.length > 0 },
    {
      says: 'the density and the widths and heights of all parts must be greater than zero',
      holds: (x) => x.density > 0 && x.parts.every((p) => p.width > 0 && p.height > 0),
    },
    {
      says: 'walls and radii must be zero or more and at most half the smaller side of their part',
      holds: (x) =>
        x.parts.every(
          (p) =>
            Math.min(p.wall, p.radius) >= 0 &&
            2 * p.wall < Math.min(p.width, p.height) &&
            2 * p.radius <= Math.min(p.width, p.height) * 1.01,
        ),
    },
    {
      says: 'a solid part is a rectangle with radius 0 or a round bar',
      holds: (x) => x.parts.every((p) => p.wall > 0 || p.radius === 0 || round(p)),
    },
  ],
  calculate: ({ parts, density }) => {
    const all = parts.flatMap(partsOf);
    const { A, x, y, Ix, Iy, Ixy, Zx, Zy } = composite(all);
    return {
      A,
      x,
      y,
      Ix,
      Iy,
      Ixy,
      Zx,
      Zy,
      ...plasticModuli(all),
      J: parts.reduce((sum, p) => sum + ownTorsion(p), 0),
      mass: A * density,
    };
  },
  examples: [
    {
      given: {
        parts: [
          { width: '80 mm', height: '10 mm', wall: '0 mm', radius: '0 mm', x: '0 mm', y: '65 mm' },
          { width: '10 mm', height: '60 mm', wall: '0 mm', radius: '0 mm', x: '0 mm', y: '30 mm' },
        ],
      },
      gives: { A: '1400 mm²', y: '50.0 mm', Ix: '606.7e3 mm⁴', Iy: '431.7e3 mm⁴' },
      source: { document: 'A tee of two rectangles, worked by hand; regression only', basis: 'derived' },
    },
  ],
});
