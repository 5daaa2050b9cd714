import type { Value } from '../../calc/value.js';
import type { Measured } from '../../project/fields.js';
import { instrumentOf, outOfDate, uncertaintyOf as uncertaintyWith } from '../../project/instruments.js';
import { measuredIn } from '../../project/measured-in.js';
import { classBySize, measurementClasses, methodOf, usualOf } from '../../project/measurement-classes.js';
import type { Build } from '../../project/model.js';
import { type Dimension, sameDimension, unit as unitOf } from '../../units/unit.js';

/** A measured field as a value, with one source of uncertainty: the place at which it was written. */
export function valueOf(measured: Measured, build: Build): Value {
  const { quantity, at, places, ...rest } = measured;
  const { expanded, assumed } = uncertaintyOf(measured, build);
  const source = sourceOf(measured);
  return {
    si: quantity.si,
    unit: quantity.unit,
    parts: new Map([[source, expanded]]),
    assumed: new Set(assumed === undefined ? [] : [source]),
    origin: { kind: 'note', place: at, text: quantity.text },
    ...(places ? { places: places.map((one) => valueOf({ ...rest, at, quantity: one }, build)) } : {}),
  };
}

const isRatio = (dimension: Dimension): boolean =>
  [{}, unitOf('deg').dimension].some((plain) => sameDimension(dimension, plain));

const sourceOf = ({ at }: Measured): string => `${at.file}#${at.path}`;

interface Uncertainty {
  /** Expanded uncertainty (k = 2) in SI units. */
  expanded: number;
  /** What was taken because nobody stated it: that of a usual instrument, or half the last digit of a figure. */
  assumed?: string | undefined;
  /** What a usual instrument of its class would leave, or the last digit written, SI. */
  usual: number;
  /** What `build.md` states of the instrument is of another dimension; a ratio may be that of two readings. */
  unfit: boolean;
  /** The check of the instrument was too long ago, so that its uncertainty was widened. */
  outOfDate: boolean;
}

/** Common practice, no source: no instrument of a class reads more than so many times finer than its coarsest usual one. */
const finerThanUsual = 100;

/**
 * The uncertainty of a measured field. Instrument and method combine as the root of the sum of squares (JCGM 100:2008,
 * 4.3 and 5.1.2), and with them the spread of readings of one place (4.2.3). What the instrument is off is the same for all
 * readings, so that it does not shrink with their number (5.2.2, note 1). Without an instrument the coarsest usual one of the
 * class is taken. A stated ± stands for instrument and method, but is no narrower than the instrument that is named, or than the
 * finest of its class where none is. Half
 * the last place written may widen the result and never narrows it.
 */
export function uncertaintyOf(measured: Measured, build: Build): Uncertainty {
  const { quantity } = measured;
  const as = measured.as ?? classBySize(quantity);
  const instrument = instrumentOf(measured, build);
  const own = instrument && uncertaintyWith(instrument, measured);
  const { expanded, readings, eachStated = [], spread = 0, halfDigit } = quantity;
  const late = instrument !== undefined && own !== undefined && outOfDate(instrument, measured.on);
  const unstated = own === undefined ? usualOf(as, quantity) : Math.hypot(own, methodOf(as, quantity));
  const finest = (usualOf(as, quantity) ?? 0) / finerThanUsual;
  const each = (readings ?? [quantity.si]).map((_, i) => {
    const stated = readings ? eachStated[i] : expanded;
    return stated === undefined ? Math.max(unstated ?? 0, halfDigit) : Math.max(stated, own ?? finest);
  });
  const ofOne = each.reduce((sum, u) => sum + u, 0) / each.length;
  const someUnstated = readings ? each.some((_, i) => eachStated[i] === undefined) : expanded === undefined;
  return {
    expanded: Math.hypot(ofOne, spread),
    usual: Math.max(usualUncertaintyOf(measured), halfDigit),
    assumed: someUnstated && own === undefined && ofOne > 0 ? assumedFrom(unstated, as) : undefined,
    unfit: instrument?.uncertainty !== undefined && own === undefined && !isRatio(quantity.dimension),
    outOfDate: late,
  };
}

/** Of a reading with the coarsest usual instrument of its class, SI; where the class has none, half the last digit. */
export function usualUncertaintyOf(measured: Measured): number {
  const { quantity } = measured;
  return usualOf(measured.as ?? classBySize(quantity), quantity) ?? quantity.halfDigit;
}

const assumedFrom = (usual: number | undefined, as: keyof typeof measurementClasses): string =>
  usual === undefined ? 'last digit' : `usual ${measurementClasses[as].instrument}`;

const markOfInstrument = 'uncertainty of a usual instrument assumed';
const markOfDigit = 'uncertainty assumed from the last digit of a figure';
const markOfUnfit = 'the instrument that is named does not read this; that of a usual one assumed';
const markOfDate = 'instrument out of date, its uncertainty doubled';

/** What must stand beside an outcome that rests on these values, of what was assumed or widened in their uncertainty. */
export function uncertaintyMarks(value: Pick<Value, 'parts' | 'assumed'>, build: Build): string[] {
  const known = uncertaintiesIn(build);
  const sources = [...value.parts].filter(([, part]) => part !== 0).flatMap(([source]) => known.get(source) ?? []);
  return [
    ...(sources.some((u) => u.assumed !== undefined && u.assumed !== 'last digit') ? [markOfInstrument] : []),
    ...(sources.some((u) => u.assumed === 'last digit') ? [markOfDigit] : []),
    ...(sources.some((u) => u.unfit) ? [markOfUnfit] : []),
    ...(sources.some((u) => u.outOfDate) ? [markOfDate] : []),
  ];
}

/** A value as uncertain as with usual instruments, where those that were used are coarser or more was stated. */
export function noVaguerThanUsual(value: Value, build: Build): Value {
  const known = uncertaintiesIn(build);
  const share = (source: string) => {
    const { expanded: own, usual } = known.get(source) ?? { expanded: 0, usual: 0 };
    return own > usual ? usual / own : 1;
  };
  const { interval: _, ...rest } = value;
  return { ...rest, parts: new Map([...value.parts].map(([source, part]) => [source, part * share(source)])) };
}

/** The uncertainty of every measured field of a build by its source. */
function uncertaintiesIn(build: Build): ReadonlyMap<string, Uncertainty> {
  const known = found.get(build);
  if (known) return known;
  const all = [build.data, ...build.notes.map((note) => note.data)].flatMap(measuredIn);
  const made = new Map(all.map((measured) => [sourceOf(measured), uncertaintyOf(measured, build)]));
  found.set(build, made);
  return made;
}
const found = new WeakMap<Build, ReadonlyMap<string, Uncertainty>>();
