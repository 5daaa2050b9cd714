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
 * What the first one, two, … joints together leave, as the one joint that turns the last shaft in just the same way.
 * A Cardan joint of angle θ changes the turn φ of a shaft by a Möbius map of e^(2iφ) with the parameter tan²(θ/2), and
 * such maps follow one another as a Möbius map again, so a chain of joints is exactly one joint between two turns:
 * w_1 = z_1, w_k = (w_(k−1) + z_k)/(1 + z̄_k w_(k−1)), with z_k = (−1)^(k−1) tan²(θ_k/2) exp 2i(ψ_k − Γ_k), and
 * tan²(θ_e/2) = |w_k|. For small angles this is θ_e² = |Σ (−1)^(k−1) θ_k² exp 2i(ψ_k − Γ_k)|.
 *
 * @param twists turn of each shaft's rear yoke against its front yoke, clockwise looking to the rear, in radians; one
 *   fewer than joints
 */
export function equivalentJoints(joints: readonly Joint[], twists: readonly number[]): Joint[] {
  let [re, im, turned] = [0, 0, 0];
  return joints.map(({ angle, plane }, i) => {
    turned += i === 0 ? 0 : twists[i - 1]!;
    const size = (i % 2 === 0 ? 1 : -1) * Math.tan(angle / 2) ** 2;
    const [x, y] = [size * Math.cos(2 * (plane - turned)), size * Math.sin(2 * (plane - turned))];
    const [above, below] = [
      [re + x, im + y],
      [1 + x * re + y * im, x * im - y * re],
    ] as const;
    const square = below[0] ** 2 + below[1] ** 2;
    re = (above[0] * below[0] + above[1] * below[1]) / square;
    im = (above[1] * below[0] - above[0] * below[1]) / square;
    return { angle: 2 * Math.atan(Math.sqrt(Math.hypot(re, im))), plane: folded(Math.atan2(im, re) / 2) };
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
