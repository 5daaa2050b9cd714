import { seeded } from './random.js';

/** Side of every texture in pixels. */
export const side = 1024;

/** Value noise that repeats after `across` by `down` cells, as a function of u and v from 0 to 1; values from 0 to 1. */
function lattice(across, down, seed) {
  const random = seeded(seed);
  const knots = Float32Array.from({ length: across * down }, random);
  const smooth = (t) => t * t * t * (t * (t * 6 - 15) + 10);
  return (u, v) => {
    const [x, y] = [u * across, v * down];
    const [x0, y0] = [Math.floor(x), Math.floor(y)];
    const [fx, fy] = [smooth(x - x0), smooth(y - y0)];
    const [xa, xb, ya, yb] = [x0 % across, (x0 + 1) % across, (y0 % down) * across, ((y0 + 1) % down) * across];
    const top = knots[ya + xa] + (knots[ya + xb] - knots[ya + xa]) * fx;
    const bottom = knots[yb + xa] + (knots[yb + xb] - knots[yb + xa]) * fx;
    return top + (bottom - top) * fy;
  };
}

/** A field of `side`² values, each about 0 to 1, of several octaves that begin with `across` by `down` cells. */
export function clouds({ across, down = across, octaves = 5, gain = 0.5, seed }) {
  const layers = Array.from({ length: octaves }, (_, i) => ({ weight: gain ** i, at: lattice(across * 2 ** i, down * 2 ** i, seed + i) }));
  const total = layers.reduce((sum, { weight }) => sum + weight, 0);
  return field((u, v) => layers.reduce((sum, { weight, at }) => sum + weight * at(u, v), 0) / total);
}

/** Stones of different greys: for each point the distance to the nearest centre (0 at it, 1 far) and that centre's own number. */
export function stones({ across, seed }) {
  const random = seeded(seed);
  const centres = Array.from({ length: across * across }, () => [random(), random(), random()]);
  const shade = new Float32Array(side * side);
  const height = field((u, v, index) => {
    const [x, y] = [u * across, v * across];
    const [cx, cy] = [Math.floor(x), Math.floor(y)];
    let [near, second, own] = [9, 9, 0];
    for (let j = -1; j <= 1; j++) {
      for (let i = -1; i <= 1; i++) {
        const [ox, oy, tone] = centres[((cy + j + across) % across) * across + ((cx + i + across) % across)];
        const distance = Math.hypot(cx + i + ox - x, cy + j + oy - y);
        if (distance < near) [near, second, own] = [distance, near, tone];
        else if (distance < second) second = distance;
      }
    }
    shade[index] = own;
    return Math.min(1, (second - near) * 1.6);
  });
  return { height, shade };
}

export function field(value) {
  const values = new Float32Array(side * side);
  for (let j = 0, index = 0; j < side; j++) for (let i = 0; i < side; i++, index++) values[index] = value(i / side, j / side, index);
  return values;
}

export const mapped = (value, low, high) => Math.min(1, Math.max(0, (value - low) / (high - low)));
export const mixed = (a, b, t) => a.map((channel, i) => channel + (b[i] - channel) * t);
