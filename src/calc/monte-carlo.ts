import { COVERAGE } from '../units/student.js';
import type { InputValues } from './inputs.js';
import { model } from './model.js';
import type { Moving } from './moves.js';
import { normals } from './random.js';
import { OutOfRange, type Sheet } from './sheet.js';
import type { Interval } from './value.js';

/** What the trials say of one result, in SI units. */
interface Spread {
  /** The result of the inputs as they stand. */
  value: number;
  mean: number;
  standard: number;
  /** Half the width of the interval about `value` that holds 95.45 % of all trials; infinite where more than the rest gave no number. */
  expanded: number;
  /** 2.5 % and 97.5 % points of all trials; infinite where trials that gave no number may lie there. */
  interval: Interval;
  /** Shortest interval that holds 95.45 % of the trials that gave a number. */
  shortest: readonly [low: number, high: number];
}

export interface MonteCarlo {
  trials: number;
  /** Trials in which the sheet gave no number. */
  lost: number;
  results: Readonly<Record<string, Spread>>;
}

export interface MonteCarloOptions {
  seed?: number;
  /** Significant digits of the standard uncertainty that the trials are to settle (JCGM 101:2008, 7.9.2). */
  digits?: number;
  /** Trials in one block; JCGM 101:2008, 7.9.4, asks for 10⁴. */
  block?: number;
  /** No more trials than this, settled or not. */
  most?: number;
}

/**
 * Propagates distributions through a sheet (JCGM 101:2008): every source of uncertainty is drawn from a normal
 * distribution, and all inputs that rest on it move together. Blocks of trials are added until the expanded uncertainties
 * have settled (7.9). The same seed gives the same numbers.
 *
 * @throws OutOfRange where the inputs as they stand, or all trials, give no number
 */
export function monteCarlo(sheet: Sheet, inputs: InputValues, options?: MonteCarloOptions): MonteCarlo {
  return spreads(model(sheet, inputs), options);
}

export function spreads(
  of: Moving,
  { seed = 1, digits = 2, block = 10_000, most = 10 * block }: MonteCarloOptions = {},
): MonteCarlo {
  const middle = of.at(new Float64Array(of.sources.length));
  const names = Object.keys(middle);
  const normal = normals(seed);
  const draws = new Float64Array(of.sources.length);
  const all = new Map(names.map((name) => [name, [] as number[]]));
  const blocks = new Map(names.map((name) => [name, [] as Block[]]));
  let trials = 0;
  let lost = 0;
  do {
    const from = new Map(names.map((name) => [name, all.get(name)!.length]));
    for (let i = 0; i < block; i++) {
      for (let k = 0; k < draws.length; k++) draws[k] = normal();
      const trial = attempt(of, draws);
      if (trial) for (const name of names) all.get(name)!.push(trial[name]!);
      else lost++;
    }
    trials += block;
    for (const name of names)
      blocks.get(name)!.push(blockOf(sorted(all.get(name)!.slice(from.get(name))), middle[name]!));
  } while (trials < most && names.some((name) => !settled(blocks.get(name)!, digits)));
  if (lost === trials) throw new OutOfRange('no trial within the uncertainty of the inputs gives a number');
  return {
    trials,
    lost,
    results: Object.fromEntries(names.map((name) => [name, spread(sorted(all.get(name)!), middle[name]!, lost)])),
  };
}

function attempt(of: Moving, draws: Float64Array): Readonly<Record<string, number>> | undefined {
  try {
    return of.at(draws);
  } catch (error) {
    if (error instanceof OutOfRange) return undefined;
    throw error;
  }
}

const sorted = (trials: readonly number[]): Float64Array => Float64Array.from(trials).sort();

/** @param trials in rising order, here and below */
function spread(trials: Float64Array, value: number, lost: number): Spread {
  const mean = trials.reduce((sum, x) => sum + x, 0) / trials.length;
  const squares = trials.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  return {
    value,
    mean,
    standard: Math.sqrt(squares / (trials.length - 1)),
    expanded: halfWidth(trials, value, lost),
    interval: symmetric(trials, lost),
    shortest: shortest(trials),
  };
}

/** Lost trials lie outside every interval. Of the rest the farthest are left out one by one, from either end. */
function halfWidth(trials: Float64Array, value: number, lost: number): number {
  let [first, last] = [0, trials.length - 1];
  const inside = Math.ceil(COVERAGE * (trials.length + lost));
  if (inside > trials.length) return Infinity;
  while (last - first + 1 > inside) {
    if (value - trials[first]! > trials[last]! - value) first++;
    else last--;
  }
  return Math.max(Math.abs(value - trials[first]!), Math.abs(trials[last]! - value));
}

/**
 * The probabilistically symmetric coverage interval for 95 % (JCGM 101:2008, 7.7.1 and 7.7.2). Lost trials may have lain
 * beyond either end and are counted there.
 */
function symmetric(trials: Float64Array, lost: number): Interval {
  const all = trials.length + lost;
  const inside = Math.floor(0.95 * all + 0.5);
  const below = Math.floor((all - inside) / 2);
  return { low: trials[below - 1 - lost] ?? -Infinity, high: trials[below - 1 + inside] ?? Infinity };
}

/** JCGM 101:2008, 5.3.4 and 7.7.2 note 3. */
function shortest(trials: Float64Array): readonly [number, number] {
  const inside = Math.ceil(COVERAGE * trials.length) - 1;
  let best = 0;
  for (let i = 0; i + inside < trials.length; i++) {
    if (trials[i + inside]! - trials[i]! < trials[best + inside]! - trials[best]!) best = i;
  }
  return [trials[best]!, trials[best + inside]!];
}

/** What one block of trials says: half the width about the result, and the ends of the interval. */
type Block = readonly [half: number, low: number, high: number];

function blockOf(trials: Float64Array, value: number): Block {
  const { low, high } = symmetric(trials, 0);
  return [halfWidth(trials, value, 0), low, high];
}

/**
 * Whether twice the standard deviation of the blocks' average is below the numerical tolerance, for the standard
 * uncertainty and for both ends of the interval (JCGM 101:2008, 7.9.4).
 */
function settled(blocks: readonly Block[], digits: number): boolean {
  if (blocks.length < 2) return false;
  const [half, low, high] = ([0, 1, 2] as const).map((i) => averaged(blocks.map((block) => block[i])));
  if (half!.mean === 0 || !Number.isFinite(half!.mean)) return true;
  const least = tolerance(half!.mean / 2, digits);
  return half!.deviation < least && 2 * low!.deviation < least && 2 * high!.deviation < least;
}

/** Mean of the blocks, and its standard deviation. */
function averaged(blocks: readonly number[]): { mean: number; deviation: number } {
  const n = blocks.length;
  const mean = blocks.reduce((sum, x) => sum + x, 0) / n;
  return { mean, deviation: Math.sqrt(blocks.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n * (n - 1))) };
}

/** Half the last of so many significant digits of a standard uncertainty (JCGM 101:2008, 7.9.2). */
export function tolerance(standard: number, digits: number): number {
  return 0.5 * 10 ** (Math.floor(Math.log10(standard)) - digits + 1);
}
