import { type Quantity, readQuantity } from '../units/quantity.js';
import type { Axis } from '../units/slope.js';
import { type Dimension, sameDimension, unit } from '../units/unit.js';

/**
 * What is measured, in classes: with which coarsest usual instrument, how uncertain one reading with it is, what the method
 * brings with any instrument, and which values can be at all.
 */
interface MeasurementClass {
  /** The coarsest usual instrument; empty for what is read from a paper or a marking. */
  instrument: string;
  /**
   * Expanded uncertainty (k = 2) of one reading taken with that instrument, method included: a quantity, or a share of
   * the reading (`6 %`). Undefined where only half the last digit written is known of it.
   */
  usual?: string;
  /** Expanded uncertainty (k = 2) that seating, sag, settling and the like bring, whatever the instrument. */
  method?: string;
  /** What the method's part is. */
  because?: string;
  /** Least and greatest value that can be, in `unit`; from zero up where none is given. */
  range?: readonly [least: number, most: number, unit: string];
}

/** What the figures of the classes rest on: common practice of the trade, no source. They are chosen coarse. */
export const classBasis = 'practice';

export const measurementClasses = {
  thickness: { instrument: 'caliper', usual: '0.1 mm', method: '0.05 mm', because: 'burrs, seating of the jaws' },
  fit: { instrument: 'micrometer or bore gauge', usual: '0.01 mm', method: '0.003 mm', because: 'feel, temperature' },
  feeler: { instrument: 'feeler gauge', usual: '0.05 mm', method: '0.02 mm', because: 'drag of the blade' },
  dial: { instrument: 'dial gauge', usual: '0.03 mm', method: '0.01 mm', because: 'give of the stand' },
  rule: { instrument: 'rule or stepped gauge', usual: '1 mm', method: '0.5 mm', because: 'finding the nearest place' },
  radius: { instrument: 'radius gauge', usual: '0.5 mm', method: '0.2 mm', because: 'light under the gauge' },
  'weld-leg': { instrument: 'fillet gauge', usual: '0.5 mm', method: '0.2 mm', because: 'unevenness of the weld' },
  length: { instrument: 'tape', usual: '2 mm', method: '1 mm', because: 'hook, sag, finding the centres' },
  distance: { instrument: 'measuring wheel or logger', usual: '2 %', method: '0.5 %', because: 'line that was driven' },
  'ride-height': { instrument: 'tape', usual: '5 mm', method: '4 mm', because: 'settling of springs and tyres' },
  'cg-height': { instrument: 'scales and tape', usual: '20 mm', method: '10 mm', because: 'sag of springs and tyres' },
  slope: {
    instrument: 'inclinometer',
    usual: '0.3 deg',
    method: '0.15 deg',
    because: 'seating, settling of the car',
    range: [-90, 90, 'deg'],
  },
  angle: { instrument: 'protractor', usual: '1 deg', method: '0.5 deg', because: 'sighting', range: [0, 360, 'deg'] },
  toe: {
    instrument: 'toe gauge',
    usual: '0.1 deg',
    method: '0.03 deg',
    because: 'settling after rolling',
    range: [-20, 20, 'deg'],
  },
  camber: {
    instrument: 'camber gauge',
    usual: '0.3 deg',
    method: '0.1 deg',
    because: 'run-out of the rim, settling',
    range: [-45, 45, 'deg'],
  },
  caster: {
    instrument: 'camber gauge and turn plates',
    usual: '0.5 deg',
    method: '0.2 deg',
    because: 'angle of the swing',
    range: [-45, 45, 'deg'],
  },
  'axle-mass': { instrument: 'weighbridge', usual: '20 kg', method: '2 kg', because: 'brakes, level of the floor' },
  'wheel-load': { instrument: 'wheel scales', usual: '5 kg', method: '2 kg', because: 'friction of the suspension' },
  'part-mass': { instrument: 'hanging or bathroom scale', usual: '3 %', method: '0.5 %', because: 'what hangs on it' },
  force: { instrument: 'force gauge', usual: '5 %', method: '2 %', because: 'direction of the pull' },
  torque: { instrument: 'click wrench', usual: '6 %', method: '2 %', because: 'pull, friction of the head' },
  pressure: { instrument: 'pressure gauge', usual: '5 %', method: '1 %', because: 'reading between marks' },
  temperature: {
    instrument: 'thermometer',
    usual: '3 K',
    method: '1 K',
    because: 'contact, place',
    range: [-80, 1500, 'degC'],
  },
  voltage: { instrument: 'multimeter', usual: '2 %', method: '0.5 %', because: 'contact' },
  current: { instrument: 'clamp meter', usual: '5 %', method: '1 %', because: 'place of the cable in the clamp' },
  'engine-speed': { instrument: 'tachometer', usual: '2 %', method: '1 %', because: 'holding the speed' },
  speed: { instrument: 'logger or stopwatch', usual: '1 km/h', method: '0.5 km/h', because: 'holding the speed' },
  deceleration: { instrument: 'decelerometer', usual: '5 %', method: '2 %', because: 'pitch of the car' },
  time: { instrument: 'stopwatch', usual: '1 s', method: '0.5 s', because: 'reaction' },
  sound: {
    instrument: 'sound level meter',
    usual: '2 dB',
    method: '0.5 dB',
    because: 'place of the microphone',
    range: [0, 194, 'dB'],
  },
  'small-volume': { instrument: 'burette', usual: '0.5 cm3', method: '0.2 cm3', because: 'bubbles, edge of the plate' },
  volume: { instrument: 'measuring jug', usual: '3 %', method: '1 %', because: 'air that stays in' },
  stiffness: { instrument: 'scale and rule', usual: '5 %', method: '2 %', because: 'friction' },
  ratio: { instrument: 'rule', usual: '5 %', method: '2 %', because: 'both lengths of the ratio' },
  hardness: {
    instrument: 'durometer',
    usual: '5',
    method: '2',
    because: 'thickness and face of the rubber',
    range: [0, 100, '1'],
  },
  aim: { instrument: 'screen and tape', usual: '0.2 %', method: '0.1 %', because: 'level of the floor' },
  gradient: { instrument: 'inclinometer', usual: '1 %', method: '0.5 %', because: 'evenness of the road' },
  'plate-brake': { instrument: 'plate machine', usual: '2 %', method: '1 %', because: 'repeat of the stop' },
  gas: { instrument: 'gas tester', usual: '0.2 %', method: '0.1 %', because: 'leak at the probe' },
  /** Two readings of one instrument, of which only the difference counts: what the instrument is off cancels. */
  repeated: { instrument: '' },
  /** Read from the maker's paper or from a marking: of it only the rounding is known. */
  paper: { instrument: '' },
  /** Agreed or named and not measured, or counted: what is written has no uncertainty of its own. */
  named: { instrument: '' },
} as const satisfies Readonly<Record<string, MeasurementClass>>;
export type MeasuredAs = keyof typeof measurementClasses;

/** Of these, `%` is the unit in which they are measured, and not a share of the reading. */
const inPerCent: ReadonlySet<MeasuredAs> = new Set(['aim', 'gradient', 'plate-brake', 'gas']);

/** The class of what carries no class of its own: by dimension and, below the size in `unit`, the first that fits. */
const byDimension: readonly (readonly [unit: string, below: number, as: MeasuredAs])[] = [
  ['mm', 1, 'feeler'],
  ['mm', 40, 'thickness'],
  ['mm', 10_000, 'length'],
  ['mm', Number.POSITIVE_INFINITY, 'distance'],
  ['deg', Number.POSITIVE_INFINITY, 'angle'],
  ['kg', 100, 'part-mass'],
  ['kg', Number.POSITIVE_INFINITY, 'axle-mass'],
  ['N', Number.POSITIVE_INFINITY, 'force'],
  ['N*m', Number.POSITIVE_INFINITY, 'torque'],
  // A stress of more than this is a strength from a paper.
  ['MPa', 100, 'pressure'],
  ['degC', Number.POSITIVE_INFINITY, 'temperature'],
  ['V', Number.POSITIVE_INFINITY, 'voltage'],
  ['A', Number.POSITIVE_INFINITY, 'current'],
  ['rpm', Number.POSITIVE_INFINITY, 'engine-speed'],
  ['km/h', Number.POSITIVE_INFINITY, 'speed'],
  ['m/s2', Number.POSITIVE_INFINITY, 'deceleration'],
  ['s', Number.POSITIVE_INFINITY, 'time'],
  ['dB', Number.POSITIVE_INFINITY, 'sound'],
  ['cm3', 200, 'small-volume'],
  ['cm3', Number.POSITIVE_INFINITY, 'volume'],
  ['N/mm', Number.POSITIVE_INFINITY, 'stiffness'],
  ['1', Number.POSITIVE_INFINITY, 'ratio'],
];

const byAxis: Readonly<Record<Axis, MeasuredAs>> = {
  pitch: 'slope',
  plan: 'slope',
  camber: 'camber',
  caster: 'caster',
  toe: 'toe',
};

/** The class of a quantity from its dimension and size, where nothing is said of it; a ratio of whole numbers is counted. */
export function classBySize({ si, dimension, unit: written, halfDigit }: Quantity): MeasuredAs {
  if (halfDigit === 0) return 'named';
  const offset = unit(written).offset?.toNumber() ?? 0;
  const size = Math.abs(si - offset);
  const fits = byDimension.find(([of, below]) => {
    const { dimension: its, factor } = unit(of);
    return sameDimension(its, dimension) && size < below * factor.toNumber() * (1 - 1e-12);
  });
  return fits?.[2] ?? 'paper';
}

/** The class of a field: the one it names, or that of its axis, or by its unit and the size of its typical value. */
export function classOfField(of: {
  measuredAs?: MeasuredAs | undefined;
  unit?: string | undefined;
  typical?: string | undefined;
  axis?: Axis | undefined;
}): MeasuredAs | undefined {
  if (of.measuredAs) return of.measuredAs;
  if (of.axis) return byAxis[of.axis];
  if (of.unit === undefined || of.typical === undefined) return undefined;
  const typical = readQuantity(of.typical, of.unit);
  return typical.ok ? classBySize(typical.quantity) : undefined;
}

/** Expanded uncertainty in SI units of one reading with the coarsest usual instrument of the class. */
export const usualOf = (as: MeasuredAs, reading: Quantity): number | undefined =>
  sizeOf(as, (measurementClasses[as] as MeasurementClass).usual, reading);

/** Expanded uncertainty in SI units that the method brings, whatever the instrument. */
export const methodOf = (as: MeasuredAs, reading: Quantity): number =>
  sizeOf(as, (measurementClasses[as] as MeasurementClass).method, reading) ?? 0;

function sizeOf(as: MeasuredAs, text: string | undefined, reading: Quantity): number | undefined {
  const read = text === undefined ? undefined : partOf(text);
  if (!read) return undefined;
  if (read.unit === '%' && !inPerCent.has(as)) return read.si * Math.abs(fromZero(reading));
  return sameDimension(read.dimension, reading.dimension) ? read.si : undefined;
}

/** Of a scale with a zero of its own, the size above that zero. */
const fromZero = ({ si, unit: written }: Quantity): number => si - (unit(written).offset?.toNumber() ?? 0);

interface Part {
  si: number;
  unit: string;
  dimension: Dimension;
}
const parts = new Map<string, Part>();

function partOf(text: string): Part {
  const known = parts.get(text);
  if (known) return known;
  const written = /[^\d.\s].*$/u.exec(text)?.[0] ?? '1';
  const read = readQuantity(text, written);
  if (!read.ok) throw new Error(`no uncertainty: ${text}`);
  const { si, unit: own, dimension } = read.quantity;
  const part = { si, unit: own, dimension };
  parts.set(text, part);
  return part;
}

/** The values that can be, in SI units. */
export function rangeOf(as: MeasuredAs | undefined): readonly [least: number, most: number] {
  const range = as && (measurementClasses[as] as MeasurementClass).range;
  if (!range) return [0, Number.POSITIVE_INFINITY];
  const { factor, offset } = unit(range[2]);
  return [range[0], range[1]].map((x) =>
    factor
      .times(x)
      .plus(offset ?? 0)
      .toNumber(),
  ) as [number, number];
}
