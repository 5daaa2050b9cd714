import { OutOfRange } from '../sheet.js';

/**
 * A live axle on a lower and an upper pair of links, in side view. x is measured forward and z up, both in one unit of
 * length and from one origin; angles are in radians, positive where the nose of the pinion rises.
 */
export interface Point {
  x: number;
  z: number;
}

export interface Arm {
  axle: Point;
  body: Point;
}

export interface Links {
  lower: Arm;
  upper: Arm;
  /** Centre of the axle tube at ride height. */
  centre: Point;
}

/** Where the axle stands at one travel; the ends of the links move with it. */
export interface AxlePosition {
  travel: number;
  /** Movement of the axle centre along the car, forward positive. */
  shift: number;
  /** Change of the pinion's slope, nose up positive. */
  rotation: number;
  centre: Point;
  lower: Point;
  upper: Point;
}

/**
 * The point about which the axle turns at ride height: where the lines of both arms cross.
 *
 * @throws OutOfRange where the arms are parallel
 */
export function instantCentre({ lower, upper }: Links): Point {
  const [l, u] = [span(lower), span(upper)];
  const crossed = l.x * u.z - l.z * u.x;
  if (Math.abs(crossed) < 1e-9 * Math.hypot(l.x, l.z) * Math.hypot(u.x, u.z)) {
    throw new OutOfRange('the two arms are parallel in side view, so their lines cross nowhere: the axle moves without turning and has no instant centre');
  }
  const gap = { x: upper.axle.x - lower.axle.x, z: upper.axle.z - lower.axle.z };
  const along = (gap.x * u.z - gap.z * u.x) / crossed;
  return { x: lower.axle.x + along * l.x, z: lower.axle.z + along * l.z };
}

/**
 * Position of the axle at a travel, from the lengths of both links, which do not change (or change by `lengthened`).
 *
 * @param travel of the axle centre from ride height, positive up towards the body
 * @throws OutOfRange where the links cannot reach that far
 */
export function axlePosition(links: Links, travel: number, lengthened: { lower?: number; upper?: number } = {}): AxlePosition {
  const steps = 20;
  let at: Pose = { shift: 0, rotation: 0 };
  for (let i = 1; i <= steps; i += 1) {
    const part = i / steps;
    at = close(links, part * travel, part * (lengthened.lower ?? 0), part * (lengthened.upper ?? 0), at);
  }
  const place = (p: Point) => moved(links.centre, p, at, travel);
  return { travel, ...at, centre: place(links.centre), lower: place(links.lower.axle), upper: place(links.upper.axle) };
}

/** Positions at several travels, for a path or a drawing. @throws OutOfRange where the links cannot reach one of them */
export function axlePositions(links: Links, travels: readonly number[]): AxlePosition[] {
  return travels.map((travel) => axlePosition(links, travel));
}

/** A point fixed to the axle at ride height, at another position of it. */
export function carriedBy(links: Links, point: Point, position: AxlePosition): Point {
  return moved(links.centre, point, position, position.travel);
}

interface Pose {
  shift: number;
  rotation: number;
}

const unreachable = 'the links cannot reach this travel or length: no position of the axle keeps both of their lengths';

/** Newton's method on the two lengths, from a position nearby. */
function close(links: Links, travel: number, lower: number, upper: number, from: Pose): Pose {
  const arms = [
    { ...links.lower, wanted: length(links.lower) + lower },
    { ...links.upper, wanted: length(links.upper) + upper },
  ] as const;
  let { shift, rotation } = from;
  for (let i = 0; i < 30; i += 1) {
    const [a, b] = arms.map((arm) => row(links.centre, arm, { shift, rotation }, travel)) as [Row, Row];
    const determinant = a.byShift * b.byRotation - a.byRotation * b.byShift;
    const byShift = (a.error * b.byRotation - b.error * a.byRotation) / determinant;
    const byRotation = (a.byShift * b.error - b.byShift * a.error) / determinant;
    if (!Number.isFinite(byShift) || !Number.isFinite(byRotation)) throw new OutOfRange(unreachable);
    shift -= byShift;
    rotation -= byRotation;
    if (Math.abs(byShift) <= 1e-13 * arms[0].wanted && Math.abs(byRotation) < 1e-13) return { shift, rotation };
    if (Math.abs(rotation - from.rotation) > Math.PI / 2) break;
  }
  throw new OutOfRange(unreachable);
}

interface Row {
  error: number;
  byShift: number;
  byRotation: number;
}

/** How far an arm's length is off, and how that changes with the two unknowns. */
function row(centre: Point, arm: Arm & { wanted: number }, pose: Pose, travel: number): Row {
  const end = moved(centre, arm.axle, pose, travel);
  const [x, z] = [end.x - arm.body.x, end.z - arm.body.z];
  const long = Math.hypot(x, z);
  const [dx, dz] = [end.x - centre.x - pose.shift, end.z - centre.z - travel];
  return { error: long - arm.wanted, byShift: x / long, byRotation: (-x * dz + z * dx) / long };
}

function moved(centre: Point, point: Point, { shift, rotation }: Pose, travel: number): Point {
  const [x, z] = [point.x - centre.x, point.z - centre.z];
  const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
  return { x: centre.x + shift + x * cos - z * sin, z: centre.z + travel + x * sin + z * cos };
}

const span = (arm: Arm): Point => ({ x: arm.body.x - arm.axle.x, z: arm.body.z - arm.axle.z });

/** Length of an arm between its joints. */
export function length(arm: Arm): number {
  return Math.hypot(span(arm).x, span(arm).z);
}
