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

/** Parallel-flange channel, m: depth `H`, flange width `B`, web `tw`, flange `tf`, root radius `r`. */
export interface Channel {
  H: number;
  B: number;
  tw: number;
  tf: number;
  r: number;
}

/** About the middle of the depth and across from the back of the web. */
export function channelParts({ H, B, tw, tf, r }: Channel): Part[] {
  const h = H / 2;
  return [
    rectangle([0, tw], [-h, h]),
    rectangle([tw, B], [h - tf, h]),
    rectangle([tw, B], [-h, tf - h]),
    corner([tw, h - tf], [1, -1], r, 1),
    corner([tw, tf - h], [1, 1], r, 1),
  ];
}

export function channel({ density = steelDensity, ...c }: Channel & { density?: number }): SectionProperties {
  const parts = channelParts(c);
  const { A, Ix, Iy, Zx, Zy } = composite(parts);
  return {
    A,
    Ix,
    Iy,
    Zx,
    Zy,
    ...plasticModuli(parts),
    J: (2 * c.B * c.tf ** 3 + (c.H - 2 * c.tf) * c.tw ** 3) / 3,
    mass: A * density,
  };
}

export const channelSection = sheet({
  id: 'section-channel',
  subject: 'sections',
  title: 'Section properties of a parallel-flange channel (PFC)',
  purpose:
    'Area, centroid, second moments, moduli, torsion constant and mass of a rolled channel with parallel flanges.',
  inputs: {
    depth: { symbol: 'H', unit: 'mm', says: 'depth' },
    width: { symbol: 'B', unit: 'mm', says: 'flange width' },
    web: { symbol: 't_w', unit: 'mm', says: 'web thickness' },
    flange: { symbol: 't_f', unit: 'mm', says: 'flange thickness' },
    root: { symbol: 'r', unit: 'mm', says: 'root radius', usual: '0 mm' },
    loss: lossInput,
    density: densityInput,
  },
  results: {
    webLeft: { symbol: 't_{w,e}', unit: 'mm', says: 'web thickness that counts', tex: '@web - @loss', step: true },
    flangeLeft: {
      symbol: 't_{f,e}',
      unit: 'mm',
      says: 'flange thickness that counts',
      tex: '@flange - @loss',
      step: true,
    },
    rootArea: {
      symbol: 'A_r',
      unit: 'mm²',
      says: 'area of one root fillet',
      tex: '\\left(1 - \\frac{\\pi}{4}\\right) \\cdot @root^2',
      step: true,
    },
    rootInset: {
      symbol: 'k_r',
      unit: 'mm',
      says: 'distance of its centroid from web and flange',
      tex: '\\frac{10 - 3 \\cdot \\pi}{12 - 3 \\cdot \\pi} \\cdot @root',
      step: true,
    },
    rootInertia: {
      symbol: 'I_r',
      unit: 'mm⁴',
      says: 'its second moment about its own centroid',
      tex: '\\left(\\frac{1}{3} - \\frac{\\pi}{16} - \\frac{1}{3 \\cdot (12 - 3 \\cdot \\pi)}\\right) \\cdot @root^4',
      step: true,
    },
    A: areaResult('@depth \\cdot @webLeft + 2 \\cdot (@width - @webLeft) \\cdot @flangeLeft + 2 \\cdot @rootArea'),
    centroid: {
      symbol: 'x_L',
      unit: 'mm',
      says: 'distance of the centroid from the back of the web',
      tex: '\\frac{\\frac{@depth \\cdot @webLeft^2}{2} + @flangeLeft \\cdot (@width^2 - @webLeft^2) + 2 \\cdot @rootArea \\cdot (@webLeft + @rootInset)}{@A}',
    },
    ...otherResults({
      Ix: '\\frac{@webLeft \\cdot @depth^3}{12} + \\frac{(@width - @webLeft) \\cdot @flangeLeft^3}{6} + 2 \\cdot (@width - @webLeft) \\cdot @flangeLeft \\cdot \\left(\\frac{@depth - @flangeLeft}{2}\\right)^2 + 2 \\cdot @rootInertia + 2 \\cdot @rootArea \\cdot \\left(\\frac{@depth}{2} - @flangeLeft - @rootInset\\right)^2',
      Iy: '\\frac{@depth \\cdot @webLeft^3}{12} + @depth \\cdot @webLeft \\cdot \\left(@centroid - \\frac{@webLeft}{2}\\right)^2 + \\frac{@flangeLeft \\cdot (@width - @webLeft)^3}{6} + 2 \\cdot @flangeLeft \\cdot (@width - @webLeft) \\cdot \\left(\\frac{@width + @webLeft}{2} - @centroid\\right)^2 + 2 \\cdot @rootInertia + 2 \\cdot @rootArea \\cdot (@webLeft + @rootInset - @centroid)^2',
      Zx: '\\frac{2 \\cdot @Ix}{@depth}',
      Zy: '\\frac{@Iy}{\\max(@centroid, @width - @centroid)}',
      J: '\\frac{2 \\cdot @width \\cdot @flangeLeft^3 + (@depth - 2 \\cdot @flangeLeft) \\cdot @webLeft^3}{3}',
    }),
  },
  method:
    'Plastic moduli: the line that halves the area is found, and the first moments of both halves about it are added.',
  assumptions: [
    'Sharp toes. The torsion constant leaves the root fillets out, which makes it some per cent too small.',
    'Load that does not pass through the shear centre, which lies outside the web, twists the member as well.',
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
      says: 'depth, width, web, flange and density must be greater than zero',
      holds: (x) => Math.min(x.depth, x.width, x.web, x.flange, x.density) > 0,
    },
    {
      says: 'the loss must be zero or more and leave some web and flange',
      holds: (x) => x.loss >= 0 && x.loss < Math.min(x.web, x.flange),
    },
    {
      says: 'the root radius must be zero or more and leave straight web and flange',
      holds: (x) => x.root >= 0 && 2 * (x.flange + x.root) <= x.depth && x.web + x.root <= x.width,
    },
  ],
  calculate: (x) => {
    const c = { H: x.depth, B: x.width, tw: x.web - x.loss, tf: x.flange - x.loss, r: x.root };
    return {
      webLeft: c.tw,
      flangeLeft: c.tf,
      rootArea: spandrel.area * c.r ** 2,
      rootInset: spandrel.inset * c.r,
      rootInertia: spandrel.inertia * c.r ** 4,
      centroid: composite(channelParts(c)).x,
      ...channel({ ...c, density: x.density }),
    };
  },
  examples: [
    {
      given: { depth: '100 mm', width: '55 mm', web: '4.5 mm', flange: '7.5 mm', root: '10 mm' },
      gives: { A: '12.5 cm²', Ix: '207 cm⁴', Zx: '41.4 cm³', Iy: '38.2 cm⁴', Zy: '10.6 cm³', centroid: '1.91 cm' },
      source: { document: 'EN 10365, UPE 100', basis: 'memory' },
    },
    {
      given: { depth: '100 mm', width: '50 mm', web: '4.2 mm', flange: '6.7 mm', root: '8 mm' },
      gives: { A: '1.06e3 mm²', Ix: '1.74e6 mm⁴', Zx: '34.7e3 mm³', Iy: '0.267e6 mm⁴', centroid: '16.7 mm' },
      source: { document: 'AS/NZS 3679.1, 100 PFC', basis: 'memory' },
    },
  ],
});
