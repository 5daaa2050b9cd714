import { sheet } from '../sheet.js';
import { densityInput, lossInput, propertyResults, type SectionProperties, steelDensity } from './properties.js';

/** Box with sharp corners, m: `H` deep and `B` wide outside, top and bottom `tf` thick, sides `tw` thick. */
export interface Box {
  H: number;
  B: number;
  tf: number;
  tw: number;
}

export function box({ H, B, tf, tw, density = steelDensity }: Box & { density?: number }): SectionProperties {
  const [h, b] = [H - 2 * tf, B - 2 * tw];
  const A = B * H - b * h;
  const Ix = (B * H ** 3 - b * h ** 3) / 12;
  const Iy = (H * B ** 3 - h * b ** 3) / 12;
  return {
    A,
    Ix,
    Iy,
    Zx: (2 * Ix) / H,
    Zy: (2 * Iy) / B,
    Sx: (B * H ** 2 - b * h ** 2) / 4,
    Sy: (H * B ** 2 - h * b ** 2) / 4,
    J: (4 * ((B - tw) * (H - tf)) ** 2) / ((2 * (B - tw)) / tf + (2 * (H - tf)) / tw),
    mass: A * density,
  };
}

export const boxSection = sheet({
  id: 'section-box',
  subject: 'sections',
  title: 'Section properties of a box of sheet',
  purpose:
    'Area, second moments, moduli, torsion constant and mass of a closed box folded or welded from sheet, top and bottom of one thickness and sides of another.',
  inputs: {
    depth: { symbol: 'H', unit: 'mm', says: 'outside depth' },
    width: { symbol: 'B', unit: 'mm', says: 'outside width' },
    flange: { symbol: 't_f', unit: 'mm', says: 'thickness of top and bottom' },
    web: { symbol: 't_w', unit: 'mm', says: 'thickness of the sides' },
    loss: lossInput,
    density: densityInput,
  },
  results: {
    topWall: {
      symbol: 't_{f,e}',
      unit: 'mm',
      says: 'thickness of top and bottom that counts',
      tex: '@flange - @loss',
      step: true,
    },
    sideWall: {
      symbol: 't_{w,e}',
      unit: 'mm',
      says: 'thickness of the sides that counts',
      tex: '@web - @loss',
      step: true,
    },
    insideDepth: { symbol: 'h', unit: 'mm', says: 'inside depth', tex: '@depth - 2 \\cdot @topWall', step: true },
    insideWidth: { symbol: 'b', unit: 'mm', says: 'inside width', tex: '@width - 2 \\cdot @sideWall', step: true },
    ...propertyResults({
      A: '@width \\cdot @depth - @insideWidth \\cdot @insideDepth',
      Ix: '\\frac{@width \\cdot @depth^3 - @insideWidth \\cdot @insideDepth^3}{12}',
      Iy: '\\frac{@depth \\cdot @width^3 - @insideDepth \\cdot @insideWidth^3}{12}',
      Zx: '\\frac{2 \\cdot @Ix}{@depth}',
      Zy: '\\frac{2 \\cdot @Iy}{@width}',
      Sx: '\\frac{@width \\cdot @depth^2 - @insideWidth \\cdot @insideDepth^2}{4}',
      Sy: '\\frac{@depth \\cdot @width^2 - @insideDepth \\cdot @insideWidth^2}{4}',
      J: '\\frac{4 \\cdot ((@width - @sideWall) \\cdot (@depth - @topWall))^2}{\\frac{2 \\cdot (@width - @sideWall)}{@topWall} + \\frac{2 \\cdot (@depth - @topWall)}{@sideWall}}',
    }),
  },
  assumptions: [
    'Sharp corners, so that every property comes out slightly too large; for a folded box with measured radius use the tube sheet.',
    'All seams join along their whole length. Spot or stitch welds leave the torsion constant below this value.',
    'The walls are thin beside the box, and the section keeps its shape.',
  ],
  sources: [
    { document: 'Geometry of the rectangle', basis: 'derived' },
    {
      document: 'Bredt’s formula for thin closed tubes, Roark’s Formulas for Stress and Strain',
      clause: 'torsion of thin-walled tubes',
      basis: 'memory',
    },
  ],
  validity: [
    {
      says: 'depth, width, both thicknesses and density must be greater than zero',
      holds: (x) => Math.min(x.depth, x.width, x.flange, x.web, x.density) > 0,
    },
    {
      says: 'the loss must be zero or more and leave some wall',
      holds: (x) => x.loss >= 0 && x.loss < Math.min(x.flange, x.web),
    },
    { says: 'the walls must leave a hollow inside', holds: (x) => 2 * x.flange < x.depth && 2 * x.web < x.width },
  ],
  calculate: ({ depth, width, flange, web, loss, density }) => {
    const [tf, tw] = [flange - loss, web - loss];
    return {
      topWall: tf,
      sideWall: tw,
      insideDepth: depth - 2 * tf,
      insideWidth: width - 2 * tw,
      ...box({ H: depth, B: width, tf, tw, density }),
    };
  },
  examples: [
    {
      given: { depth: '60 mm', width: '40 mm', flange: '2 mm', web: '2 mm' },
      gives: { A: '384 mm²', Ix: '193152 mm⁴', Zx: '6438.4 mm³' },
      source: { document: 'Worked by hand from the difference of two rectangles; regression only', basis: 'derived' },
    },
  ],
});
