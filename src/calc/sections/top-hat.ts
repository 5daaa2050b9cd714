import { sheet } from '../sheet.js';
import { bendInput, bendOf, bendResults, pressingAssumptions, pressingSources } from './bends.js';
import { bend, composite, plasticModuli, rectangle } from './composite.js';
import type { Part } from './part.js';
import {
  areaResult,
  densityInput,
  lossInput,
  otherResults,
  type SectionProperties,
  steelDensity,
} from './properties.js';

/** Top-hat pressing, m: crown `b` wide outside, `H` deep, flanges `c` wide from the outside of the web, sheet `t`, inside radius `ri`. */
export interface TopHat {
  b: number;
  H: number;
  c: number;
  t: number;
  ri: number;
}

/** About the middle of the width and up from the underside of the flanges. */
export function topHatParts({ b, H, c, t, ri }: TopHat): Part[] {
  const ro = ri + t;
  const half = (s: 1 | -1) => {
    const across = (p: number, q: number): readonly [number, number] => (s === 1 ? [p, q] : [-q, -p]);
    return [
      rectangle(across(b / 2 - t, b / 2), [t, H - t]),
      rectangle(across(b / 2 - t, b / 2 + c), [0, t]),
      ...bend([(s * b) / 2, H], [s * (b / 2 - t), H - t], ro, ri),
      ...bend([s * (b / 2 - t), 0], [(s * b) / 2, t], ro, ri),
    ];
  };
  return [rectangle([-b / 2, b / 2], [H - t, H]), ...half(1), ...half(-1)];
}

export function topHat({ density = steelDensity, ...hat }: TopHat & { density?: number }): SectionProperties {
  const parts = topHatParts(hat);
  const { A, Ix, Iy, Zx, Zy } = composite(parts);
  return { A, Ix, Iy, Zx, Zy, ...plasticModuli(parts), J: (A * hat.t ** 2) / 3, mass: A * density };
}

export const topHatSection = sheet({
  id: 'section-top-hat',
  subject: 'sections',
  title: 'Section properties of a top-hat pressing',
  purpose:
    'Area, centroid, second moments, moduli, torsion constant and mass of a top-hat section bent from sheet, with the sizes as measured.',
  inputs: {
    crown: { symbol: 'b', unit: 'mm', says: 'width over the crown, outside' },
    depth: { symbol: 'H', unit: 'mm', says: 'depth over all' },
    flange: { symbol: 'c', unit: 'mm', says: 'width of each flange, from the outside of the web to its edge' },
    wall: { symbol: 't', unit: 'mm', says: 'thickness of the sheet' },
    bend: bendInput,
    loss: lossInput,
    density: densityInput,
  },
  results: {
    ...bendResults,
    A: areaResult(
      '@effective \\cdot (@crown + 2 \\cdot (@depth - 2 \\cdot @effective) + 2 \\cdot (@flange + @effective)) - 4 \\cdot (@outerArea - @innerArea)',
    ),
    centroid: {
      symbol: '\\bar{y}',
      unit: 'mm',
      says: 'height of the centroid above the underside of the flanges',
      tex: '\\frac{@crown \\cdot @effective \\cdot \\left(@depth - \\frac{@effective}{2}\\right) + (@depth - 2 \\cdot @effective) \\cdot @effective \\cdot @depth + (@flange + @effective) \\cdot @effective^2 - 2 \\cdot (@outerArea - @innerArea) \\cdot @depth}{@A}',
    },
    ...otherResults({
      Ix:
        '\\frac{@crown \\cdot @effective^3}{12} + @crown \\cdot @effective \\cdot \\left(@depth - \\frac{@effective}{2} - @centroid\\right)^2' +
        ' + \\frac{@effective \\cdot (@depth - 2 \\cdot @effective)^3}{6} + 2 \\cdot @effective \\cdot (@depth - 2 \\cdot @effective) \\cdot \\left(\\frac{@depth}{2} - @centroid\\right)^2' +
        ' + \\frac{(@flange + @effective) \\cdot @effective^3}{6} + 2 \\cdot (@flange + @effective) \\cdot @effective \\cdot \\left(@centroid - \\frac{@effective}{2}\\right)^2' +
        ' - 4 \\cdot (@outerInertia - @innerInertia) - 2 \\cdot @outerArea \\cdot \\left((@depth - @outerInset - @centroid)^2 + (@outerInset - @centroid)^2\\right)' +
        ' + 2 \\cdot @innerArea \\cdot \\left((@depth - @effective - @innerInset - @centroid)^2 + (@effective + @innerInset - @centroid)^2\\right)',
      Iy:
        '\\frac{@effective \\cdot @crown^3}{12} + \\frac{(@depth - 2 \\cdot @effective) \\cdot @effective^3}{6} + 2 \\cdot (@depth - 2 \\cdot @effective) \\cdot @effective \\cdot \\left(\\frac{@crown - @effective}{2}\\right)^2' +
        ' + \\frac{@effective \\cdot (@flange + @effective)^3}{6} + 2 \\cdot @effective \\cdot (@flange + @effective) \\cdot \\left(\\frac{@crown + @flange - @effective}{2}\\right)^2' +
        ' - 4 \\cdot (@outerInertia - @innerInertia) - 2 \\cdot @outerArea \\cdot \\left(\\left(\\frac{@crown}{2} - @outerInset\\right)^2 + \\left(\\frac{@crown}{2} - @effective + @outerInset\\right)^2\\right)' +
        ' + 2 \\cdot @innerArea \\cdot \\left(\\left(\\frac{@crown}{2} - @effective - @innerInset\\right)^2 + \\left(\\frac{@crown}{2} + @innerInset\\right)^2\\right)',
      Zx: '\\frac{@Ix}{\\max(@centroid, @depth - @centroid)}',
      Zy: '\\frac{@Iy}{\\frac{@crown}{2} + @flange}',
      J: '\\frac{@A \\cdot @effective^2}{3}',
    }),
  },
  method:
    'Plastic moduli: the line that halves the area is found, and the first moments of both halves about it are added.',
  assumptions: [
    ...pressingAssumptions,
    'The webs stand square to the flanges. Closed by a panel along both flanges it becomes a box: work that as a built-up section.',
  ],
  sources: pressingSources,
  validity: [
    {
      says: 'crown, depth, flange, wall and density must be greater than zero',
      holds: (x) => Math.min(x.crown, x.depth, x.flange, x.wall, x.density) > 0,
    },
    {
      says: 'the loss must be zero or more and leave some wall; the bend radius must be zero or more',
      holds: (x) => x.loss >= 0 && x.loss < x.wall && x.bend >= 0,
    },
    {
      says: 'two bends and two walls must fit in the crown and in the depth',
      holds: (x) => 2 * (x.bend + x.wall) <= Math.min(x.crown, x.depth),
    },
    { says: 'the flange must reach beyond its bend', holds: (x) => x.flange >= x.bend },
  ],
  calculate: (x) => {
    const t = x.wall - x.loss;
    const hat = { b: x.crown, H: x.depth, c: x.flange, t, ri: x.bend };
    return { ...bendOf(t, x.bend), centroid: composite(topHatParts(hat)).y, ...topHat({ ...hat, density: x.density }) };
  },
  examples: [
    {
      given: { crown: '60 mm', depth: '40 mm', flange: '20 mm', wall: '2.0 mm', bend: '2 mm' },
      gives: { A: '341.7 mm²' },
      source: { document: 'Length of the middle line times the thickness; regression only', basis: 'derived' },
    },
  ],
});
