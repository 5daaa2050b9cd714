import type { Value } from '../../calc/value.js';
import type { Tyre } from '../../project/designations/tyre.js';
import type { Designated, Measured } from '../../project/fields.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { fromDesignation } from './parts/designated.js';
import type { WheelsTyres } from './wheels-fields.js';

interface Listed {
  tyre?: Designated<Tyre> | undefined;
  diameter?: Measured | undefined;
  width?: Measured | undefined;
  load?: Measured | undefined;
}

/** Each bound with the field of a listed tyre that it is taken from. */
const bounds = {
  largest_tyre_diameter: 'diameter',
  smallest_tyre_diameter: 'diameter',
  widest_tyre: 'width',
  placard_tyre_load: 'load',
  least_rim_width: 'least-rim',
} as const;
type Bound = keyof typeof bounds;

/**
 * Publishes the bounds that limits read: what the maker lists, in the note and in `build.md`. Gives a function that hands a
 * value through where its bound is known, and says what to fill in where it is not: each listed tyre says where it is listed.
 */
export function listedTyres(data: WheelsTyres, work: Work): (bound: Bound, value: Maybe) => Maybe {
  const { original } = work.build.data;
  const all: (Listed & { id: string })[] = [
    ...(data.listed ?? []),
    ...[original?.tyre, original?.['largest-tyre']].flatMap((tyre, i) =>
      tyre ? [{ id: ['placard', 'largest'][i]!, tyre }] : [],
    ),
  ];
  const values = (name: 'diameter' | 'width' | 'load', unit: string, of: (tyre: Tyre) => number | undefined): Value[] =>
    all.flatMap((one): Value[] => {
      const typed = one[name];
      const taken = typed && work.take(typed, 'listed', one.id, name);
      if (taken && !isMissing(taken)) return [taken];
      const size = one.tyre && of(one.tyre);
      return size === undefined ? [] : [fromDesignation(one.tyre!, size, unit)];
    });
  const known = new Set<Bound>();
  const publish = (name: Bound, found: readonly Value[], better: (a: Value, b: Value) => boolean) => {
    if (found.length === 0) return;
    known.add(name);
    work.publish(
      name,
      found.reduce((a, b) => (better(b, a) ? b : a)),
    );
  };
  const more = (a: Value, b: Value) => a.si > b.si;
  const less = (a: Value, b: Value) => a.si < b.si;
  const diameters = values('diameter', 'mm', (t) => t.overallDiameter);
  publish('largest_tyre_diameter', diameters, more);
  publish('smallest_tyre_diameter', diameters, less);
  publish(
    'widest_tyre',
    values('width', 'mm', (t) => t.width),
    more,
  );
  publish(
    'placard_tyre_load',
    values('load', 'kg', (t) => t.load),
    less,
  );
  const rims = (data.listed ?? []).flatMap((one) =>
    one['least-rim'] ? [work.take(one['least-rim'], 'listed', one.id, 'least-rim')] : [],
  );
  publish(
    'least_rim_width',
    rims.filter((r): r is Value => !isMissing(r)),
    less,
  );
  const [first] = data.listed ?? [];
  const unsourced = data.listed?.find((one) => !one.from);
  return (bound, value) => {
    if (isMissing(value)) return value;
    if (unsourced) return work.lacks('listed', unsourced.id, 'from');
    if (known.has(bound)) return value;
    return first ? work.lacks('listed', first.id, bounds[bound]) : work.lacks('listed');
  };
}
