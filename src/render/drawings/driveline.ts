import type { Element } from 'hast';
import { along, gearbox, noseEdges, pinion, tube } from './driveline-strokes.js';
import { drawing, widths } from './frame.js';
import { arc, arrowhead, circle, line, type Point, paper } from './pen.js';
import { apart, placer, type Segment } from './place.js';
import { lineHeight, type Room, type Size, sized, widthOf, word } from './words.js';
import { type Phasing, yokePairs, yokeRow } from './yokes.js';

/** A shaft of the line, or one of its ends. Slopes are positive down to the rear, plan angles to the left going rearwards. */
export interface Axis {
  says: string;
  slope: Size;
  plan?: Size | undefined;
  /** Between its joints, m; the gearbox output and the pinion have none. */
  length?: number | undefined;
}

export interface Driveline {
  name: string;
  title: string;
  /** From the gearbox output to the pinion. */
  axes: readonly Axis[];
  /** Angle of the joint behind each axis but the last. */
  joints: readonly Size[];
  /** Turn of the rear yoke of each shaft against its front yoke. */
  phasing: readonly Phasing[];
  /** Angle of one joint that would have the same effect as all of them. */
  equivalent?: Size | undefined;
}

const [from, stub] = [10, 24];
/** Steepest angle on the page up to which angles are drawn enlarged. */
const steepest = (18 * Math.PI) / 180;

/** Side view and plan with the angle of every joint, and the yokes of each shaft end on. */
export function drivelineDrawing(of: Driveline): Element {
  const { name, title, axes, joints, phasing, equivalent } = of;
  const angles = axes.flatMap((a) => [a.slope.si, a.plan?.si ?? 0]).map(Math.abs);
  const enlarged = [5, 4, 3, 2].find((k) => k * Math.max(...angles) <= steepest) ?? 1;
  const xs = stations(axes);
  const side = view(
    xs,
    axes.map((a) => a.slope.si * enlarged),
    axes.map((a) => [a.says, sized(a.slope)]),
    joints.map(sized),
  );
  const plan = view(
    xs,
    axes.map((a) => (a.plan?.si ?? 0) * enlarged),
    axes.map((a) => (a.plan ? [sized(a.plan)] : [])),
    [],
  );
  const scaleNote = enlarged === 1 ? 'angles as they are' : `angles drawn ${enlarged} times as large in both views`;
  const [top, second] = [4.5, 4.5 + side.height + 6];
  const third = second + plan.height + 6;
  const yokes = phasing.length > 0 ? yokeRow : 0;
  const height = third + yokes + (equivalent ? lineHeight : 0);
  return drawing(
    { name, title, says: says(of, scaleNote), width: widths.full, height },
    word(2, 3.2, 'Side view', 'start', true),
    word(widths.full - 2, 3.2, `front to the left; ${scaleNote}`, 'end'),
    side.at(top),
    word(2, second - 1.5, 'Plan', 'start', true),
    word(widths.full - 2, second - 1.5, 'from above; the left side of the vehicle lies at the bottom', 'end'),
    plan.at(second),
    ...(phasing.length > 0 ? [yokePairs(phasing, third - 1.5)] : []),
    ...(equivalent
      ? [word(2, height - 1.8, `${sized(equivalent)}: one joint at this angle would do the same as all of them.`)]
      : []),
  );
}

/** Places of the front end, the joints and the rear end across the page; shafts in proportion to their lengths. */
function stations(axes: readonly Axis[]): number[] {
  const long = widths.full - 2 * from;
  const shafts = axes.slice(1, -1).map((a) => a.length ?? 1);
  const ends = shafts.length === 0 ? long / 2 : stub;
  const room = long - 2 * ends;
  const least = 0.3;
  const total = shafts.reduce((a, b) => a + b, 0);
  const shares = shafts.map((l) => least / shafts.length + (1 - least) * (l / total));
  return [ends, ...shares.map((s) => s * room), ends].reduce((xs, l) => [...xs, xs.at(-1)! + l], [from]);
}

interface View {
  height: number;
  at: (y: number) => Element[];
}

/** One view: axis names above, the line itself, joint angles beside it. Angles are those on the page, positive downwards. */
function view(
  xs: readonly number[],
  angles: readonly number[],
  above: readonly (readonly string[])[],
  joints: readonly string[],
): View {
  const heights = angles.reduce((ys, a, i) => [...ys, ys.at(-1)! + (xs[i + 1]! - xs[i]!) * Math.tan(a)], [0]);
  const room = 10;
  const names = Math.max(...above.map((t) => t.length)) * lineHeight;
  const height = names + Math.max(...heights) - Math.min(...heights) + 2 * room;
  const at = (y: number): Element[] => {
    const points = xs.map((x, i): Point => [x, y + names + room - Math.min(...heights) + heights[i]!]);
    return [
      ...gearbox(points[0]!, angles[0]!, points[1]![0] - points[0]![0]),
      ...angles.slice(1, -1).flatMap((_, i) => tube(points[i + 1]!, points[i + 2]!)),
      ...pinion(points.at(-2)!, points.at(-1)!, angles.at(-1)!),
      ...points.slice(1, -1).map((p) => circle(p, 1.7, { weight: 'outline', fill: paper })),
      ...rowAbove(xs, above, y),
      ...(joints.length > 0
        ? jointAngles(points, angles, joints, { left: 2, right: widths.full - 2, top: y + names, bottom: y + height })
        : centreLines(points, angles, [])),
    ];
  };
  return { height, at };
}

function rowAbove(xs: readonly number[], above: readonly (readonly string[])[], y: number): Element[] {
  const wanted = above.map((lines, i) => ({ at: (xs[i]! + xs[i + 1]!) / 2, size: Math.max(0, ...lines.map(widthOf)) }));
  const places = apart(wanted, 3, [2, widths.full - 2]);
  return above.flatMap((lines, i) =>
    lines.map((text, k) => word(places[i]!, y + lineHeight * (k + 1) - 0.8, text, 'middle')),
  );
}

/** An arc from each axis, continued beyond its joint, to the next, and the angle named beside it. */
function jointAngles(
  points: readonly Point[],
  angles: readonly number[],
  names: readonly string[],
  within: Room,
): Element[] {
  const radii = names.map((_, i) => Math.min(24, 0.7 * (points[i + 2]![0] - points[i + 1]![0])));
  const edges = points
    .slice(1)
    .flatMap((b, i) =>
      [-2.4, 2.4].map((t): Segment => [along(points[i]!, angles[i]!)(0, t), along(b, angles[i]!)(0, t)]),
    );
  const goingOn = names.map((_, i): Segment => [points[i + 1]!, along(points[i + 1]!, angles[i]!)(radii[i]! + 3, 0)]);
  const places = placer(within, [...edges, ...goingOn, ...noseEdges(points.at(-2)!, points.at(-1)!, angles.at(-1)!)]);
  for (const [, [x, y]] of [...goingOn]) places.keepOff({ left: x - 1, right: x + 1, top: y - 1, bottom: y + 1 });
  return [
    ...centreLines(points, angles, radii),
    ...names.flatMap((text, i) => {
      const [joint, before, after, radius] = [points[i + 1]!, angles[i]!, angles[i + 1]!, radii[i]!];
      const turns = Math.abs(after - before) * radius > 4.4;
      const at = (a: number): Point => [joint[0] + radius * Math.cos(a), joint[1] + radius * Math.sin(a)];
      return [
        ...(before === after ? [] : [arc(joint, radius, before, after)]),
        ...(turns ? [arrowhead(at(after), after + (after > before ? Math.PI / 2 : -Math.PI / 2), 1.6)] : []),
        ...places.put(at(before), text, after > before ? -Math.PI / 2 : Math.PI / 2),
      ];
    }),
  ];
}

/** Axes, each continued beyond the joint behind it as far as its arc needs. */
function centreLines(points: readonly Point[], angles: readonly number[], radii: readonly number[]): Element[] {
  return angles.map((a, i) =>
    line(points[i]!, along(points[i + 1]!, a)(radii[i] === undefined ? 0 : radii[i]! + 3, 0), {
      weight: 'thin',
      dash: 'centre',
    }),
  );
}

function says({ axes, joints, phasing, equivalent }: Driveline, note: string): string {
  const parts = [
    ...axes.map((a) => `${a.says}: ${[a.slope, ...(a.plan ? [a.plan] : [])].map(sized).join(', ')}`),
    `joints: ${joints.map(sized).join(', ')}`,
    ...phasing.map((p) => `${p.says}, rear yoke against front yoke: ${sized(p.twist)}`),
    ...(equivalent ? [`equivalent angle: ${sized(equivalent)}`] : []),
  ];
  return `${parts.join('; ')}. In the drawing: ${note}.`;
}
