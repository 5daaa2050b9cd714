/** An area seen along one axis, spread evenly from `from` to `to`. Negative where it is cut out. */
export interface Strip {
  area: number;
  from: number;
  to: number;
}

/** The plastic modulus: the first moment of both halves about the line that halves the area. Same length unit cubed. */
export function plasticModulus(strips: readonly Strip[]): number {
  const axis = halvingLine(strips);
  return strips.reduce((sum, strip) => sum + firstMoment(strip, axis), 0);
}

function halvingLine(strips: readonly Strip[]): number {
  const half = strips.reduce((sum, s) => sum + s.area, 0) / 2;
  const below = (y: number) => strips.reduce((sum, s) => sum + s.area * shareBelow(s, y), 0);
  const edges = [...new Set(strips.flatMap((s) => [s.from, s.to]))].sort((a, b) => a - b);
  const above = edges.findIndex((y) => below(y) >= half);
  const high = edges[above]!;
  if (above === 0) return high;
  const low = edges[above - 1]!;
  const areaLow = below(low);
  return low + ((half - areaLow) / (below(high) - areaLow)) * (high - low);
}

function shareBelow({ from, to }: Strip, y: number): number {
  if (y >= to) return 1;
  return y <= from ? 0 : (y - from) / (to - from);
}

function firstMoment({ area, from, to }: Strip, axis: number): number {
  if (axis <= from || axis >= to) return area * Math.abs((from + to) / 2 - axis);
  return (area * ((axis - from) ** 2 + (to - axis) ** 2)) / (2 * (to - from));
}
