/**
 * A chain of Cardan joints turned step by step, as a second opinion on equivalent angles. It knows nothing of planes,
 * signs or small angles: each cross keeps its two arms square to each other, one on each shaft's fork.
 */
type Vector = readonly [number, number, number];

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const scaled = (a: Vector): Vector => {
  const n = Math.hypot(...a);
  return [a[0] / n, a[1] / n, a[2] / n];
};
/** Turns `a` about the unit vector `axis`, right-handed. */
const turned = (a: Vector, axis: Vector, by: number): Vector => {
  const [c, s, k] = [Math.cos(by), Math.sin(by), dot(a, axis) * (1 - Math.cos(by))];
  const x = cross(axis, a);
  return [a[0] * c + x[0] * s + axis[0] * k, a[1] * c + x[1] * s + axis[1] * k, a[2] * c + x[2] * s + axis[2] * k];
};
const square = (to: Vector): Vector => scaled(cross(to, Math.abs(to[2]) < 0.9 ? [0, 0, 1] : [0, 1, 0]));

/** Turn of the last shaft for a turn of the first. Axes point to the rear; twists are right-handed about each shaft. */
function lastTurn(axes: readonly Vector[], twists: readonly number[], input: number): number {
  let arm = turned(square(axes[0]!), axes[0]!, input);
  for (let i = 1; i < axes.length; i += 1) {
    const front = scaled(cross(axes[i]!, arm));
    arm = turned(front, axes[i]!, twists[i - 1] ?? 0);
  }
  const last = axes.at(-1)!;
  const zero = square(last);
  return Math.atan2(dot(arm, cross(last, zero)), dot(arm, zero));
}

/** How far the last shaft turns while the first turns from `from` to `to`, which lie close together. */
function advance(axes: readonly Vector[], twists: readonly number[], from: number, to: number): number {
  const d = lastTurn(axes, twists, to) - lastTurn(axes, twists, from);
  return d - 2 * Math.PI * Math.round((d - (to - from)) / (2 * Math.PI));
}

const halfTurn = (steps: number) => Array.from({ length: steps }, (_, i) => (i / steps) * Math.PI);

/** Greatest less smallest speed of the last shaft in a turn, for 1 rad/s at the first. */
export function speedVariation(axes: readonly Vector[], twists: readonly number[], steps = 720): number {
  const h = 1e-4;
  const speeds = halfTurn(steps).map((at) => advance(axes, twists, at - h, at + h) / (2 * h));
  return Math.max(...speeds) - Math.min(...speeds);
}

/** Greatest acceleration of the last shaft in a turn, for 1 rad/s at the first. */
export function greatestAcceleration(axes: readonly Vector[], twists: readonly number[], steps = 720): number {
  const h = 1e-3;
  const accelerations = halfTurn(steps).map((at) =>
    Math.abs((advance(axes, twists, at, at + h) - advance(axes, twists, at - h, at)) / h ** 2),
  );
  return Math.max(...accelerations);
}
