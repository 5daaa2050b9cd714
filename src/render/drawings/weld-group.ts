import type { Element } from 'hast';
import type { Segment as Weld } from '../../calc/welds/line-group.js';
import { drawing, widths } from './frame.js';
import { arrow, circle, directionOf, ink, line, type Point, paper } from './pen.js';
import { placer, type Segment } from './place.js';
import { type Size, sized, word } from './words.js';

/** Welds in one plane under a force; all places in m, x across and y up. */
export interface WeldGroup {
  name: string;
  title: string;
  welds: readonly Weld[];
  centroid: { x: Size; y: Size };
  /** Where the force acts, and its parts across, up and out of the plane; parts that are zero are left out of the drawing. */
  at: { x: Size; y: Size };
  force: { x: Size; y: Size; z: Size };
  /** Distance of the centroid from the line along which the part of the force in the plane acts. */
  lever?: Size | undefined;
  /** The weld end that is loaded most. */
  worst: { x: number; y: number; load: Size };
}

const arrowLong = 17;
const [margin, tallest] = [21, 56];

/** The welds with their centroid, the force with its lever arm, and the point that is loaded most. */
export function weldGroupDrawing(of: WeldGroup): Element {
  const { name, title, welds, centroid, at, force, lever, worst } = of;
  const ends = welds.flatMap((w): Point[] => [
    [w.x1, w.y1],
    [w.x2, w.y2],
  ]);
  const own: [Point, Point] = [
    [centroid.x.si, centroid.y.si],
    [at.x.si, at.y.si],
  ];
  const squared = force.x.si ** 2 + force.y.si ** 2;
  const points: Point[] = [...ends, ...own, ...(squared > 0 ? [footOf(...own, [force.x.si, force.y.si])] : [])];
  const bounds = (i: 0 | 1) => [Math.min(...points.map((p) => p[i])), Math.max(...points.map((p) => p[i]))] as const;
  const [[left, right], [low, high]] = [bounds(0), bounds(1)];
  const scale = Math.min(
    (widths.full - 2 * margin - 20) / Math.max(right - left, 1e-6),
    tallest / Math.max(high - low, 1e-6),
  );
  const height = (high - low) * scale + 2 * margin;
  const place = ([x, y]: Point): Point => [
    widths.full / 2 + (x - (left + right) / 2) * scale,
    height / 2 - (y - (low + high) / 2) * scale,
  ];

  const [centre, acts] = [place([centroid.x.si, centroid.y.si]), place([at.x.si, at.y.si])];
  const lines = welds.map((w): Segment => [place([w.x1, w.y1]), place([w.x2, w.y2])]);
  const pull = inPlane(force, acts);
  const foot = pull && lever && lever.si > 0 ? footOf(centre, acts, [pull[0] - acts[0], pull[1] - acts[1]]) : undefined;
  const clear: Segment[] = [...(pull ? [[acts, pull] as const] : []), ...(foot ? [[centre, foot] as const] : [])];
  const places = placer({ left: 1, top: 1, right: widths.full - 1, bottom: height - 1 }, [...lines, ...clear]);
  const hot = place([worst.x, worst.y]);
  for (const [x, y] of [centre, acts, hot, ...(pull ? [pull] : [])])
    places.keepOff({ left: x - 2, right: x + 2, top: y - 2, bottom: y + 2 });
  places.keepOff({ left: 0, top: height - 12, right: 16, bottom: height });

  return drawing(
    { name, title, says: says(of), width: widths.full, height },
    lines.flatMap(([a, b]) => weld(a, b)),
    foot ? leverArm(centre, foot, acts) : [],
    pull ? arrow(acts, pull, { weight: 'outline' }, 2.6) : [],
    force.z.si === 0 ? [] : outOfPlane(acts, force.z.si > 0),
    circle(acts, 0.8, { weight: 'line', fill: paper }),
    centroidMark(centre),
    circle(hot, 2, { weight: 'line' }),
    circle(hot, 0.9, { weight: 'thin', fill: ink }),
    places.put(hot, sized(worst.load), Math.PI / 2),
    places.put(centre, `${sized(centroid.x)}, ${sized(centroid.y)}`, Math.PI / 2),
    foot && lever ? places.put([(centre[0] + foot[0]) / 2, (centre[1] + foot[1]) / 2], sized(lever), -Math.PI / 2) : [],
    places.put(
      pull ?? acts,
      [force.x, force.y, force.z]
        .filter((f) => f.si !== 0)
        .map(sized)
        .join(', '),
      pull ? directionOf(acts, pull) : 0,
    ),
    axes(height),
  );
}

/** Tip of the arrow for the part of the force in the plane, drawn away from the point where it acts. */
function inPlane({ x, y }: WeldGroup['force'], [px, py]: Point): Point | undefined {
  const size = Math.hypot(x.si, y.si);
  return size === 0 ? undefined : [px + (arrowLong * x.si) / size, py - (arrowLong * y.si) / size];
}

/** The point of the line of the force that is nearest to the centroid. */
function footOf(centre: Point, acts: Point, [dx, dy]: Point): Point {
  const t = ((centre[0] - acts[0]) * dx + (centre[1] - acts[1]) * dy) / (dx * dx + dy * dy);
  return [acts[0] + t * dx, acts[1] + t * dy];
}

/** A fillet as a thick line with short strokes across. */
function weld(a: Point, b: Point): Element[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = long === 0 ? [1, 0] : [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  const strokes = Math.min(60, Math.floor(long / 1.6));
  const at = (s: number, t: number): Point => [a[0] + s * ux - t * uy, a[1] + s * uy + t * ux];
  return [
    line(a, b, { weight: 'outline' }),
    ...Array.from({ length: strokes }, (_, i) =>
      line(at((long * (i + 0.5)) / strokes - 0.5, -1), at((long * (i + 0.5)) / strokes + 0.5, 1), { weight: 'thin' }),
    ),
  ];
}

function leverArm(centre: Point, foot: Point, acts: Point): Element[] {
  return [
    line(acts, foot, { weight: 'thin', dash: 'hidden' }),
    ...(Math.hypot(foot[0] - centre[0], foot[1] - centre[1]) > 5
      ? [...arrow(centre, foot), ...arrow(foot, centre)]
      : [line(centre, foot, { weight: 'thin' })]),
  ];
}

/** A dot for a force towards the reader, a cross for one away from the reader. */
function outOfPlane([x, y]: Point, towards: boolean): Element[] {
  const r = 2.2;
  const d = r * Math.SQRT1_2;
  return [
    circle([x, y], r, { weight: 'outline', fill: paper }),
    ...(towards
      ? [circle([x, y], 0.7, { weight: 'thin', fill: ink })]
      : [line([x - d, y - d], [x + d, y + d]), line([x - d, y + d], [x + d, y - d])]),
  ];
}

function centroidMark([x, y]: Point): Element[] {
  return [
    circle([x, y], 1.5, { weight: 'line', fill: paper }),
    line([x - 3, y], [x + 3, y], { weight: 'thin' }),
    line([x, y - 3], [x, y + 3], { weight: 'thin' }),
  ];
}

function axes(height: number): Element[] {
  const o: Point = [3, height - 3];
  return [
    ...arrow(o, [o[0] + 7, o[1]]),
    ...arrow(o, [o[0], o[1] - 7]),
    word(o[0] + 8, o[1] + 0.8, 'x'),
    word(o[0] + 1, o[1] - 6, 'y'),
  ];
}

function says({ welds, centroid, at, force, lever, worst }: WeldGroup): string {
  const pull = [force.x, force.y, force.z].map(sized).join(', ');
  return `${welds.length} welds; centroid at ${sized(centroid.x)}, ${sized(centroid.y)}; force ${pull} at ${sized(at.x)}, ${sized(at.y)}${lever ? `; lever arm ${sized(lever)}` : ''}. Loaded most: ${sized(worst.load)}.`;
}
