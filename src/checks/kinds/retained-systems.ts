import { z } from 'zod';
import { choice, count, list, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { anchorageList, anchoragesAnswer, examineAnchorages } from './parts/anchorages.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';
import { answersOf, becomes, examineLost, presence, systems } from './retained-list.js';

const reading = (unit: string, says: string, how: string, typical: string, usual: readonly [number, number]) =>
  z
    .strictObject({
      was: quantity(unit, `${says}, as received`, { range: 'signed', how, typical, usual }),
      now: quantity(unit, `${says}, now`, { range: 'signed', how, typical, usual }),
      maker: makerFigures(unit, says, usual, 'signed'),
    })
    .optional()
    .meta({ form: 'block', says });

const shape = {
  systems: list(
    {
      system: choice(systems, 'which system'),
      was: text(
        'how it was found: number on the part, connected, working',
        'number 7A-112 on the housing, both hoses connected',
      ),
      now: choice(becomes, 'what became of it'),
      because: text('why, where it is not as it was'),
    },
    'what had to stay: emission equipment, brakes by electronics, airbags, tensioners, child restraints, steering column; each an item of its own',
  ),
  anchorages: anchorageList,
  'fault-memory': yesNo('has the car control units with a fault memory'),
  'fault-codes-was': count('stored faults as received', {
    how: 'diagnostic tool or blink code, before the battery was disconnected',
    typical: '1',
  }),
  'fault-codes-now': count('stored faults after the work', {
    how: 'the same way, after clearing and a drive of 20 km with the engine warm',
    typical: '0',
  }),
  lamps: list(
    {
      lamp: text('which lamp', 'airbag'),
      lights: yesNo('does it light up when the ignition is switched on'),
      'goes-out': yesNo('does it go out by itself'),
      after: quantity('s', 'time after which it goes out', {
        how: 'stop watch, from ignition on',
        typical: '6 s',
        usual: [0.7, 55],
      }),
    },
    'fault lamps at start, each an item of its own',
  ),
  'sensor-gaps': list(
    {
      was: quantity('mm', 'air gap of the wheel speed sensor, as received', {
        places: 'smallest',
        how: 'feeler gauge of brass, at the narrowest of eight places around the ring',
        typical: '0.8 mm',
        usual: [0.1, 7],
      }),
      now: quantity('mm', 'air gap of the wheel speed sensor, now', {
        places: 'smallest',
        how: 'feeler gauge of brass, at the narrowest of eight places around the ring',
        typical: '0.8 mm',
        usual: [0.1, 7],
      }),
      maker: makerFigures('mm', 'air gap', [0.1, 7]),
    },
    'wheel speed sensors, one item a wheel',
  ),
  'steering-sensor': reading(
    'deg',
    'reading of the steering angle sensor with the wheels straight ahead',
    'diagnostic tool, wheels set straight on the alignment rack',
    '1.5 deg',
    [0, 14],
  ),
  'crankcase-pressure': reading(
    'kPa',
    'pressure in the crankcase at warm idle, negative below the outside air',
    'water gauge on the dipstick tube, engine warm and idling',
    '-0.25 kPa',
    [0, 2.4],
  ),
};
type RetainedData = Data<typeof shape>;

const fitted = (d: RetainedData) => (d.systems ?? []).filter((s) => s.now !== 'never-fitted').map((s) => s.id);

/** What had to stay as the maker meant it. */
export const retainedSystems = kind({
  id: 'retained-systems',
  title: 'Retained systems',
  covers:
    'What must stay as it was: emission equipment, stability control and antilock brakes, airbags and tensioners, belt anchorages, child restraint points, steering column, fault lamps.',
  shape,
  holdPoints: [
    {
      id: 'systems-as-received',
      shows: 'Each system that is listed, the belts and the lit instrument panel, as they came',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: (d) => [...fitted(d), 'belts', 'panel'],
      serves: 'retained.as-received',
    },
    {
      id: 'circuits-untouched',
      shows: 'Connectors and looms of airbags and control units after welding and wiring, before trim',
      level: 'record',
      during: 'assembled',
      before: 'trimmed',
    },
    {
      id: 'panel-lit',
      shows: 'Instrument panel with the ignition on, and again with the engine running',
      level: 'record',
      during: 'tested',
      before: 'finished',
      parts: ['ignition-on', 'engine-running'],
    },
  ],
  cautions: ['restraints', 'electrical', 'fuel'],
  answers: (d) => ({
    ...answersOf(d.systems ?? []),
    'seating.anchorages-kept': anchoragesAnswer(d.anchorages),
    'retained.fault-lamps': lampsAnswer(d),
    'retained.scan':
      d['fault-memory'] === 'no'
        ? { answer: 'not applicable', because: 'the car has no fault memory' }
        : d['fault-codes-now']
          ? { answer: `${d['fault-codes-now'].quantity.text} stored`, shown: 'note' }
          : undefined,
  }),
  proofParts: (d) => (fitted(d).length > 0 ? { 'retained.in-place': fitted(d) } : {}),
  states: (d) => ({
    'fault-memory': d['fault-memory'],
    antilock: presence('antilock', d.systems ?? []),
    'stability-control': presence('stability-control', d.systems ?? []),
    'crankcase-ventilation': presence('crankcase-ventilation', d.systems ?? []),
  }),
  evaluate: ({ data }, work) => {
    examineLost(data.systems ?? [], work);
    examineAnchorages(data.anchorages, work);
    work.compare('retained.fault-codes', '', work.take(data['fault-codes-now'], 'fault-codes-now'));
    gaps(data, work);
    for (const [name, item, unit] of [
      ['steering-sensor', 'retained.steering-angle', 'deg'],
      ['crankcase-pressure', 'retained.crankcase-pressure', 'kPa'],
    ] as const) {
      work.compare(item, '', work.take(data[name]?.now, name, 'now'), { limit: makerLimit(data[name]?.maker, unit) });
    }
  },
});

function lampsAnswer({ lamps }: RetainedData) {
  const wrong = lamps?.filter((l) => l.lights === 'no' || l['goes-out'] === 'no').map((l) => l.lamp ?? l.id) ?? [];
  if (wrong.length > 0) return { answer: 'no', because: wrong.join(', ') };
  return lamps?.length && lamps.every((l) => l.lights && l['goes-out'])
    ? { answer: 'yes', because: lamps.map((l) => l.lamp ?? l.id).join(', ') }
    : undefined;
}

function gaps(data: RetainedData, work: Work): void {
  const all = data['sensor-gaps'] ?? [];
  if (all.length === 0) work.compare('retained.sensor-gap', '', work.lacks('sensor-gaps'));
  for (const gap of all)
    work.compare('retained.sensor-gap', gap.id, work.take(gap.now, 'sensor-gaps', gap.id, 'now'), {
      limit: makerLimit(gap.maker, 'mm'),
    });
}
