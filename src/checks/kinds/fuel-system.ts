import { z } from 'zod';
import { choice, list, named, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { compareAgainst } from './parts/against.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';
import { pressureTestAnswers, pressureTestField } from './parts/pressure-test.js';

const shape = {
  fuel: choice(
    { petrol: 'petrol', diesel: 'diesel', lpg: 'liquefied gas' },
    'fuel; of a car with two fuels, each in a note of its own',
  ),
  'street-rod': yesNo('is the car registered as a street rod'),
  tank: z
    .strictObject({
      was: text('the tank as it came: place and material', 'steel, under the boot floor'),
      now: text('the tank now: maker, place, material, fixing', "the maker's tank with a new pick-up, two straps"),
      'volume-was': quantity('L', 'what the original tank held', {
        how: "maker's data, or filled from a measured can",
        typical: '52 L',
      }),
      volume: quantity('L', 'what the tank holds now', {
        how: 'filled from a measured can, with water before it is fitted',
        typical: '52 L',
      }),
      made: choice(
        { original: "the maker's tank, unaltered", altered: 'altered', new: 'made anew' },
        'whose tank it is',
      ),
      plate: quantity('mm', 'thickness of its plate', {
        places: 'smallest',
        how: 'caliper at an edge before it is closed, or ultrasonic gauge, three places',
        typical: '1.6 mm',
        usual: [0.5, 9],
      }),
      'plate-maker': makerFigures('mm', 'plate thickness', [0.5, 9]),
      apart: yesNo('does it lie outside the space of the occupants, or in a sealed box vented to the outside'),
      vented: yesNo(
        'is it vented to the canister or the open air by a valve that shuts when the car lies on its side or roof',
      ),
      clearances: list(
        {
          to: text('what stands there', 'exhaust'),
          gap: quantity('mm', 'least distance of the tank', {
            places: 'smallest',
            how: 'tape or feeler at the nearest place, car at ride height, tank full',
            typical: '60 mm',
            usual: [6.5, 590],
          }),
          shielded: yesNo('is there a heat shield between them'),
        },
        'road, exhaust, axle at full bump, rear of the body: the nearest places of the tank, each an item',
      ),
    })
    .optional()
    .meta({ form: 'block', says: 'the tank' }),
  lines: list(
    {
      says: text('which line, with material and marking', 'supply, steel pipe 8 mm, hose SAE J30 R9 (marked)'),
      'support-spacing': quantity('mm', 'greatest distance between two supports', {
        places: 'largest',
        how: 'tape along the line, every span',
        typical: '280 mm',
      }),
      'exhaust-distance': quantity('mm', 'least distance to the exhaust or a turbocharger', {
        places: 'smallest',
        how: 'tape or feeler at the nearest place, engine rocked both ways',
        typical: '120 mm',
        usual: [13, 1100],
      }),
      shielded: yesNo('is there a heat shield between line and exhaust there'),
      'moving-distance': quantity('mm', 'least distance to a part that turns or travels', {
        places: 'smallest',
        how: 'tape or feeler through full steering and suspension travel',
        typical: '40 mm',
        usual: [4.5, 390],
      }),
      'pressure-rating': named('kPa', 'pressure for which pipe, hose and joints are rated, the lowest of them', {
        measuredAs: 'paper',
        how: 'marking on the hose, data sheet of the fittings',
        typical: '900 kPa',
        usual: [91, 30000],
      }),
    },
    'supply, return and vapour lines, each an item',
  ),
  pressure: quantity('kPa', 'greatest pressure of the system in service', {
    how: 'gauge at the rail or carburettor, engine running, then with the pump against a closed return',
    typical: '300 kPa',
    usual: [10, 30000],
  }),
  'pressure-maker': makerFigures('kPa', 'fuel pressure', [10, 30000]),
  pump: z
    .strictObject({
      says: text('which pump, and where it sits', 'electric, in the tank'),
      'stops-with-engine': yesNo('does it stop by itself when the engine stops, ignition on, tried'),
      'stops-with-ignition': yesNo('does it stop when the ignition is switched off'),
    })
    .optional()
    .meta({ form: 'block', says: 'the pump' }),
  'added-inside': yesNo('was a pump, line or filter added inside the space of the occupants or the boot'),
  clamped: yesNo('has every hose that is pushed on a clamp or clip'),
  canister: choice(
    {
      kept: 'there and connected',
      removed: 'taken out or not connected',
      'never-asked': 'no emission rule for vehicle or engine asks for one',
    },
    'evaporative canister',
  ),
  'canister-why': text(
    'the emission rules of vehicle and engine, with dates',
    'vehicle of 1974, engine of 1975, before the rule of July 1976',
  ),
  licensed: yesNo('gas only: done to AS/NZS 1425 by a licensed person, with the plate fitted'),
  'pressure-test': pressureTestField(
    'fuel system',
    'hand pump and gauge on the closed system, engine off, away from flames',
    '350 kPa',
    [10, 30_000],
  ),
};
type Fuel = Data<typeof shape>;
type Line = NonNullable<Fuel['lines']>[number];

/** Tank, lines and pump. */
export const fuelSystem = kind({
  id: 'fuel-system',
  title: 'Fuel system',
  covers:
    'Tank, lines, pump and vapour equipment: place, supports and distances, pressures and ratings, and the pressure test.',
  shape,
  holdPoints: [
    {
      id: 'tank-as-received',
      shows: 'Tank, lines and, where there is one, canister as they came',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['tank', 'lines'],
    },
    {
      id: 'lines-open',
      shows: 'Lines along their whole route with their supports, before anything covers them',
      level: 'record',
      during: 'assembled',
      before: 'trimmed',
      parts: (d) => (d.lines ?? []).map((l) => l.id),
      serves: 'fuel.route-shown',
    },
    {
      id: 'fuel-pressure-test',
      shows: 'Gauge on the closed system at the start and at the end of the test',
      level: 'witness',
      during: 'tested',
      before: 'finished',
      parts: ['start', 'end'],
    },
  ],
  cautions: ['fuel', 'stands', 'electrical'],
  answers: (d) => ({
    ...pressureTestAnswers(d['pressure-test'], 'fuel.tight'),
    'fuel.tank-place': d.tank?.apart && { answer: d.tank.apart, from: ['tank', 'apart'] },
    'fuel.vent': d.tank?.vented && { answer: d.tank.vented, from: ['tank', 'vented'] },
    'fuel.tank-volume': d.tank?.volume
      ? {
          answer: `${d.tank.volume.quantity.text}${d.tank['volume-was'] ? `, ${d.tank['volume-was'].quantity.text} as it came` : ''}`,
        }
      : undefined,
    'fuel.pump-stops': d.pump?.['stops-with-engine'] && {
      answer: d.pump['stops-with-engine'],
      from: ['pump', 'stops-with-engine'],
    },
    'fuel.pump-ignition': d.pump?.['stops-with-ignition'] && {
      answer: d.pump['stops-with-ignition'],
      from: ['pump', 'stops-with-ignition'],
    },
    'fuel.inside': d['added-inside'] && { answer: d['added-inside'], from: ['added-inside'] },
    'fuel.push-on': d.clamped && { answer: d.clamped, from: ['clamped'] },
    'fuel.gas-standard': d.licensed && { answer: d.licensed, from: ['licensed'] },
    'engine.canister': canister(d),
    // The rule asks for one by the date of build, whatever the builder makes of it.
    'engine.canister-sa': d.canister === 'never-asked' ? undefined : canister(d),
  }),
  states: (d) => ({ fuel: d.fuel, 'street-rod': d['street-rod'] ?? 'no' }),
  raises: (item, d) =>
    !(item === 'fuel.tank-plate' && (d.tank?.made === undefined || d.tank.made === 'original')) &&
    !(d.fuel === 'lpg' && petrolOnly.has(item)),
  evaluate: ({ data }, work) => {
    examineTank(data.tank, work);
    const gas = data.fuel === 'lpg';
    if (!data.lines?.length)
      for (const item of gas
        ? ['fuel.gas-clips', 'fuel.gas-exhaust', 'fuel.line-pressure']
        : ['fuel.line-support', 'fuel.exhaust-distance', 'fuel.line-pressure'])
        work.compare(item, '', work.lacks('lines'));
    const pressure = work.take(data.pressure, 'pressure');
    for (const line of data.lines ?? []) {
      const take = (name: 'support-spacing' | 'exhaust-distance' | 'pressure-rating') =>
        work.take(line[name], 'lines', line.id, name);
      work.compare(gas ? 'fuel.gas-clips' : 'fuel.line-support', line.id, take('support-spacing'));
      examineDistance(line, gas, work);
      compareAgainst('fuel.line-pressure', line.id, take('pressure-rating'), ['fuel_pressure', pressure], work);
    }
    work.compare('fuel.pressure', '', pressure, { limit: makerLimit(data['pressure-maker'], 'kPa') });
    compareAgainst(
      'fuel.test-pressure',
      '',
      work.take(data['pressure-test']?.pressure, 'pressure-test', 'pressure'),
      ['fuel_pressure', pressure],
      work,
    );
  },
});

const petrolOnly: ReadonlySet<string> = new Set(['fuel.line-support', 'fuel.exhaust-distance']);

/** Gas lines may lie nearer where a shield stands between; without a word on it, it is asked for. */
function examineDistance(line: Line, gas: boolean, work: Work): void {
  const distance = work.take(line['exhaust-distance'], 'lines', line.id, 'exhaust-distance');
  if (!gas) return work.compare('fuel.exhaust-distance', line.id, distance);
  work.compare('fuel.gas-exhaust', line.id, line.shielded ? distance : work.lacks('lines', line.id, 'shielded'), {
    states: { 'heat-shield': line.shielded ?? 'no' },
  });
}

function examineTank(tank: Fuel['tank'], work: Work): void {
  const places = tank?.clearances ?? [];
  if (places.length === 0) work.compare('fuel.tank-clearance', '', work.lacks('tank', 'clearances'));
  for (const { id, gap } of places)
    work.compare('fuel.tank-clearance', id, work.take(gap, 'tank', 'clearances', id, 'gap'));
  if (tank?.made === 'altered' || tank?.made === 'new')
    work.compare('fuel.tank-plate', '', work.take(tank.plate, 'tank', 'plate'), {
      limit: makerLimit(tank['plate-maker'], 'mm'),
    });
}

function canister({ canister: state, 'canister-why': why }: Fuel) {
  if (state === undefined) return undefined;
  if (state === 'never-asked') return { answer: 'not applicable', because: why, from: ['canister'] };
  return { answer: state === 'kept' ? 'yes' : 'no', because: why, from: ['canister'] };
}
