import { hollowRectangle } from '../../calc/sections/rhs.js';
import type { SectionShape } from '../../calc/sections/section-of.js';
import { mm, type Point } from './pen.js';

/** A point of an outline in m, x across and y up, and the radius of its corner. */
interface Corner {
  at: Point;
  r: number;
}

/** Closed lines of a section: a polygon with rounded corners, or a circle about the origin. What lies in two is hollow. */
export type Loop = readonly Corner[] | { radius: number };

const to = (x: number, y: number, r = 0): Corner => ({ at: [x, y], r });
const rectangle = (b: number, h: number, r = 0): Loop => [
  to(-b / 2, -h / 2, r),
  to(b / 2, -h / 2, r),
  to(b / 2, h / 2, r),
  to(-b / 2, h / 2, r),
];
const mirrored = (half: readonly Corner[], turn: (c: Corner) => Corner): Loop => [...half, ...half.map(turn).reverse()];
const leftOf = ({ at: [x, y], r }: Corner) => to(-x, y, r);
const below = ({ at: [x, y], r }: Corner) => to(x, -y, r);

/** The outline that the section's properties are reckoned from: sizes outside as stated, walls less their loss. */
export function sectionOutline(shape: SectionShape): Loop[] {
  const less = (thickness: number) => thickness - ('loss' in shape ? (shape.loss ?? 0) : 0);
  const halfDepth = 'depth' in shape ? shape.depth / 2 : 0;
  switch (shape.kind) {
    case 'flat':
      return [rectangle(shape.width, less(shape.thickness))];
    case 'round-bar':
      return [{ radius: less(shape.diameter / 2) }];
    case 'chs':
      return [{ radius: shape.diameter / 2 }, { radius: shape.diameter / 2 - less(shape.wall) }];
    case 'rhs': {
      const { H, B, t, ro, ri } = hollowRectangle({ ...shape, rule: shape.corners, radius: shape.radius ?? 0 });
      return [rectangle(B, H, ro), rectangle(B - 2 * t, H - 2 * t, ri)];
    }
    case 'box': {
      const { depth, width } = shape;
      return [rectangle(width, depth), rectangle(width - 2 * less(shape.web), depth - 2 * less(shape.flange))];
    }
    case 'angle': {
      const { depth: a, width: b, root = 0, toe = 0 } = shape;
      const t = less(shape.thickness);
      return [[to(0, 0), to(b, 0), to(b, t, toe), to(t, t, root), to(t, a, toe), to(0, a)]];
    }
    case 'channel': {
      const [tw, tf] = [less(shape.web), less(shape.flange)];
      return [
        mirrored(
          [
            to(tw, halfDepth - tf, shape.root ?? 0),
            to(shape.width, halfDepth - tf),
            to(shape.width, halfDepth),
            to(0, halfDepth),
          ],
          below,
        ),
      ];
    }
    case 'u': {
      const [t, ri] = [less(shape.wall), shape.bend ?? 0];
      return [
        mirrored(
          [
            to(t, halfDepth - t, ri),
            to(shape.width, halfDepth - t),
            to(shape.width, halfDepth),
            to(0, halfDepth, ri + t),
          ],
          below,
        ),
      ];
    }
    case 'lipped-u': {
      const [t, ri, B, lip] = [less(shape.wall), shape.bend ?? 0, shape.width, halfDepth - shape.lip];
      const half = [
        to(t, halfDepth - t, ri),
        to(B - t, halfDepth - t, ri),
        to(B - t, lip),
        to(B, lip),
        to(B, halfDepth, ri + t),
        to(0, halfDepth, ri + t),
      ];
      return [mirrored(half, below)];
    }
    case 'top-hat': {
      const [t, ri, b, H] = [less(shape.wall), shape.bend ?? 0, shape.crown / 2, shape.depth];
      const half = [
        to(b - t, H - t, ri),
        to(b - t, 0, ri + t),
        to(b + shape.flange, 0),
        to(b + shape.flange, t),
        to(b, t, ri),
        to(b, H, ri + t),
      ];
      return [mirrored(half, leftOf)];
    }
  }
}

export interface Extent {
  left: number;
  right: number;
  bottom: number;
  top: number;
}

export function extentOf(loops: readonly Loop[]): Extent {
  const points = loops.flatMap((l): Point[] =>
    'radius' in l
      ? [
          [-l.radius, -l.radius],
          [l.radius, l.radius],
        ]
      : l.map((c) => c.at),
  );
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

/** The loops as one SVG path; `place` brings a point of the section to the page, `scale` a length. */
export function outlinePath(loops: readonly Loop[], place: (p: Point) => Point, scale: number): string {
  return loops
    .map((loop) =>
      'radius' in loop
        ? ring(place([0, 0]), loop.radius * scale)
        : rounded(loop.map((c) => ({ at: place(c.at), r: c.r * scale }))),
    )
    .join('');
}

/** Two half circles whose ends lie exactly one rounded diameter apart; otherwise they would meet at a visible angle. */
function ring([x, y]: Point, radius: number): string {
  const [cx, r] = [mm(x), mm(radius)];
  const [from, across] = [`${mm(cx - r)},${mm(y)}`, `${mm(cx + r)},${mm(y)}`];
  return `M${from}A${r},${r},0,1,1,${across}A${r},${r},0,1,1,${from}Z`;
}

/** All corners are right angles, so that an arc begins and ends one radius from its corner. */
function rounded(corners: readonly Corner[]): string {
  const steps = corners.map(({ at, r }, i) => {
    const [before, after] = [corners.at(i - 1)!.at, corners[(i + 1) % corners.length]!.at];
    const [start, end] = [towards(at, before, r), towards(at, after, r)];
    const turn = (at[0] - before[0]) * (after[1] - at[1]) - (at[1] - before[1]) * (after[0] - at[0]);
    return r === 0 ? `L${text(at)}` : `L${text(start)}A${mm(r)},${mm(r)},0,0,${turn > 0 ? 1 : 0},${text(end)}`;
  });
  return `${steps.join('').replace('L', 'M')}Z`;
}

const text = ([x, y]: Point) => `${mm(x)},${mm(y)}`;

function towards(from: Point, goal: Point, distance: number): Point {
  const long = Math.hypot(goal[0] - from[0], goal[1] - from[1]) || 1;
  return [from[0] + ((goal[0] - from[0]) / long) * distance, from[1] + ((goal[1] - from[1]) / long) * distance];
}
