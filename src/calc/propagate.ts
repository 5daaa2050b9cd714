import { departure, type Linear, linear } from './linear.js';
import { spreads } from './monte-carlo.js';
import { type Moving, movedBy, sourcesOf, stretch } from './moves.js';
import { OutOfRange } from './sheet.js';
import { expanded, type Interval, type Value } from './value.js';

/**
 * The one propagation of uncertainty: of sheets, of expressions in limits and items, of differences and of margins. It
 * knows the sources of uncertainty by name (the place of a measurement), so that two values that rest on one measurement
 * move together (JCGM 100:2008, 5.2.2).
 */

export type Method = 'linear' | 'monte-carlo';

/** A result with what moves it, all in SI units. */
export type Spread = Pick<Value, 'si' | 'parts' | 'interval'>;
type Propagated = Spread & { method: Method };

/** Departure from the straight line, against the standard uncertainty, beyond which distributions are propagated instead. */
const STRAIGHT = 0.12;
/**
 * Enough to settle one significant digit of the standard uncertainty (JCGM 101:2008, 7.9.2), in blocks above the least of
 * 100/(1 − p) = 2198 trials. Whole sections take a millisecond a trial, so the 10⁴ of 7.9.4 would keep people waiting.
 */
const TRIALS = { digits: 1, block: 2500 };

/**
 * Propagates uncertainty through a calculation: linearly, with sensitivities found numerically from one standard
 * uncertainty of each source up and down (JCGM 100:2008, 5.1.2 and 5.1.3 note 2). A result that is not straight enough
 * for that within the uncertainty of its inputs (at a least value, across an edge) is propagated by Monte Carlo (JCGM
 * 101:2008) and carries its 2.5 % and 97.5 % points.
 *
 * @param fn results with each source moved by so many standard uncertainties
 * @param isStep results on the way: printed, not compared, so that alone they are not worth the trials
 * @throws OutOfRange where the calculation gives no number as it stands, or too often within the uncertainty
 */
export function propagate(
  fn: Moving['at'],
  sources: readonly string[],
  isStep: (name: string) => boolean = () => false,
): Record<string, Propagated> {
  const of = { at: fn, sources };
  const middle = fn(new Float64Array(sources.length));
  const line = linear(of, middle);
  const bent = Object.keys(middle).filter((name) => departure(line, name) > STRAIGHT);
  const trials = bent.every(isStep) ? undefined : spreads(of, TRIALS);
  const one = (name: string): Propagated => {
    const si = middle[name]!;
    if (!bent.includes(name)) return { si, parts: parts(line, name, straight), method: 'linear' };
    if (!trials) return { si, parts: parts(line, name, bowed), method: 'linear' };
    const { expanded: half, interval } = trials.results[name]!;
    if (![half, interval.low, interval.high].every(Number.isFinite))
      throw new OutOfRange(`within their uncertainty, ${line.broken ?? 'the inputs give no number'}`);
    return { si, parts: scaled(parts(line, name, bowed), half, sources), interval, method: 'monte-carlo' };
  };
  return Object.fromEntries(Object.keys(middle).map((name) => [name, one(name)]));
}

/**
 * A number calculated from values, with the sources of all of them.
 *
 * @throws OutOfRange as `propagate`
 */
export function combine(
  values: readonly Value[],
  calculate: (...si: number[]) => number,
): Spread & Pick<Value, 'assumed'> {
  const sources = sourcesOf(values);
  const place = new Map(sources.map((source, i) => [source, i]));
  const moved = values.map((value) => movedBy(value, place));
  const at = (moves: ArrayLike<number>) => {
    const result = calculate(...moved.map((one) => one(moves)));
    if (!Number.isFinite(result)) throw new OutOfRange('the inputs give no finite number');
    return { result };
  };
  const { si, parts, interval } = propagate(at, sources).result!;
  return { si, parts, interval, assumed: assumedOf(values, parts) };
}

/** A sum of values, each times an exact number: the sensitivities are known, so that nothing is lost to rounding. */
export function weighted(...terms: readonly (readonly [weight: number, value: Spread])[]): Spread {
  const si = terms.reduce((sum, [weight, value]) => sum + weight * value.si, 0);
  const parts = summed(terms.map(([weight, value]) => [weight, value.parts]));
  return { si, parts, interval: intervalOf(si, terms) };
}

/**
 * Where a term is simulated, each side reaches as far as the ends of the terms that lead there. Which way a source moves a
 * simulated value is not known over its whole interval, so that what rests on one source adds up and never cancels.
 */
function intervalOf(si: number, terms: readonly (readonly [number, Spread])[]): Interval | undefined {
  if (terms.every(([, { interval }]) => interval === undefined)) return undefined;
  const reach = (side: 1 | -1) =>
    expanded({
      parts: summed(
        terms.map(([weight, value]) => [
          Math.abs(weight) * stretch(value, weight < 0 ? (-side as 1 | -1) : side),
          sizes(value.parts),
        ]),
      ),
    });
  return { low: si - reach(-1), high: si + reach(1) };
}

const sizes = (parts: Spread['parts']) => new Map([...parts].map(([source, part]) => [source, Math.abs(part)]));

function summed(terms: readonly (readonly [number, Spread['parts']])[]): Map<string, number> {
  const all = new Map<string, number>();
  for (const [weight, parts] of terms)
    for (const [source, part] of parts) all.set(source, (all.get(source) ?? 0) + weight * part);
  return new Map([...all].filter(([, part]) => part !== 0));
}

/** Sources that nobody stated, as far as the result rests on them. */
export function assumedOf(values: readonly Pick<Value, 'assumed'>[], parts: Spread['parts']): Set<string> {
  return new Set(values.flatMap(({ assumed }) => [...assumed]).filter((source) => parts.has(source)));
}

/** Twice what one standard uncertainty of each source does to the result. */
function parts(line: Linear, name: string, part: (rise: number, fall: number) => number): Map<string, number> {
  const all = [...line.moved].map(
    ([source, { up, down }]) => [source, part(up?.[name] ?? 0, down?.[name] ?? 0)] as const,
  );
  return new Map(all.filter(([, x]) => x !== 0));
}

const straight = (rise: number, fall: number) => rise - fall;
/** The same where the result is straight, and not zero at a least value. */
const bowed = (rise: number, fall: number) => (Math.sign(rise - fall) || 1) * Math.SQRT2 * Math.hypot(rise, fall);

/** The parts in their proportion, so that together they make `half`; alike where no source alone moves the result. */
function scaled(own: ReadonlyMap<string, number>, half: number, sources: readonly string[]): Map<string, number> {
  const total = Math.hypot(...own.values());
  if (total === 0) return new Map(half === 0 ? [] : sources.map((s) => [s, half / Math.sqrt(sources.length)]));
  return new Map([...own].map(([source, part]) => [source, (part / total) * half]));
}
