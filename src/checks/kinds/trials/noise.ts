import { backgroundCorrection, energyMean } from '../../../calc/noise/levels.js';
import { stationarySpeed } from '../../../calc/noise/stationary.js';
import type { Measured } from '../../../project/fields.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import { difference, magnitude } from '../parts/maybe.js';
import type { NoiseTest, Outlet } from '../test-fields.js';
import { unmetByOutlet, unmetByTest } from './noise-conditions.js';

export function examineNoise(test: NoiseTest, work: Work): void {
  const drift = meter(test, work);
  const wanted = speed(test, work);
  const ofTest = unmetByTest(test, drift, wanted, work);
  const signature = work.take(test.signature, 'noise', 'signature');
  work.publish('signature_noise', signature);
  const outlets = test.outlets ?? [];
  if (outlets.length === 0)
    for (const item of ['tests.noise', 'tests.noise-signature', 'tests.noise-background'])
      work.compare(item, '', work.lacks('noise', 'outlets'));
  for (const outlet of outlets) {
    const level = counted(outlet, test, work);
    background(outlet, level, work);
    const invalid = [...ofTest, ...unmetByOutlet(outlet, level)];
    work.compare('tests.noise', outlet.id, level, { invalid });
    const known = isMissing(level) || !isMissing(signature) ? level : signature;
    work.compare('tests.noise-signature', outlet.id, known, { invalid });
  }
}

/** The number that counts: the highest reading unless the procedure takes the mean. */
function counted(outlet: Outlet, test: NoiseTest, work: Work): Maybe {
  const path = ['noise', 'outlets', outlet.id, 'readings'];
  const { readings } = outlet;
  const each = readings?.quantity.readings;
  if (!readings || !each) return work.take(readings, ...path);
  const alone = each.map((si, i) => work.take(reading(readings, si, i), ...path));
  work.sheet(energyMean, outlet.id, { levels: alone.map((level) => ({ level })) });
  return test.counts === 'mean' ? work.take(readings, ...path) : alone[each.indexOf(Math.max(...each))]!;
}

/** One reading of several, with what was stated for it or the uncertainty of the instrument. */
function reading(of: Measured, si: number, i: number): Measured {
  const { readings: _, spread: __, eachStated, ...rest } = of.quantity;
  const expanded = eachStated?.[i];
  return { ...of, quantity: { ...rest, si, ...(expanded === undefined ? {} : { expanded }) } };
}

function background(outlet: Outlet, level: Maybe, work: Work): void {
  const below = work.take(outlet.background, 'noise', 'outlets', outlet.id, 'background');
  work.compare('tests.noise-background', outlet.id, difference(level, below));
  if (outlet.background) work.sheet(backgroundCorrection, outlet.id, { measured: level, background: below });
}

/** What a meter is off cancels between the two, so that only the readings are uncertain. */
function meter(test: NoiseTest, work: Work): Maybe {
  const read = (name: 'calibrator-before' | 'calibrator-after') =>
    work.take(test[name] && { ...test[name], with: undefined }, 'noise', name);
  const drift = magnitude(difference(read('calibrator-after'), read('calibrator-before')));
  work.compare('tests.noise-meter', '', drift);
  return drift;
}

/** The engine speed that the procedure asks for. */
function speed(test: NoiseTest, work: Work): Maybe {
  const worked = work.sheet(stationarySpeed, '', {
    rated: work.take(test['rated-speed'], 'noise', 'rated-speed'),
    ...(test['attainable-speed']
      ? { attainable: work.take(test['attainable-speed'], 'noise', 'attainable-speed') }
      : {}),
  });
  const wanted = worked.get('speed');
  work.publish('stationary_test_speed', wanted);
  work.compare('tests.noise-speed', '', work.take(test['test-speed'], 'noise', 'test-speed'));
  return wanted;
}
