import type { Basis } from '../../codes/limit.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import type { NoiseTest, Outlet } from '../test-fields.js';

const RPM = (2 * Math.PI) / 60;
const HAIR = 1e-9;

interface Figure {
  /** In SI units. */
  figure: number;
  document: string;
  basis: Basis;
}
const recalled = 'ISO 5130 and UN Regulation 51, stationary test';

/** What a stationary noise test has to keep so that its readings count. Beyond these it is inconclusive, never a pass or a fault. */
const noiseConditions = {
  /** Readings of one outlet, at least. */
  readings: { figure: 3, document: recalled, basis: 'memory' },
  /** Highest less lowest reading, dB. */
  spread: { figure: 2, document: recalled, basis: 'memory' },
  /** Meter on its calibrator, after less before, dB. */
  drift: { figure: 0.5, document: recalled, basis: 'memory' },
  /** Readings less background, dB. */
  background: { figure: 10, document: 'common practice of the trade', basis: 'practice' },
  distance: { figure: 0.5, document: 'Washington Administrative Code 173-58-080', basis: 'quoted' },
  /** What a tape and a stand allow. */
  distanceWithin: { figure: 0.02, document: 'common practice of the trade', basis: 'practice' },
  height: { figure: 0.2, document: recalled, basis: 'memory' },
  angle: { figure: Math.PI / 4, document: recalled, basis: 'memory' },
  angleWithin: { figure: Math.PI / 18, document: recalled, basis: 'memory' },
  /** Engine speed against that of the procedure, as a share. */
  speedWithin: { figure: 0.05, document: recalled, basis: 'memory' },
} as const satisfies Readonly<Record<string, Figure>>;
const c = noiseConditions;

/** Why the readings of all outlets do not count: meter and engine speed, which the note states once. */
export function unmetByTest(test: NoiseTest, drift: Maybe, wanted: Maybe, work: Work): string[] {
  return [...byMeter(drift, work), ...bySpeed(test, wanted, work)];
}

function byMeter(drift: Maybe, work: Work): string[] {
  if (isMissing(drift)) return ['the meter was not read on its calibrator before and after'];
  if (drift.si > c.drift.figure + HAIR || work.cameOut('tests.noise-meter', '') === 'against')
    return [`the meter drifted ${drift.si.toFixed(1)} dB, more than ${c.drift.figure} dB`];
  return [];
}

function bySpeed(test: NoiseTest, wanted: Maybe, work: Work): string[] {
  const speed = work.take(test['test-speed'], 'noise', 'test-speed');
  if (isMissing(speed)) return ['the engine speed of the test is not stated'];
  const rated = work.take(test['rated-speed'], 'noise', 'rated-speed');
  if (isMissing(rated)) return ['the engine speed at rated power is not stated, from which that of the test follows'];
  if (isMissing(wanted)) return [`no engine speed to hold it against: ${wanted.reason ?? 'the sheet gives none'}`];
  // Older rules take three quarters of the rated speed whatever it is.
  const attainable = test['attainable-speed']?.quantity.si ?? Number.POSITIVE_INFINITY;
  const most = Math.max(wanted.si, Math.min(0.75 * rated.si, attainable)) * (1 + c.speedWithin.figure);
  const least = wanted.si * (1 - c.speedWithin.figure);
  const within = speed.si >= least * (1 - HAIR) && speed.si <= most * (1 + HAIR);
  if (within && work.cameOut('tests.noise-speed', '') !== 'against') return [];
  return [`the engine turned ${rpm(speed.si)}, the procedure asks for ${rpm(wanted.si)} within 5 %`];
}

const rpm = (si: number) => `${Math.round(si / RPM)} rpm`;

/** Why the readings of one outlet do not count: background, spread, place of the microphone. */
export function unmetByOutlet(outlet: Outlet, level: Maybe): string[] {
  return [...byBackground(outlet, level), ...bySpread(outlet), ...byPlace(outlet)];
}

/** As read: a common instrument's uncertainty would otherwise leave open what the readings show. */
function byBackground(outlet: Outlet, level: Maybe): string[] {
  const { background } = outlet;
  if (!background) return ['the background is not stated'];
  if (isMissing(level) || level.si - background.quantity.si >= c.background.figure - HAIR) return [];
  return [`the background lies less than ${c.background.figure} dB below the readings`];
}

function bySpread({ readings }: Outlet): string[] {
  const each = readings?.quantity.readings ?? [];
  if (each.length < c.readings.figure) return ['fewer than three readings'];
  const apart = Math.max(...each) - Math.min(...each);
  return apart > c.spread.figure + HAIR
    ? [`the readings lie ${apart.toFixed(1)} dB apart, more than ${c.spread.figure} dB`]
    : [];
}

function byPlace(outlet: Outlet): string[] {
  const unstated = (['distance', 'height', 'angle'] as const).filter((name) => !outlet[name]);
  const off = (name: 'distance' | 'angle', within: number) => {
    const measured = outlet[name]?.quantity;
    return measured && Math.abs(measured.si - c[name].figure) > within + HAIR ? measured.text : undefined;
  };
  const [distance, angle] = [off('distance', c.distanceWithin.figure), off('angle', c.angleWithin.figure)];
  const height = outlet.height?.quantity;
  return [
    ...(unstated.length > 0 ? [`the place of the microphone is not stated: ${unstated.join(', ')}`] : []),
    ...(distance ? [`the microphone stood ${distance} from the outlet instead of 500 mm within 20 mm`] : []),
    ...(angle ? [`the microphone stood at ${angle} to the outlet instead of 45° within 10°`] : []),
    ...(height && height.si < c.height.figure - HAIR
      ? [`the microphone stood ${height.text} above the ground, less than 200 mm`]
      : []),
  ];
}
