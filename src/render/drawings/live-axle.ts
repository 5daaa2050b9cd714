import type { Element } from 'hast';
import { axlePosition, type Links, type Point as Place } from '../../calc/axle/linkage.js';
import { axlePath, pathHeight, pathWidth, type Travel } from './axle-path.js';
import { arms, centreMark, farAway, ghost, ghostArms, linesTo, nose, noseTo } from './axle-strokes.js';
import { across, upright } from './dimension.js';
import { drawing, widths } from './frame.js';
import { circle, ink, line, type Point, paper, polyline } from './pen.js';
import { placer, type Segment } from './place.js';
import { inLines, lineHeight, type Size, sized, word } from './words.js';

/** A live axle in side view; places in m, x forward of the axle centre and z up from the ground. */
export interface LiveAxle {
  name: string;
  title: string;
  links: Links;
  /** Whether the height of the axle centre is known; then the axle and its wheel are drawn there. */
  centreKnown: boolean;
  /** Point about which the axle turns at ride height. */
  instantCentre?: { x: Size; z: Size } | undefined;
  /** Slope of the pinion at ride height, nose up positive. */
  pinion?: Size | undefined;
  travel?: Travel | undefined;
  /** Joints of the shaft at the gearbox and at the pinion. */
  shaft?: { front: Place; rear: Place } | undefined;
  /** Further results, to stand below. */
  results?: readonly Size[] | undefined;
}

const [tallest, margin, top] = [76, 16, 9];

/** The axle and its arms at ride height and, in dashes, at both ends of travel. */
export function liveAxle(of: LiveAxle): Element {
  const { name, title, centreKnown, instantCentre, pinion, travel, shaft } = of;
  const links = centreKnown
    ? of.links
    : { ...of.links, centre: { x: 0, z: (of.links.lower.axle.z + of.links.upper.axle.z) / 2 } };
  const { lower, upper, centre } = links;
  const positions = travel ? [travel.bump.si, -travel.droop.si].map((t) => axlePosition(links, t)) : [];
  const own: Place[] = [
    lower.axle,
    lower.body,
    upper.axle,
    upper.body,
    centre,
    { x: 0, z: 0 },
    ...wheel(of),
    ...(shaft ? [shaft.front, shaft.rear] : []),
    ...positions.flatMap((p) => [p.lower, p.upper, p.centre]),
  ];
  const ic = instantCentre && { x: instantCentre.x.si, z: instantCentre.z.si };
  const near = ic && isNear(ic, own) ? ic : undefined;
  const { rear, front, low, high } = extent(near ? [...own, near] : own);

  const room = widths.full - 2 - (travel ? pathWidth : 0);
  const scale = Math.min((room - 2 * margin) / (front - rear), tallest / (high - low));
  const at = ({ x, z }: Place): Point => [1 + room / 2 - (x - (front + rear) / 2) * scale, top + (high - z) * scale];
  const floor = at({ x: 0, z: 0 })[1];
  const foot = at({ x: 0, z: low })[1] + (near ? 13 : 8);
  const notes = notesOf(of, ic !== undefined && !near);
  const height = Math.max(foot, travel ? pathHeight : 0) + lineHeight * notes.length + 1.5;

  const joints = [lower.axle, lower.body, upper.axle, upper.body].map(at);
  const scene: Segment[] = [
    ...arms(links, at),
    ...(near ? linesTo(near, links, at) : []),
    ...(shaft ? [[at(shaft.front), at(shaft.rear)] as const] : []),
    ...positions.flatMap((p) => ghostArms(links, p, at)),
  ];
  const labels = placer({ left: 1, top: 1, right: room, bottom: foot - (near ? 8 : 0) }, [
    ...scene,
    [
      [1, floor],
      [room, floor],
    ],
  ]);
  for (const [x, y] of [...joints, at(centre), ...(near ? [at(near)] : [])])
    labels.keepOff({ left: x - 1.4, right: x + 1.4, top: y - 1.4, bottom: y + 1.4 });

  return drawing(
    { name, title, says: says(of), width: widths.full, height },
    line([2, floor], [room, floor], { weight: 'line' }),
    centreKnown ? [circle(at(centre), centre.z * scale, { weight: 'thin', dash: 'centre' })] : [],
    positions.flatMap((p) => ghost(links, p, shaft, at)),
    shaft ? [line(at(shaft.front), at(shaft.rear), { weight: 'outline' })] : [],
    polyline((centreKnown ? [lower.axle, centre, upper.axle] : [lower.axle, upper.axle]).map(at), { weight: 'line' }),
    line(at({ x: 0, z: 0 }), at({ x: 0, z: Math.max(lower.axle.z, upper.axle.z, centre.z) }), {
      weight: 'thin',
      dash: 'centre',
    }),
    arms(links, at).map(([a, b]) => line(a, b, { weight: 'outline' })),
    near ? linesTo(near, links, at).map(([a, b]) => line(a, b, { weight: 'thin', dash: 'hidden' })) : [],
    ic && !near ? farAway(ic, links, at) : [],
    shaft
      ? [
          ...noseTo(at(centre), at(shaft.rear)),
          ...[shaft.front, shaft.rear].map((p) => circle(at(p), 1.2, { weight: 'line', fill: paper })),
        ]
      : [],
    pinion && !shaft ? nose(at(centre), pinion, labels.put) : [],
    centreKnown ? [circle(at(centre), 2.4, { weight: 'outline', fill: paper })] : [],
    joints.map((p, i) => circle(p, 1.2, { weight: 'line', fill: i % 2 === 0 ? paper : ink })),
    near && instantCentre ? crossing(at(near), at(centre), floor, foot - 4, room, instantCentre, labels.put) : [],
    joints.flatMap((p, i) => labels.put(p, String(i + 1), i < 2 ? Math.PI / 2 : -Math.PI / 2)),
    travel ? axlePath(links, travel, [room + 3, 3]) : [],
    notes.map((text, i) => word(2, height - 2 - (notes.length - 1 - i) * lineHeight, text)),
  );
}

/** The instant centre with its distances from the axle centre and from the ground. */
function crossing(
  mark: Point,
  centre: Point,
  floor: number,
  y: number,
  right: number,
  of: { x: Size; z: Size },
  put: (beside: Point, text: string, towards?: number) => Element[],
): Element[] {
  return [
    ...centreMark(mark),
    ...across([centre[0], Math.max(centre[1], floor)], [mark[0], Math.max(mark[1], floor)], y, sized(of.x), {
      beside: right,
    }),
    ...upright(mark, [mark[0], floor], mark[0], '', 1),
    ...put([mark[0], (mark[1] + floor) / 2], sized(of.z), mark[0] < centre[0] ? 0 : Math.PI),
  ];
}

function wheel({ centreKnown, links: { centre } }: LiveAxle): Place[] {
  return centreKnown
    ? [
        { x: -centre.z, z: 0 },
        { x: centre.z, z: 2 * centre.z },
      ]
    : [];
}

function extent(places: readonly Place[]) {
  const [xs, zs] = [places.map((p) => p.x), places.map((p) => p.z)];
  const [rear, front, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...zs), Math.max(...zs)];
  return { rear, front: Math.max(front, rear + 1e-6), low, high: Math.max(high, low + 1e-6) };
}

/** Whether a point can be drawn without making the rest too small. */
function isNear(point: Place, own: readonly Place[]): boolean {
  const [a, b] = [extent(own), extent([...own, point])];
  return b.front - b.rear <= 3 * (a.front - a.rear) && b.high - b.low <= 1.6 * (a.high - a.low);
}

function notesOf({ instantCentre, results = [], travel, shaft, pinion }: LiveAxle, far: boolean): string[] {
  const away =
    instantCentre && far
      ? [`instant centre beyond the drawing: ${sized(instantCentre.x)}, ${sized(instantCentre.z)}`]
      : [];
  const figures = [...away, ...(shaft && pinion ? [sized(pinion)] : []), ...results.map(sized)];
  const joints = 'Front to the left. Joints 1 to 4 as in the formulas, filled where fixed to the body.';
  return [...inLines(figures, widths.full - 4), joints, ...(travel ? ['Dashed: full bump and full droop.'] : [])];
}

function says({ instantCentre, pinion, travel, results = [] }: LiveAxle): string {
  const parts = [
    ...(instantCentre ? [`Instant centre ${sized(instantCentre.x)}, ${sized(instantCentre.z)}`] : []),
    ...(pinion ? [`pinion at ride height ${sized(pinion)}`] : []),
    ...(travel
      ? [
          `at full bump ${[travel.bump, ...travel.atBump].map(sized).join(', ')}`,
          `at full droop ${[travel.droop, ...travel.atDroop].map(sized).join(', ')}`,
        ]
      : []),
    ...results.map(sized),
  ];
  return `Side view of the axle and its arms. ${parts.join('; ')}.`;
}
