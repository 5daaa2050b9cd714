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
  const edges = Float64Array.from(strips.flatMap((s) => [s.from, s.to])).sort();
  let [low, high] = [0, edges.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (below(edges[middle]!) < half) low = middle;
    else high = middle;
  }
  const [from, to] = [edges[low]!, edges[high]!];
  const [areaFrom, areaTo] = [below(from), below(to)];
  return areaTo === areaFrom ? to : from + ((half - areaFrom) / (areaTo - areaFrom)) * (to - from);
}

function shareBelow({ from, to }: Strip, y: number): number {
  if (y >= to) return 1;
  return y <= from ? 0 : (y - from) / (to - from);
}

function firstMoment({ area, from, to }: Strip, axis: number): number {
  if (axis <= from || axis >= to) return area * Math.abs((from + to) / 2 - axis);
  return (area * ((axis - from) ** 2 + (to - axis) ** 2)) / (2 * (to - from));
}
