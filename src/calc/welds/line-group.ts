/** A straight weld between two points, m, as a line without width. */
export interface Segment {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
}

/** Properties of a group of lines about its centroid: length in m, second moments in m³. */
export interface LineGroup {
  length: number;
  cx: number;
  cy: number;
  Ix: number;
  Iy: number;
  Ixy: number;
}

export function lineGroup(segments: readonly Segment[]): LineGroup {
  const lengths = segments.map((s) => Math.hypot(s.x2 - s.x1, s.y2 - s.y1));
  const sum = (of: (s: Segment, l: number) => number) =>
    segments.reduce((total, s, i) => total + of(s, lengths[i]!), 0);
  const length = sum((_, l) => l);
  const cx = sum((s, l) => (l * (s.x1 + s.x2)) / 2) / length;
  const cy = sum((s, l) => (l * (s.y1 + s.y2)) / 2) / length;
  // Of a line from p to q, ∫u v ds = l (2 p_u p_v + 2 q_u q_v + p_u q_v + q_u p_v) / 6.
  const moment = (pu: number, qu: number, pv: number, qv: number, l: number) =>
    (l * (2 * pu * pv + 2 * qu * qv + pu * qv + qu * pv)) / 6;
  return {
    length,
    cx,
    cy,
    Ix: sum((s, l) => moment(s.y1 - cy, s.y2 - cy, s.y1 - cy, s.y2 - cy, l)),
    Iy: sum((s, l) => moment(s.x1 - cx, s.x2 - cx, s.x1 - cx, s.x2 - cx, l)),
    Ixy: sum((s, l) => moment(s.x1 - cx, s.x2 - cx, s.y1 - cy, s.y2 - cy, l)),
  };
}

/** Force (N) and its point of action (m) from any origin in the plane of the welds; z is the distance out of that plane. */
export interface Load {
  Fx: number;
  Fy: number;
  Fz: number;
  x: number;
  y: number;
  z: number;
}

export function momentsAbout({ cx, cy }: Pick<LineGroup, 'cx' | 'cy'>, { Fx, Fy, Fz, x, y, z }: Load) {
  const [rx, ry] = [x - cx, y - cy];
  return { Mx: ry * Fz - z * Fy, My: z * Fx - rx * Fz, Mz: rx * Fy - ry * Fx };
}

/** Radius of gyration across a line, over that along it, under which welds count as lying on one line (squared). */
const ON_ONE_LINE = 1e-4;
/** Share of a moment that may act across such a line without being counted: what measuring can put there. */
const ACROSS = 0.02;

/**
 * How the force out of the plane grows across and up, N/m²: it solves Mx = ky Ix + kx Ixy and −My = ky Ixy + kx Iy.
 * @returns undefined for welds on one line that are bent across that line, which nothing holds
 */
export function slopes({ Ix, Iy, Ixy }: LineGroup, Mx: number, My: number): { kx: number; ky: number } | undefined {
  const polar = Ix + Iy;
  const determinant = Ix * Iy - Ixy ** 2;
  if (determinant > ON_ONE_LINE * polar ** 2) {
    return { kx: -(My * Ix + Mx * Ixy) / determinant, ky: (Mx * Iy + My * Ixy) / determinant };
  }
  const [dx, dy] = [Math.sqrt(Iy / polar), Math.sign(Ixy || 1) * Math.sqrt(Ix / polar)];
  if (Math.abs(Mx * dx + My * dy) > ACROSS * Math.hypot(Mx, My)) return undefined;
  const k = (Mx * dy - My * dx) / polar;
  return { kx: k * dx, ky: k * dy };
}
