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

/** Lipped U bent from sheet, m: web `H` deep, flanges `B` wide, lips `c` deep, all outside; sheet `t`, inside radius `ri`. */
export interface LippedU {
  H: number;
  B: number;
  c: number;
  t: number;
  ri: number;
}

/** About the middle of the depth and across from the outside of the web. */
export function lippedUParts({ H, B, c, t, ri }: LippedU): Part[] {
  const ro = ri + t;
  const h = H / 2;
  return [
    rectangle([0, t], [-h, h]),
    rectangle([t, B], [h - t, h]),
    rectangle([t, B], [-h, t - h]),
    rectangle([B - t, B], [h - c, h - t]),
    rectangle([B - t, B], [t - h, c - h]),
    ...bend([0, h], [t, h - t], ro, ri),
    ...bend([0, -h], [t, t - h], ro, ri),
    ...bend([B, h], [B - t, h - t], ro, ri),
    ...bend([B, -h], [B - t, t - h], ro, ri),
  ];
}

export function lippedU({ density = steelDensity, ...u }: LippedU & { density?: number }): SectionProperties {
  const parts = lippedUParts(u);
  const { A, Ix, Iy, Zx, Zy } = composite(parts);
  return { A, Ix, Iy, Zx, Zy, ...plasticModuli(parts), J: (A * u.t ** 2) / 3, mass: A * density };
}

export const lippedUSection = sheet({
  id: 'section-lipped-u',
  subject: 'sections',
  title: 'Section properties of a lipped U bent from sheet',
  purpose:
    'Area, centroid, second moments, moduli, torsion constant and mass of a U with lips turned in, with the sizes as measured.',
  inputs: {
    depth: { symbol: 'H', unit: 'mm', says: 'depth over the flanges, outside' },
    width: { symbol: 'B', unit: 'mm', says: 'width of the flanges, from the outside of the web' },
    lip: { symbol: 'c', unit: 'mm', says: 'depth of each lip, from the outside of the flange' },
    wall: { symbol: 't', unit: 'mm', says: 'thickness of the sheet' },
    bend: bendInput,
    loss: lossInput,
    density: densityInput,
  },
  results: {
    ...bendResults,
    A: areaResult(
      '@effective \\cdot (@depth + 2 \\cdot (@width - @effective) + 2 \\cdot (@lip - @effective)) - 4 \\cdot (@outerArea - @innerArea)',
    ),
    centroid: {
      symbol: '\\bar{x}',
      unit: 'mm',
      says: 'distance of the centroid from the outside of the web',
      tex: '\\frac{\\frac{@depth \\cdot @effective^2}{2} + @effective \\cdot (@width^2 - @effective^2) + 2 \\cdot (@lip - @effective) \\cdot @effective \\cdot \\left(@width - \\frac{@effective}{2}\\right) - 2 \\cdot (@outerArea - @innerArea) \\cdot @width}{@A}',
    },
    ...otherResults({
      Ix:
        '\\frac{@effective \\cdot @depth^3}{12} + \\frac{(@width - @effective) \\cdot @effective^3}{6} + 2 \\cdot (@width - @effective) \\cdot @effective \\cdot \\left(\\frac{@depth - @effective}{2}\\right)^2' +
        ' + \\frac{@effective \\cdot (@lip - @effective)^3}{6} + 2 \\cdot @effective \\cdot (@lip - @effective) \\cdot \\left(\\frac{@depth - @lip - @effective}{2}\\right)^2' +
        ' - 4 \\cdot (@outerInertia - @innerInertia) - 4 \\cdot @outerArea \\cdot \\left(\\frac{@depth}{2} - @outerInset\\right)^2 + 4 \\cdot @innerArea \\cdot \\left(\\frac{@depth}{2} - @effective - @innerInset\\right)^2',
      Iy:
        '\\frac{@depth \\cdot @effective^3}{12} + @depth \\cdot @effective \\cdot \\left(@centroid - \\frac{@effective}{2}\\right)^2 + \\frac{@effective \\cdot (@width - @effective)^3}{6}' +
        ' + 2 \\cdot @effective \\cdot (@width - @effective) \\cdot \\left(\\frac{@width + @effective}{2} - @centroid\\right)^2' +
        ' + \\frac{(@lip - @effective) \\cdot @effective^3}{6} + 2 \\cdot (@lip - @effective) \\cdot @effective \\cdot \\left(@width - \\frac{@effective}{2} - @centroid\\right)^2' +
        ' - 4 \\cdot (@outerInertia - @innerInertia) - 2 \\cdot @outerArea \\cdot \\left((@outerInset - @centroid)^2 + (@width - @outerInset - @centroid)^2\\right)' +
        ' + 2 \\cdot @innerArea \\cdot \\left((@effective + @innerInset - @centroid)^2 + (@width - @effective - @innerInset - @centroid)^2\\right)',
      Zx: '\\frac{2 \\cdot @Ix}{@depth}',
      Zy: '\\frac{@Iy}{\\max(@centroid, @width - @centroid)}',
      J: '\\frac{@A \\cdot @effective^2}{3}',
    }),
  },
  method:
    'Plastic moduli: the line that halves the area is found, and the first moments of both halves about it are added.',
  assumptions: [
    ...pressingAssumptions,
    'Load that does not pass through the shear centre, which lies outside the web, twists the member as well.',
  ],
  sources: pressingSources,
  validity: [
    {
      says: 'depth, width, lip, wall and density must be greater than zero',
      holds: (x) => Math.min(x.depth, x.width, x.lip, x.wall, x.density) > 0,
    },
    {
      says: 'the loss must be zero or more and leave some wall; the bend radius must be zero or more',
      holds: (x) => x.loss >= 0 && x.loss < x.wall && x.bend >= 0,
    },
    {
      says: 'the bends and walls must fit in the depth and in the width',
      holds: (x) => x.bend + x.wall <= Math.min(x.depth, x.width) / 2,
    },
    {
      says: 'the lip must reach beyond its bend, and the lips must not meet',
      holds: (x) => x.lip >= x.bend + x.wall && 2 * x.lip <= x.depth,
    },
  ],
  calculate: (x) => {
    const t = x.wall - x.loss;
    const u = { H: x.depth, B: x.width, c: x.lip, t, ri: x.bend };
    return { ...bendOf(t, x.bend), centroid: composite(lippedUParts(u)).x, ...lippedU({ ...u, density: x.density }) };
  },
  examples: [
    {
      given: { depth: '80 mm', width: '40 mm', lip: '15 mm', wall: '2.0 mm', bend: '2 mm' },
      gives: { A: '353.7 mm²' },
      source: { document: 'Length of the middle line times the thickness; regression only', basis: 'derived' },
    },
  ],
});
