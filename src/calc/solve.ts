import { type InputValues, isQuantity } from './inputs.js';
import { model } from './model.js';
import { plausible } from './plausible.js';
import { OutOfRange, type Sheet } from './sheet.js';
import { exactly } from './value.js';

/** Values of one input for which a result takes a wanted value, in SI units and rising order; or why there is none. */
export interface Solution {
  roots: readonly number[];
  /** Why there is no root. */
  why?: string;
  /** The plausible value of the input that comes nearest, and the result there, where there is no root. */
  nearest?: { input: number; result: number };
}

/** The result less the target at one value of the input, or the reason why there is no number. */
interface Point {
  x: number;
  gap?: number;
  broken?: string;
}
type At = (x: number) => Point;

/**
 * Solves a sheet backwards: all values of `input`, over the whole range in which it is plausible and the sheet valid, for
 * which `result` is `target`. Sign changes on a grid are closed in by bisection; jumps and poles are told from roots.
 *
 * @param given all other inputs, usual values filled in; that of `input` itself is left aside
 * @param target in SI units
 */
export function solveFor(sheet: Sheet, given: InputValues, input: string, result: string, target: number): Solution {
  const declared = sheet.inputs[input];
  if (!declared || !isQuantity(declared)) return { roots: [], why: 'it is not a single number' };
  const at: At = (x) => {
    const of = model(sheet, { ...given, [input]: exactly(x, declared.unit) });
    const broken = sheet.validity.find((v) => !v.holds(of.nominal as never));
    if (broken) return { x, broken: broken.says };
    try {
      return { x, gap: of.at()[result]! - target };
    } catch (error) {
      if (error instanceof OutOfRange) return { x, broken: error.message };
      throw error;
    }
  };
  const points = withTurns(withEdges(plausible(sheet, input).map(at), at), at);
  const { roots, jumps } = crossings(points, at, Math.abs(target));
  if (roots.length > 0) return { roots: apart(roots) };
  return none(points, jumps, target);
}

/** Adds, between a point with a number and one without, the last one that still has a number. */
function withEdges(points: readonly Point[], at: At): Point[] {
  return points.flatMap((p, i) => {
    const next = points[i + 1];
    if (!next || (p.gap === undefined) === (next.gap === undefined)) return [p];
    let [inside, outside] = p.gap === undefined ? [next, p] : [p, next];
    for (let step = 0; step < 60; step++) {
      const x = middle(inside.x, outside.x);
      if (x === inside.x || x === outside.x) break;
      const point = at(x);
      if (point.gap === undefined) outside = point;
      else inside = point;
    }
    const edges = p.gap === undefined ? [outside, inside] : [inside, outside];
    return [p, ...edges.filter((edge) => edge !== p && edge !== next)];
  });
}

/** Adds the turning point wherever the result turns back before the target, since two roots may lie close by it. */
function withTurns(points: readonly Point[], at: At): Point[] {
  return points.flatMap((p, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (p.gap === undefined || before?.gap === undefined || after?.gap === undefined) return [p];
    const same = Math.sign(p.gap) === Math.sign(before.gap) && Math.sign(p.gap) === Math.sign(after.gap);
    if (!same || Math.abs(p.gap) > Math.abs(before.gap) || Math.abs(p.gap) > Math.abs(after.gap)) return [p];
    const turn = turning(before.x, after.x, at, Math.sign(p.gap));
    return turn.gap === undefined ? [p] : turn.x < p.x ? [turn, p] : [p, turn];
  });
}

/** Least gap between two values by golden section, or the first value beyond the target. */
function turning(from: number, to: number, at: At, side: number): Point {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let best = at(middle(a, b));
  for (let step = 0; step < 80; step++) {
    const [left, right] = [at(b - golden * (b - a)), at(a + golden * (b - a))];
    if (left.gap === undefined || right.gap === undefined) return best;
    best = left.gap * side < right.gap * side ? left : right;
    if (best.gap! * side <= 0) return best;
    if (best === left) b = right.x;
    else a = left.x;
  }
  return best;
}

function crossings(points: readonly Point[], at: At, size: number): { roots: number[]; jumps: number[] } {
  const roots: number[] = [];
  const jumps: number[] = [];
  const isRoot = (p: Point) => p.gap !== undefined && Math.abs(p.gap) <= 1e-12 * size;
  points.forEach((p, i) => {
    const next = points[i + 1];
    if (isRoot(p)) roots.push(p.x);
    else if (p.gap !== undefined && next?.gap !== undefined && !isRoot(next) && p.gap * next.gap < 0) {
      const closed = closeIn(p, next, at);
      const scale = Math.max(size, Math.min(Math.abs(p.gap), Math.abs(next.gap)));
      (closed.gap !== undefined && Math.abs(closed.gap) <= 1e-9 * scale ? roots : jumps).push(closed.x);
    }
  });
  return { roots, jumps };
}

/** Bisection down to neighbouring numbers; the better of the two. */
function closeIn(from: Point, to: Point, at: At): Point {
  let [a, b] = [from, to];
  for (let x = middle(a.x, b.x); x !== a.x && x !== b.x; x = middle(a.x, b.x)) {
    const point = at(x);
    if (point.gap === undefined || point.gap === 0) return point;
    if (point.gap * a.gap! > 0) a = point;
    else b = point;
  }
  return Math.abs(a.gap!) < Math.abs(b.gap!) ? a : b;
}

const middle = (a: number, b: number) => a + (b - a) / 2;

/** In rising order, each once. */
function apart(roots: readonly number[]): number[] {
  const sorted = [...roots].sort((a, b) => a - b);
  return sorted.filter((x, i) => i === 0 || x - sorted[i - 1]! > 1e-9 * Math.abs(x));
}

function none(points: readonly Point[], jumps: readonly number[], target: number): Solution {
  const numbers = points.filter((p) => p.gap !== undefined);
  if (numbers.length === 0)
    return {
      roots: [],
      why: `no value of it gives a number: ${points.find((p) => p.broken)?.broken ?? 'the sheet gives none'}`,
    };
  const best = numbers.reduce((least, p) => (Math.abs(p.gap!) < Math.abs(least.gap!) ? p : least));
  const nearest = { input: best.x, result: best.gap! + target };
  if (jumps.length > 0) return { roots: [], why: 'no solution: the result jumps over this value', nearest };
  const i = points.indexOf(best);
  const stops = points[i - 1]?.broken ?? points[i + 1]?.broken;
  return { roots: [], why: `no solution in the range of validity${stops === undefined ? '' : ` (${stops})`}`, nearest };
}
