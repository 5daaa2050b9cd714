import type { z } from 'zod';
import { choice, list, quantity, text } from '../../../project/fields.js';
import type { Work } from '../../engine/work.js';

const how =
  'level floor, tyres at running pressure, car rolled; rule or block gauge from the floor to the lowest fixed part';

const place = {
  place: text('which part it is', 'flange of the front pipe').meta({
    recordedFor: 'whoever looks for the place under the car',
  }),
  region: choice(
    {
      'front-axle': 'within one metre ahead of or behind the front axle',
      'rear-axle': 'within one metre ahead of or behind the rear axle',
      middle: 'midway between the axles',
      elsewhere: 'elsewhere',
    },
    'where along the car it lies',
  ),
  load: choice({ unladen: 'unladen', laden: 'laden' }, 'state of load'),
};
const was = quantity('mm', 'ground clearance there as it came', {
  places: 'smallest',
  measuredAs: 'ride-height',
  how,
  typical: '162 mm',
});
const now = quantity('mm', 'ground clearance there now', {
  places: 'smallest',
  measuredAs: 'ride-height',
  how: `${how}; the same load as before, three times`,
  typical: '148 mm',
});
const says = 'lowest places under the car, each with its state of load';

/** Ground clearance by place and state of load: states differ in the load that they mean. */
export const clearanceNow = list({ ...place, now }, says);
/** The same, with what the place had before. */
export const clearanceChanged = list({ ...place, was, now }, says);
type Places = NonNullable<z.output<typeof clearanceNow>>;
type Place = Places[number];

const questions: readonly [item: string, concerns: (place: Place) => boolean][] = [
  ['ground.clearance-axle', (p) => p.region === 'front-axle' || p.region === 'rear-axle'],
  ['ground.clearance-middle', (p) => p.region === 'middle'],
  ['suspension.ground-clearance-sa', (p) => p.load === 'unladen'],
  ['suspension.ground-clearance-qld', (p) => p.load === 'laden'],
];

export function examineGroundClearance(key: string, places: Places | undefined, work: Work): void {
  for (const [item, concerns] of questions) {
    const found = (places ?? []).filter(concerns);
    if (found.length === 0) work.compare(item, '', work.lacks(key));
    for (const place of found) work.compare(item, place.id, work.take(place.now, key, place.id, 'now'));
  }
}
