import { sheets } from '../../calc/sections/index.js';
import { lossInput } from '../../calc/sections/properties.js';
import { hollowRectangle } from '../../calc/sections/rhs.js';
import type { SectionShape } from '../../calc/sections/section-of.js';
import type { Point } from './pen.js';
import { type Size, symbolText } from './words.js';

/** One main dimension of a section and where it is measured, in m: between two points, or as a note that points at one. */
export interface Measure {
  size: Size;
  side: 'left' | 'right' | 'above' | 'below' | 'note';
  from: Point;
  to: Point;
  /** How far below what it names a note would stand, in mm on the page, so that its leader does not run along an edge. */
  drop?: number;
}

/** The main dimensions, with the symbols of the section's own sheet. */
export function sectionSizes(shape: SectionShape): Measure[] {
  const sheet = sheets.find((s) => s.id === `section-${shape.kind}`)!;
  const size = (symbol: string, si: number): Size => ({ symbol: symbolText(symbol), si, unit: 'mm' });
  const between = (name: string, si: number, side: Measure['side'], from: Point, to: Point): Measure => ({
    size: size((sheet.inputs[name] ?? sheet.results[name])!.symbol, si),
    side,
    from,
    to,
  });
  const note = (name: string, si: number, at: Point, drop = 0): Measure => ({
    ...between(name, si, 'note', at, at),
    drop,
  });
  const bend = (r: number | undefined, at: Point) => (r ? [note('bend', r, at, -4)] : []);
  const loss = 'loss' in shape && shape.loss ? shape.loss : 0;
  const lost = (at: Point): Measure[] =>
    loss > 0 ? [{ size: size(lossInput.symbol, loss), side: 'note', from: at, to: at }] : [];

  switch (shape.kind) {
    case 'flat': {
      const [x, y] = [shape.width / 2, (shape.thickness - loss) / 2];
      return [
        between('width', shape.width, 'below', [-x, -y], [x, -y]),
        between('thickness', shape.thickness, 'left', [-x, -y], [-x, y]),
        ...lost([x, 0]),
      ];
    }
    case 'round-bar':
      return [
        between('diameter', shape.diameter, 'below', [-shape.diameter / 2, 0], [shape.diameter / 2, 0]),
        ...lost([shape.diameter / 2 - loss, 0]),
      ];
    case 'chs': {
      const r = shape.diameter / 2;
      const slant = (radius: number): Point => [radius * Math.SQRT1_2, radius * Math.SQRT1_2];
      return [
        between('diameter', shape.diameter, 'below', [-r, 0], [r, 0]),
        note('wall', shape.wall, slant(r)),
        ...lost(slant(r)),
      ];
    }
    case 'rhs': {
      const { ro } = hollowRectangle({ ...shape, rule: shape.corners, radius: shape.radius ?? 0 });
      const [x, y] = [shape.width / 2, shape.depth / 2];
      const k = ro * (1 - Math.SQRT1_2);
      return [
        ...outside(shape, between),
        note('wall', shape.wall, [x, -y / 3]),
        ...lost([x, -y / 3]),
        ...(ro > 0 ? [note('ro', ro, [x - k, y - k], -2)] : []),
      ];
    }
    case 'box': {
      const [x, y] = [shape.width / 2, shape.depth / 2];
      return [
        ...outside(shape, between),
        note('flange', shape.flange, [x * 0.7, y], -3),
        note('web', shape.web, [x, 0]),
        ...lost([x, 0]),
      ];
    }
    case 'angle': {
      const { depth: a, width: b, root = 0, toe = 0 } = shape;
      const t = shape.thickness - loss;
      const k = root * (1 - Math.SQRT1_2);
      const end = toe * (1 - Math.SQRT1_2);
      return [
        between('depth', a, 'left', [0, 0], [0, a]),
        between('width', b, 'below', [0, 0], [b, 0]),
        note('thickness', shape.thickness, [t, a * 0.65]),
        ...lost([t, a * 0.65]),
        ...(root > 0 ? [note('root', root, [t + k, t + k], -4)] : []),
        ...(toe > 0 ? [note('toe', toe, [b - end, t - end], -1)] : []),
      ];
    }
    case 'channel': {
      const [h, B, tw, root] = [shape.depth / 2, shape.width, shape.web - loss, shape.root ?? 0];
      const k = root * (1 - Math.SQRT1_2);
      const corner: Point = [tw + k, -h + shape.flange - loss + k];
      return [
        ...upAndAcross(shape, between),
        note('flange', shape.flange, [B * 0.8, h - shape.flange + loss], 4),
        note('web', shape.web, [tw, 0]),
        ...lost([tw, 0]),
        ...(root > 0 ? [note('root', root, corner, -4)] : []),
      ];
    }
    case 'u': {
      const t = shape.wall - loss;
      return [
        ...upAndAcross(shape, between),
        note('wall', shape.wall, [t, 0]),
        ...lost([t, 0]),
        ...bend(shape.bend, inner(t, -shape.depth / 2 + t, shape.bend ?? 0)),
      ];
    }
    case 'lipped-u': {
      const [h, t] = [shape.depth / 2, shape.wall - loss];
      return [
        ...upAndAcross(shape, between),
        between('lip', shape.lip, 'right', [shape.width, h - shape.lip], [shape.width, h]),
        note('wall', shape.wall, [t, 0]),
        ...lost([t, 0]),
        ...bend(shape.bend, inner(t, -h + t, shape.bend ?? 0)),
      ];
    }
    case 'top-hat': {
      const [x, t] = [shape.crown / 2, shape.wall - loss];
      const edge = x + shape.flange;
      return [
        between('crown', shape.crown, 'above', [-x, shape.depth], [x, shape.depth]),
        between('depth', shape.depth, 'left', [-edge, 0], [-x, shape.depth]),
        between('flange', shape.flange, 'below', [x, 0], [edge, 0]),
        note('wall', shape.wall, [x, shape.depth * 0.55]),
        ...lost([x, shape.depth * 0.55]),
        ...bend(shape.bend, [x + (shape.bend ?? 0) * (1 - Math.SQRT1_2), t + (shape.bend ?? 0) * (1 - Math.SQRT1_2)]),
      ];
    }
  }
}

type Between = (name: string, si: number, side: Measure['side'], from: Point, to: Point) => Measure;

/** Depth and width of a section about its middle. */
function outside({ depth, width }: { depth: number; width: number }, between: Between): Measure[] {
  const [x, y] = [width / 2, depth / 2];
  return [between('depth', depth, 'left', [-x, -y], [-x, y]), between('width', width, 'below', [-x, -y], [x, -y])];
}

/** Depth and width of a section with its back at x = 0. */
function upAndAcross({ depth, width }: { depth: number; width: number }, between: Between): Measure[] {
  return [
    between('depth', depth, 'left', [0, -depth / 2], [0, depth / 2]),
    between('width', width, 'below', [0, -depth / 2], [width, -depth / 2]),
  ];
}

/** Middle of the arc of an inside corner. */
const inner = (x: number, y: number, r: number): Point => [x + r * (1 - Math.SQRT1_2), y + r * (1 - Math.SQRT1_2)];
