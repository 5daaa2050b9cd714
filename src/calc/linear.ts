import type { Moving } from './moves.js';
import { normals } from './random.js';
import { OutOfRange } from './sheet.js';

type Results = Readonly<Record<string, number>>;

/** How the results move about the middle. */
export interface Linear {
  middle: Results;
  /** By source: change of every result for one standard uncertainty up and down; absent where that gives no number. */
  moved: ReadonlyMap<string, { up: Results | undefined; down: Results | undefined }>;
  /** By result: what the straight line misses at the probes, as a root mean square. */
  missed: Results;
  /** Why a move gave no number. */
  broken?: string;
}

/** Probes to each side with all sources moved at once, which show bends and edges that no single move shows. */
const PROBES = 8;
/** How far a probe moves a source at most, in standard uncertainties: what lies inside the interval decides, not a rare draw. */
const REACH = 3;
/** What binary fractions leave, against the result. */
const NOISE = 1e-11;

export function linear(of: Moving, middle: Results): Linear {
  const n = of.sources.length;
  let broken: string | undefined;
  const change = (moves: ArrayLike<number>): Results | undefined => {
    try {
      const moved = of.at(moves);
      return Object.fromEntries(Object.entries(middle).map(([name, x]) => [name, moved[name]! - x]));
    } catch (error) {
      if (!(error instanceof OutOfRange)) throw error;
      broken ??= error.message;
      return undefined;
    }
  };
  const alone = (i: number, by: number) => change(Array.from({ length: n }, (_, k) => (k === i ? by : 0)));
  const moved = of.sources.map((source, i) => [source, { up: alone(i, 1), down: alone(i, -1) }] as const);

  const normal = normals(7);
  const probes =
    n === 0
      ? []
      : Array.from({ length: PROBES }, () =>
          Array.from({ length: n }, () => Math.max(-REACH, Math.min(REACH, normal()))),
        ).flatMap((z) => [z, z.map((x) => -x)]);
  const seen = probes.map(change);
  const missed = Object.keys(middle).map((name): [string, number] => {
    const slopes = moved.map(([, { up, down }]) => (up && down ? (up[name]! - down[name]!) / 2 : NaN));
    const gaps = probes.map(
      (z, p) => (seen[p]?.[name] ?? NaN) - slopes.reduce((sum, slope, i) => sum + slope * z[i]!, 0),
    );
    const bends = moved.map(([, { up, down }]) => (up && down ? (up[name]! + down[name]!) / 2 : NaN));
    return [name, Math.max(rms(gaps), Math.sqrt(3) * Math.hypot(...bends))];
  });
  return {
    middle,
    moved: new Map(moved),
    missed: Object.fromEntries(missed),
    ...(broken === undefined ? {} : { broken }),
  };
}

/** What the straight line misses of a result, against the standard uncertainty it gives; infinite at a least value. */
export function departure(line: Linear, name: string): number {
  const missed = line.missed[name]!;
  if (Number.isNaN(missed)) return Infinity;
  if (missed <= NOISE * Math.abs(line.middle[name]!)) return 0;
  const standard = Math.hypot(...[...line.moved.values()].map(({ up, down }) => (up![name]! - down![name]!) / 2));
  return missed / standard;
}

function rms(of: readonly number[]): number {
  return of.length === 0 ? 0 : Math.hypot(...of) / Math.sqrt(of.length);
}
