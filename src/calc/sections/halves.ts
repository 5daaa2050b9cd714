import type { Corner, Part, Rectangle } from './part.js';
import { spandrelWithin } from './spandrel.js';

type Axis = 'x' | 'y';

/** The plastic modulus: the first moment of both halves about the line across `along` that halves the area. Same length unit cubed. */
export function plasticModulus(parts: readonly Part[], along: Axis): number {
  const whole = below(parts, along, Infinity);
  return whole.moment - 2 * below(parts, along, halvingLine(parts, along, whole.area / 2)).moment;
}

/** Finds the pair of edges that the line lies between, and then the line: between straight edges at once, beside fillets step by step. */
function halvingLine(parts: readonly Part[], along: Axis, half: number): number {
  const edges = Float64Array.from(parts.flatMap((p) => reach(p, along))).sort();
  let [low, high] = [0, edges.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (below(parts, along, edges[middle]!).area < half) low = middle;
    else high = middle;
  }
  let [from, to] = [edges[low]!, edges[high]!];
  let [short, over] = [below(parts, along, from).area - half, below(parts, along, to).area - half];
  for (let step = 0; step < MOST_STEPS && over > short; step += 1) {
    const line = from - (short * (to - from)) / (over - short);
    const off = below(parts, along, line).area - half;
    if (Math.abs(off) <= CLOSE * half) return line;
    // Illinois: the end that stays counts half, so that both ends close in.
    if (off < 0) [from, short, over] = [line, off, over / 2];
    else [to, over, short] = [line, off, short / 2];
  }
  return to;
}

const MOST_STEPS = 60;
const CLOSE = 1e-13;

function reach(part: Part, along: Axis): readonly [number, number] {
  if (part.kind === 'rectangle') return part[along];
  const at = part.at[along === 'x' ? 0 : 1];
  return part.towards[along === 'x' ? 0 : 1] > 0 ? [at, at + part.r] : [at - part.r, at];
}

/** Area below a line and its first moment about zero. */
function below(parts: readonly Part[], along: Axis, line: number): { area: number; moment: number } {
  let [area, moment] = [0, 0];
  for (const part of parts) {
    const own = part.kind === 'rectangle' ? ofRectangle(part, along, line) : ofCorner(part, along, line);
    area += part.sign * own.area;
    moment += part.sign * own.moment;
  }
  return { area, moment };
}

function ofRectangle({ x, y }: Rectangle, along: Axis, line: number): { area: number; moment: number } {
  const [[from, to], across] = along === 'x' ? [x, y] : [y, x];
  const upTo = Math.min(Math.max(line, from), to);
  const area = (upTo - from) * (across[1] - across[0]);
  return { area, moment: (area * (from + upTo)) / 2 };
}

const whole = spandrelWithin(1);

function ofCorner({ at, towards, r }: Corner, along: Axis, line: number): { area: number; moment: number } {
  if (r === 0) return { area: 0, moment: 0 };
  const i = along === 'x' ? 0 : 1;
  const within = spandrelWithin(Math.min(Math.max((towards[i] * (line - at[i])) / r, 0), 1));
  const upward = towards[i] > 0;
  const area = (upward ? within.area : whole.area - within.area) * r ** 2;
  const arm = (upward ? within.moment : within.moment - whole.moment) * r ** 3;
  return { area, moment: at[i] * area + arm };
}
