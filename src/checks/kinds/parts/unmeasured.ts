import { expanded } from '../../../calc/value.js';
import type { Measured } from '../../../project/fields.js';
import type { Basis } from '../../codes/limit.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';

interface Unmeasured {
  /** Expanded uncertainty (k = 2) as a share of the value. */
  share: number;
  /** What spreads. */
  because: string;
  basis: Basis;
}

/**
 * What a builder cannot measure and takes from a paper: how uncertain it is by class, where he states nothing. A stated ± or an
 * instrument stands. Common practice, no source; chosen coarse.
 */
const unmeasured = {
  friction: { share: 0.15, because: 'batch, heat and bedding of pads', basis: 'practice' },
  factor: { share: 0.2, because: 'friction of linings, which a drum amplifies, and their bedding', basis: 'practice' },
  'booster-ratio': { share: 0.1, because: 'friction of the booster, vacuum', basis: 'practice' },
  'booster-assist': { share: 0.1, because: 'vacuum', basis: 'practice' },
  efficiency: { share: 0.05, because: 'seals, pivots', basis: 'practice' },
  'valve-knee': { share: 0.1, because: 'spring and seal of the valve', basis: 'practice' },
  'valve-slope': { share: 0.1, because: 'steps of the piston of the valve', basis: 'practice' },
  swell: { share: 0.3, because: 'age and length of hoses, air', basis: 'practice' },
} as const satisfies Readonly<Record<string, Unmeasured>>;
type UnmeasuredName = keyof typeof unmeasured;

/** Whether its uncertainty comes from the table. */
export const isByDefault = (measured: Measured | undefined): boolean =>
  measured !== undefined &&
  measured.quantity.expanded === undefined &&
  measured.quantity.readings === undefined &&
  measured.with === undefined;

/**
 * A value with its default uncertainty.
 *
 * @param source what its uncertainty rests on: values that name the same move together, such as the friction of like pads at
 * both axles or of pads that stayed
 */
export function takeUnmeasured(
  name: UnmeasuredName,
  measured: Measured | undefined,
  path: readonly string[],
  work: Work,
  source?: string,
): Maybe {
  const value = work.take(measured, ...path);
  if (isMissing(value)) return value;
  const { share } = unmeasured[name];
  const byDefault = isByDefault(measured);
  const own = expanded(value);
  const key = source ?? [...value.parts.keys()][0] ?? path.join('.');
  if (!byDefault) return source === undefined ? value : { ...value, parts: new Map([[key, own]]) };
  const text = value.origin.kind === 'note' ? value.origin.text : '';
  return {
    ...value,
    parts: new Map([[key, Math.max(own, share * Math.abs(value.si))]]),
    assumed: new Set(),
    origin: { ...value.origin, text: `${text} ± ${share * 100} %, common practice` } as typeof value.origin,
  };
}
