/**
 * Angles of a driveline in three dimensions. Going to the rear, a slope is positive where the axis runs down, a plan
 * angle where it runs to the left; both as they are seen in side view and in plan (tangents to the line along the car).
 * All angles in radians, lengths in any one unit.
 */
export interface Axis {
  slope: number;
  plan: number;
}

/** How far two axes are bent against each other, and in which plane about the first of them. */
export interface Joint {
  angle: number;
  /** From −π/4 to 3π/4: 0 where the plane is upright, π/2 where it is level, growing clockwise as seen looking to the rear. */
  plane: number;
}

type Vector = readonly [number, number, number];

/** Unit vector with components to the rear, to the left and down, which is a right-handed frame. */
export function direction({ slope, plan }: Axis): Vector {
  return unitVector([1, Math.tan(plan), Math.tan(slope)]);
}

/** Plan angle of a shaft whose rear joint lies `offset` to the left of its front joint, `length` away along the shaft. */
export function planOf(slope: number, length: number, offset: number): number {
  return Math.atan((offset * Math.sqrt(1 + Math.tan(slope) ** 2)) / Math.sqrt(length ** 2 - offset ** 2));
}

/**
 * Joints between axes that follow one another from front to rear. The planes are compared in a frame that is carried
 * from shaft to shaft without turning about them, so that they can be added up along the line.
 */
export function jointAngles(axes: readonly Axis[]): Joint[] {
  const along = axes.map(direction);
  let down = perpendicular([0, 0, 1], along[0]!);
  return along.slice(1).map((to, i) => {
    const from = along[i]!;
    const angle = Math.atan2(norm(cross(from, to)), dot(from, to));
    const bend = minus(to, times(dot(from, to), from));
    const plane = folded(Math.atan2(dot(bend, cross(from, down)), dot(bend, down)));
    down = carried(down, from, to);
    return { angle, plane };
  });
}

/**
 * What the first one, two, … joints together leave, as the angle of a single joint with the same effect:
 * θ_e² = |Σ (−1)^(i−1) θ_i² exp 2i(ψ_i − Γ_i)|.
 *
 * @param twists turn of each shaft's rear yoke against its front yoke, clockwise looking to the rear, in radians; one
 *   fewer than joints
 */
export function equivalentAngles(joints: readonly Joint[], twists: readonly number[]): number[] {
  let [re, im, turned] = [0, 0, 0];
  return joints.map(({ angle, plane }, i) => {
    turned += i === 0 ? 0 : twists[i - 1]!;
    const size = (i % 2 === 0 ? 1 : -1) * angle ** 2;
    re += size * Math.cos(2 * (plane - turned));
    im += size * Math.sin(2 * (plane - turned));
    return Math.sqrt(Math.hypot(re, im));
  });
}

/** A plane is the same after half a turn. */
const folded = (angle: number) => angle - Math.PI * Math.ceil(angle / Math.PI - 0.75);

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const times = (k: number, a: Vector): Vector => [k * a[0], k * a[1], k * a[2]];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const norm = (a: Vector) => Math.hypot(...a);
const unitVector = (a: Vector) => times(1 / norm(a), a);
const perpendicular = (a: Vector, to: Vector) => unitVector(minus(a, times(dot(a, to), to)));

/** `a` turned by the smallest rotation that leads from `from` to `to`. */
function carried(a: Vector, from: Vector, to: Vector): Vector {
  const sum: Vector = [from[0] + to[0], from[1] + to[1], from[2] + to[2]];
  return minus(a, times(dot(sum, a) / (1 + dot(from, to)), sum));
}
