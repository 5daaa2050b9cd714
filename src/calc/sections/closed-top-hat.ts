import { sheet } from '../sheet.js';
import { bendInput, pressingAssumptions } from './bends.js';
import { composite, plasticModuli, rectangle } from './composite.js';
import { areaResult, densityInput, lossInput, otherResults } from './properties.js';
import { type TopHat, topHatParts } from './top-hat.js';

/** A top-hat and the strip of floor under it from edge to edge of its flanges, `floor` thick, m. */
function closedParts({ floor, ...hat }: TopHat & { floor: number }) {
  const edge = hat.b / 2 + hat.c;
  return [...topHatParts(hat), rectangle([-edge, edge], [-floor, 0])];
}

export const closedTopHatSection = sheet({
  id: 'section-top-hat-closed',
  subject: 'sections',
  title: 'Section properties of a top-hat closed by a floor',
  purpose:
    'Area, second moments, moduli, torsion constant and mass of a top-hat pressing that is joined to a floor along both flanges, so that the two make a box.',
  inputs: {
    crown: { symbol: 'b', unit: 'mm', says: 'width over the crown, outside' },
    depth: { symbol: 'H', unit: 'mm', says: 'depth of the pressing over all' },
    flange: { symbol: 'c', unit: 'mm', says: 'width of each flange, from the outside of the web to its edge' },
    wall: { symbol: 't', unit: 'mm', says: 'thickness of the pressing' },
    floor: { symbol: 't_f', unit: 'mm', says: 'thickness of the floor' },
    bend: bendInput,
    loss: lossInput,
    density: densityInput,
  },
  results: {
    effective: { symbol: 't_e', unit: 'mm', says: 'thickness that counts', tex: '@wall - @loss', step: true },
    hat: { symbol: 'A_h', unit: 'mm²', says: 'area of the pressing alone', step: true },
    A: areaResult('@hat + (@crown + 2 \\cdot @flange) \\cdot @floor'),
    centroid: {
      symbol: '\\bar{y}',
      unit: 'mm',
      says: 'height of the centroid above the top of the floor; negative below it',
      step: true,
    },
    across: {
      symbol: 'b_m',
      unit: 'mm',
      says: 'width between the middles of the webs',
      tex: '@crown - @effective',
      step: true,
    },
    up: {
      symbol: 'h_m',
      unit: 'mm',
      says: 'height between the middles of floor and crown',
      tex: '@depth - \\frac{@effective}{2} + \\frac{@floor}{2}',
      step: true,
    },
    ...otherResults({
      Zx: '\\frac{@Ix}{\\max(@centroid + @floor, @depth - @centroid)}',
      Zy: '\\frac{@Iy}{\\frac{@crown}{2} + @flange}',
      J: '\\frac{4 \\cdot (@across \\cdot @up)^2}{\\frac{@across + 2 \\cdot @up}{@effective} + \\frac{@across}{@floor}}',
    }),
  },
  method:
    'The pressing and a strip of floor from edge to edge of its flanges are added up about their common centroid. The torsion constant is that of the closed cell alone, by Bredt’s formula.',
  assumptions: [
    ...pressingAssumptions.slice(0, 2),
    'The joint along both flanges carries the shear flow: close spots in a sound row. Wide or corroded spots leave the section nearer to the open one.',
    'The floor counts only as wide as pressing and flanges; more of it helps, in the same way before and after.',
  ],
  sources: [
    { document: 'Geometry of rectangles and quarter circles, theorem of parallel axes', basis: 'derived' },
    {
      document: 'Bredt’s formula for thin closed tubes, Roark’s Formulas for Stress and Strain',
      clause: 'torsion of thin-walled tubes',
      basis: 'memory',
    },
  ],
  validity: [
    {
      says: 'crown, depth, flange, wall, floor and density must be greater than zero',
      holds: (x) => Math.min(x.crown, x.depth, x.flange, x.wall, x.floor, x.density) > 0,
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
    const parts = closedParts({ ...hat, floor: x.floor });
    const { A, y, Ix, Iy, Zx, Zy } = composite(parts);
    const [across, up] = [x.crown - t, x.depth - t / 2 + x.floor / 2];
    return {
      effective: t,
      hat: composite(topHatParts(hat)).A,
      A,
      centroid: y,
      across,
      up,
      Ix,
      Iy,
      Zx,
      Zy,
      ...plasticModuli(parts),
      J: (4 * (across * up) ** 2) / ((across + 2 * up) / t + across / x.floor),
      mass: A * x.density,
    };
  },
  examples: [
    {
      given: { crown: '60 mm', depth: '40 mm', flange: '20 mm', wall: '2 mm', floor: '1 mm' },
      gives: { hat: '348.6 mm²', A: '448.6 mm²', J: '165966 mm⁴' },
      source: {
        document:
          'Worked by hand: 352 less four corners of (1 − π/4) · 2²; 4 · (58 · 39.5)² / (137/2 + 58/1); regression only',
        basis: 'derived',
      },
    },
  ],
});
