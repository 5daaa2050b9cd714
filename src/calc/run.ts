import type { InputValues } from './inputs.js';
import { departure, type Linear, linear } from './linear.js';
import { type Model, model } from './model.js';
import { spreads } from './monte-carlo.js';
import { OutOfRange, type Sheet } from './sheet.js';
import { expanded, type Value } from './value.js';

export { type InputValue, type InputValues, isSeries, type SeriesValue } from './inputs.js';

type Method = 'linear' | 'monte-carlo';

/** One sheet worked through with one set of inputs. */
export interface Run {
  /** Stable within a build: sheet, note and subject, for instance `030-driveline/driveline-angles/ride`. */
  id: string;
  sheet: Sheet;
  inputs: InputValues;
  /** Absent when out of range. */
  results?: Readonly<Record<string, Value>>;
  /** Why there is no number. */
  outOfRange?: string;
  /** What share of the squared uncertainty of each result each source brings, largest first. */
  shares: Readonly<Record<string, readonly { source: string; share: number }[]>>;
  /** How the uncertainty was propagated: `monte-carlo` where at least one result needed it. */
  method: Method;
  /** The same for each result. */
  methods: Readonly<Record<string, Method>>;
}

/** Departure from the straight line, against the standard uncertainty, beyond which distributions are propagated instead. */
const STRAIGHT = 0.12;
/**
 * Enough to settle one significant digit of the standard uncertainty (JCGM 101:2008, 7.9.2), in blocks above the least of
 * 100/(1 − p) = 2198 trials. Whole sections take a millisecond a trial, so the 10⁴ of 7.9.4 would keep people waiting.
 */
const TRIALS = { digits: 1, block: 2500 };

/**
 * Works a sheet through. Uncertainty is propagated linearly with sensitivities found numerically: each source moves all
 * the inputs that rest on it by one standard uncertainty up and down (JCGM 100:2008, 5.1.3 note 2). Where the sheet is
 * not straight enough for that within the uncertainty of its inputs (at a least value, across an edge), distributions are
 * propagated by Monte Carlo (JCGM 101:2008), and the run says so.
 */
export function run(id: string, sheet: Sheet, inputs: InputValues): Run {
  const none = (outOfRange: string): Run => ({
    id,
    sheet,
    inputs,
    outOfRange,
    shares: {},
    method: 'linear',
    methods: {},
  });
  const of = model(sheet, inputs);
  const broken = sheet.validity.find((v) => !v.holds(of.nominal as never));
  if (broken) return none(broken.says);
  try {
    const middle = of.at();
    const propagated = propagate(of, middle, (name) => sheet.results[name]?.step === true);
    const { methods } = propagated;
    const results = Object.fromEntries(
      Object.entries(sheet.results).map(([name, result]): [string, Value] => {
        const own = propagated.parts[name]!;
        const assumed = new Set([...of.assumed].filter((s) => own.has(s)));
        return [
          name,
          {
            si: middle[name]!,
            unit: result.unit,
            parts: own,
            assumed,
            origin: { kind: 'sheet', run: id, result: name },
          },
        ];
      }),
    );
    const shares = Object.fromEntries(Object.entries(results).map(([name, value]) => [name, sharesOf(value)]));
    const method = Object.values(methods).includes('monte-carlo') ? 'monte-carlo' : 'linear';
    return { id, sheet, inputs, results, shares, method, methods };
  } catch (error) {
    if (error instanceof OutOfRange) return none(error.message);
    throw error;
  }
}

interface Propagated {
  /** Expanded uncertainty that each source contributes to each result, signed. */
  parts: Record<string, ReadonlyMap<string, number>>;
  methods: Record<string, Method>;
}

/** Steps on the way are printed, not compared: alone they are not worth the trials, and their moves up and down serve. */
function propagate(of: Model, middle: Readonly<Record<string, number>>, isStep: (name: string) => boolean): Propagated {
  const line = linear(of, middle);
  const bent = Object.keys(middle).filter((name) => departure(line, name) > STRAIGHT);
  const trials = bent.every(isStep) ? undefined : spreads(of, TRIALS);
  const entries = Object.keys(middle).map((name) => {
    if (!bent.includes(name)) return { name, parts: parts(line, name, straight), method: 'linear' as const };
    if (!trials) return { name, parts: parts(line, name, bowed), method: 'linear' as const };
    const half = trials.results[name]!.expanded;
    if (!Number.isFinite(half))
      throw new OutOfRange(`within their uncertainty, ${line.broken ?? 'the inputs give no number'}`);
    return { name, parts: scaled(parts(line, name, bowed), half, of.sources), method: 'monte-carlo' as const };
  });
  return {
    parts: Object.fromEntries(entries.map((e) => [e.name, e.parts])),
    methods: Object.fromEntries(entries.map((e) => [e.name, e.method])),
  };
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
function scaled(parts: ReadonlyMap<string, number>, half: number, sources: readonly string[]): Map<string, number> {
  const total = Math.hypot(...parts.values());
  if (total === 0) return new Map(half === 0 ? [] : sources.map((s) => [s, half / Math.sqrt(sources.length)]));
  return new Map([...parts].map(([source, part]) => [source, (part / total) * half]));
}

function sharesOf(value: Value): { source: string; share: number }[] {
  const total = expanded(value) ** 2;
  return [...value.parts]
    .map(([source, part]) => ({ source, share: total === 0 ? 0 : part ** 2 / total }))
    .sort((a, b) => b.share - a.share);
}
