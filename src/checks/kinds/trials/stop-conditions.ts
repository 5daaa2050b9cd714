import type { Measured } from '../../../project/fields.js';
import { instrumentOf, outOfDate } from '../../../project/instruments.js';
import type { Note } from '../../../project/model.js';
import type { Basis } from '../../codes/limit.js';
import { isMissing, type Work } from '../../engine/work.js';
import type { BrakeTest, Stop } from '../test-fields.js';

const KMH = 1 / 3.6;
const HAIR = 1e-9;
const manual = 'Brake assessment manual, New South Wales, v1.0, October 2013';

interface Figure {
  /** In SI units. */
  figure: number;
  document: string;
  basis: Basis;
}

/** What a stop has to keep so that it counts. Beyond these it is inconclusive, never a pass or a fault. */
export const stopConditions = {
  friction: { figure: 0.6, document: `${manual}, conditions`, basis: 'published' },
  /** More than this no test that was read lets a foot press; a lower figure is read in the own copy. */
  pedal: { figure: 885, document: `${manual}, pre-test and test B`, basis: 'published' },
  /** The stop from higher speed: share of the top speed, and the speed beyond which it need not go. */
  highSpeedShare: { figure: 0.8, document: 'UN Regulation 13-H, Annex 3, engine connected', basis: 'memory' },
  highSpeedMost: { figure: 160 * KMH, document: 'UN Regulation 13-H, Annex 3, engine connected', basis: 'memory' },
  /** By how much the speed may fall short, as a share; the same for pedal forces that are to be alike. */
  within: { figure: 0.05, document: 'common practice of the trade', basis: 'practice' },
} as const satisfies Readonly<Record<string, Figure>>;
const c = stopConditions;

/** Speed that a test starts from; tests that are not here have theirs in the own copy. Basis: the manual, published. */
const speeds: Readonly<Record<string, number>> = {
  'pre-test': 30 * KMH,
  'circuit-failed-laden': 80 * KMH,
  'circuit-failed-light': 80 * KMH,
  'proportioning-failed': 80 * KMH,
  'antilock-failed': 80 * KMH,
};
/** The conversion that the manual numbers 19 is tested with a failed circuit from this speed. */
const speedOf19 = 55 * KMH;

/** Why a stop does not count: speed, pedal force, load, surface, instruments. */
export function unmetByStop(stop: Stop, test: BrakeTest, work: Work): string[] {
  const measured = [stop.deceleration ?? stop['to-low'], stop.speed, stop['pedal-force'], stop.peak];
  return [
    ...bySpeed(stop, work),
    ...byPedal(stop, work),
    ...byLoad(stop, test, work),
    ...(stop.test === 'pre-test' ? [] : bySurface(test, work)),
    ...byInstruments(
      measured.filter((m) => m !== undefined),
      work,
    ),
  ];
}

interface FirstStop {
  'pedal-force'?: Measured | undefined;
  average?: Measured | undefined;
  peak?: Measured | undefined;
}

/** The same of the first stop, which the note on brakes may hold; its speed, load and surface are in what it is. */
export function unmetByFirstStop(stop: FirstStop, work: Work): string[] {
  return [
    ...byPedal({ id: '', ...stop }, work),
    ...byInstruments(
      [stop.average, stop.peak, stop['pedal-force']].filter((m) => m !== undefined),
      work,
    ),
  ];
}

function bySpeed({ speed, test }: Stop, work: Work): string[] {
  if (!speed) return ['the speed is not stated'];
  const asked = test === 'high-speed' ? highSpeed(work) : speedFor(test, work);
  if (typeof asked === 'string') return [asked];
  if (asked === undefined || speed.quantity.si >= asked * (1 - c.within.figure) - HAIR) return [];
  return [`it was made from ${speed.quantity.text}, the test asks for ${Math.round(asked / KMH)} km/h`];
}

function speedFor(test: Stop['test'], work: Work): number | undefined {
  const is19 = work.build.notes.some((n) => /\b19\b/.test(n.data.answers?.['brakes.assessment-item']?.answer ?? ''));
  return test?.startsWith('circuit-failed') && is19 ? speedOf19 : speeds[test ?? ''];
}

/** The speed of the stop from higher speed, or why there is none. */
function highSpeed(work: Work): number | string {
  const top = work.fact('top_speed');
  return isMissing(top)
    ? 'the top speed of the car, which sets the speed of this stop, is not stated in build.md'
    : Math.min(c.highSpeedShare.figure * top.si, c.highSpeedMost.figure);
}

function byPedal(stop: Pick<Stop, 'id' | 'pedal-force'>, work: Work): string[] {
  const force = stop['pedal-force'];
  if (!force) return ['the pedal force is not stated'];
  const over = ['brakes.pedal-force', 'brakes.pretest-pedal'].some((item) => work.cameOut(item, stop.id) === 'against');
  return over || force.quantity.si > c.pedal.figure + HAIR
    ? [`the pedal was pressed with ${force.quantity.text}, more than the test lets`]
    : [];
}

const ladenTests: readonly Stop['test'][] = ['circuit-failed-laden'];
const lightTests: readonly Stop['test'][] = ['pre-test', 'circuit-failed-light'];

/** The load of a stop: by its test, or as stated. */
const loadOf = ({ test, load }: Stop): 'laden' | 'unladen' | undefined =>
  ladenTests.includes(test) ? 'laden' : lightTests.includes(test) ? 'unladen' : load;

function byLoad(stop: Stop, test: BrakeTest, work: Work): string[] {
  const load = loadOf(stop);
  if (load === undefined) return ['it is not stated whether the car was laden'];
  if (load === 'unladen') return [];
  if (!test['test-mass']) return ['the mass of the laden car is not stated'];
  const mass = work.cameOut('brakes.test-mass', '');
  if (mass === 'against') return ['the laden car was lighter than the test asks'];
  return mass === 'missing' ? ['whether the laden car was heavy enough is not known'] : [];
}

/** The surface must carry what the test asks for. */
export function bySurface(test: BrakeTest, work: Work): string[] {
  const friction = test['surface-friction']?.quantity;
  if (!friction) return ['the friction of the surface is not stated'];
  return friction.si < c.friction.figure - HAIR || work.cameOut('brakes.surface-friction', '') === 'against'
    ? [`the friction of the surface was ${friction.text}, less than ${c.friction.figure}`]
    : [];
}

/** Each value needs an instrument whose calibration held on the day of the test. */
export function byInstruments(values: readonly Measured[], work: Work, note: Note = work.note): string[] {
  return [...new Set(values.flatMap((one) => instrumentReason(one, work, note)))];
}

function instrumentReason(measured: Measured, work: Work, note: Note): string[] {
  const instrument = instrumentOf(measured, work.build);
  if (!instrument) return [`no instrument is named for ${measured.at.path.split('.').at(-1)}`];
  const { id, checked } = instrument;
  if (!checked) return [`build.md states no calibration of ${id}`];
  const on = measured.on ?? note.data.stages?.tested;
  if (!on) return ['the day of the test is not stated'];
  return outOfDate(instrument, on) ? [`the calibration of ${id}, ${checked}, had run out on ${on}`] : [];
}
