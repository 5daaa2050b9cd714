import { plasticModulus } from './halves.js';
import type { Corner, Part, Rectangle } from './part.js';
import { spandrel } from './spandrel.js';

/** Properties about the centroid, with its place (x, y) and the distances to the edges. SI or any one length unit. */
export interface Composite {
  A: number;
  x: number;
  y: number;
  Ix: number;
  Iy: number;
  /** Product of inertia about the centroid. */
  Ixy: number;
  Zx: number;
  Zy: number;
}

/** Adds the parts of a section up about their common centroid (theorem of parallel axes). */
export function composite(parts: readonly Part[]): Composite {
  const own = parts.map(ownProperties);
  const sum = (of: (p: Own) => number) => own.reduce((total, p) => total + of(p), 0);
  const A = sum((p) => p.A);
  const x = sum((p) => p.A * p.x) / A;
  const y = sum((p) => p.A * p.y) / A;
  const Ix = sum((p) => p.Ix + p.A * (p.y - y) ** 2);
  const Iy = sum((p) => p.Iy + p.A * (p.x - x) ** 2);
  const edges = parts.flatMap((p) => (p.kind === 'rectangle' && p.sign > 0 ? [p] : []));
  const farthest = (along: 'x' | 'y', centre: number) =>
    edges.reduce((far, p) => Math.max(far, Math.abs(p[along][0] - centre), Math.abs(p[along][1] - centre)), 0);
  return {
    A,
    x,
    y,
    Ix,
    Iy,
    Ixy: sum((p) => p.Ixy + p.A * (p.x - x) * (p.y - y)),
    Zx: Ix / farthest('y', y),
    Zy: Iy / farthest('x', x),
  };
}

/** Plastic moduli of the same parts. */
export function plasticModuli(parts: readonly Part[]): { Sx: number; Sy: number } {
  return { Sx: plasticModulus(parts, 'y'), Sy: plasticModulus(parts, 'x') };
}

export function rectangle(x: readonly [number, number], y: readonly [number, number], sign: 1 | -1 = 1): Rectangle {
  return { kind: 'rectangle', x, y, sign };
}

export function corner(
  at: readonly [number, number],
  towards: readonly [1 | -1, 1 | -1],
  r: number,
  sign: 1 | -1,
): Corner {
  return { kind: 'corner', at, towards, r, sign };
}

/** A sheet bent round a right angle: material lacks outside at `outer` and is added inside at `inner`. */
export function bend(
  outer: readonly [number, number],
  inner: readonly [number, number],
  ro: number,
  ri: number,
): Corner[] {
  const towards = [inner[0] > outer[0] ? 1 : -1, inner[1] > outer[1] ? 1 : -1] as const;
  return [corner(outer, towards, ro, -1), corner(inner, towards, ri, 1)];
}

interface Own {
  A: number;
  x: number;
  y: number;
  Ix: number;
  Iy: number;
  Ixy: number;
}

function ownProperties(part: Part): Own {
  if (part.kind === 'rectangle') {
    const [b, h] = [part.x[1] - part.x[0], part.y[1] - part.y[0]];
    const A = part.sign * b * h;
    return {
      A,
      x: (part.x[0] + part.x[1]) / 2,
      y: (part.y[0] + part.y[1]) / 2,
      Ix: (A * h * h) / 12,
      Iy: (A * b * b) / 12,
      Ixy: 0,
    };
  }
  const { at, towards, r, sign } = part;
  const I = sign * spandrel.inertia * r ** 4;
  return {
    A: sign * spandrel.area * r * r,
    x: at[0] + towards[0] * spandrel.inset * r,
    y: at[1] + towards[1] * spandrel.inset * r,
    Ix: I,
    Iy: I,
    Ixy: sign * towards[0] * towards[1] * spandrel.product * r ** 4,
  };
}
