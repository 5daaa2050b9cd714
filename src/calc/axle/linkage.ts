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
    throw new OutOfRange(
      'the two arms are parallel in side view, so their lines cross nowhere: the axle moves without turning and has no instant centre',
    );
  }
  const gap = { x: upper.axle.x - lower.axle.x, z: upper.axle.z - lower.axle.z };
  const along = (gap.x * u.z - gap.z * u.x) / crossed;
  return { x: lower.axle.x + along * l.x, z: lower.axle.z + along * l.z };
}

export interface Lengthened {
  lower?: number;
  upper?: number;
}

/**
 * Positions of the axle on its way from ride height to a travel, from the lengths of both links, which do not change (or
 * change by `lengthened`, in proportion along the way). Each position is sought from the one before, so that the path
 * found is the one that the axle moves along.
 *
 * @param travel of the axle centre from ride height, positive up towards the body
 * @param stations positions on the way, the last of them at `travel`
 * @throws OutOfRange where the links cannot reach that far
 */
export function axlePath(links: Links, travel: number, stations: number, lengthened: Lengthened = {}): AxlePosition[] {
  let at: Pose = { shift: 0, rotation: 0 };
  return Array.from({ length: stations }, (_, i) => {
    const part = (i + 1) / stations;
    at = close(links, part * travel, part * (lengthened.lower ?? 0), part * (lengthened.upper ?? 0), at);
    return standing(links, part * travel, at);
  });
}

/** Position of the axle at one travel. @throws OutOfRange where the links cannot reach it */
export function axlePosition(links: Links, travel: number, lengthened: Lengthened = {}): AxlePosition {
  const moves = Math.abs(travel) + Math.abs(lengthened.lower ?? 0) + Math.abs(lengthened.upper ?? 0);
  const stations = Math.max(1, Math.ceil((10 * moves) / Math.min(length(links.lower), length(links.upper))));
  return axlePath(links, travel, Math.min(stations, 200), lengthened).at(-1)!;
}

/** Positions at several travels, for a path or a drawing. @throws OutOfRange where the links cannot reach one of them */
export function axlePositions(links: Links, travels: readonly number[]): AxlePosition[] {
  return travels.map((travel) => axlePosition(links, travel));
}

function standing(links: Links, travel: number, at: Pose): AxlePosition {
  const place = (p: Point) => moved(links.centre, p, at, travel);
  return { travel, ...at, centre: place(links.centre), lower: place(links.lower.axle), upper: place(links.upper.axle) };
}

/** A point fixed to the axle at ride height, at another position of it. */
export function carriedBy(links: Links, point: Point, position: AxlePosition): Point {
  return moved(links.centre, point, position, position.travel);
}

interface Pose {
  shift: number;
  rotation: number;
}

/** A step of this size is Newton's last: the next one would be its square. */
const NEAR = 1e-9;
const unreachable = 'the links cannot reach this travel or length: no position of the axle keeps both of their lengths';

/** Newton's method on the two lengths, from a position nearby. */
function close(links: Links, travel: number, lower: number, upper: number, from: Pose): Pose {
  const { centre } = links;
  const wanted = [length(links.lower) + lower, length(links.upper) + upper] as const;
  let { shift, rotation } = from;
  for (let i = 0; i < 30; i += 1) {
    const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
    const a = gap(centre, links.lower, wanted[0], shift, travel, cos, sin);
    const b = gap(centre, links.upper, wanted[1], shift, travel, cos, sin);
    const determinant = a.byShift * b.byRotation - a.byRotation * b.byShift;
    const byShift = (a.error * b.byRotation - b.error * a.byRotation) / determinant;
    const byRotation = (a.byShift * b.error - b.byShift * a.error) / determinant;
    if (!Number.isFinite(byShift) || !Number.isFinite(byRotation)) throw new OutOfRange(unreachable);
    shift -= byShift;
    rotation -= byRotation;
    if (Math.abs(byShift) <= NEAR * wanted[0] && Math.abs(byRotation) < NEAR) return { shift, rotation };
    if (Math.abs(rotation - from.rotation) > Math.PI / 2) break;
  }
  throw new OutOfRange(unreachable);
}

/** Half of what the square of an arm's length is off, and how that changes with the two unknowns. */
function gap(
  centre: Point,
  { axle, body }: Arm,
  wanted: number,
  shift: number,
  travel: number,
  cos: number,
  sin: number,
) {
  const [rx, rz] = [axle.x - centre.x, axle.z - centre.z];
  const [dx, dz] = [rx * cos - rz * sin, rx * sin + rz * cos];
  const [x, z] = [centre.x + shift + dx - body.x, centre.z + travel + dz - body.z];
  return { error: (x * x + z * z - wanted * wanted) / 2, byShift: x, byRotation: z * dx - x * dz };
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
