import { z } from 'zod';
import { choice, list, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import { examineOpenings, openings } from './assembly/openings.js';
import { compareAgainst } from './parts/against.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';
import { pressureTestAnswers, pressureTestField } from './parts/pressure-test.js';

const core = (state: string) =>
  z
    .strictObject({
      radiator: text(`radiator ${state}: kind, maker, flow`, 'aluminium, two rows, crossflow'),
      width: quantity('mm', `width of the core ${state}`, { how: 'tape over the fins', typical: '560 mm' }),
      height: quantity('mm', `height of the core ${state}`, { how: 'tape over the fins', typical: '380 mm' }),
      thickness: quantity('mm', `thickness of the core ${state}`, {
        measuredAs: 'thickness',
        how: 'caliper',
        typical: '42 mm',
      }),
      capacity: quantity('L', `coolant in the whole system ${state}`, {
        how: 'measured jug, filled until no more air comes out',
        typical: '7.5 L',
      }),
    })
    .optional()
    .meta({ form: 'block', says: `radiator and coolant ${state}` });

const onTester = 'cap tester with an adaptor, pumped until it opens, three times';
const shape = {
  was: core('as it came'),
  now: core('as fitted'),
  'support-cut': yesNo('was the panel or member that carries the radiator cut or moved'),
  hoses: list(
    {
      says: text('which hose, with its kind', 'upper hose, moulded EPDM to SAE J20 (marked)'),
      clamped: yesNo('is it clamped on a bead at both ends'),
      slack: yesNo('is it long enough for the movement of the engine both ways'),
      near: text('what it comes near to', 'alternator belt'),
      gap: quantity('mm', 'least gap to belts, fan, exhaust and edges', {
        places: 'smallest',
        measuredAs: 'rule',
        how: 'stepped gauge at rest, system full',
        typical: '25 mm',
        usual: [3, 240],
      }),
    },
    'coolant hoses, heater hoses among them, each an item',
  ),
  fan: choice({ engine: 'driven by the engine', electric: 'electric, on the radiator', both: 'both' }, 'fan'),
  'fan-gap': quantity(
    'mm',
    'least gap of what moves with the engine (fan, pulley, pump) to core, shroud or electric fan',
    {
      places: 'smallest',
      measuredAs: 'rule',
      how: 'stepped gauge at rest, fan turned by hand',
      typical: '28 mm',
      usual: [3, 250],
    },
  ),
  'fan-guarded': yesNo(
    'can hoses, wires and hands not get into the fan, and has an electric one its own fuse and relay',
  ),
  cap: quantity('kPa', 'pressure at which the cap opens', { how: onTester, typical: '[102, 103, 102] kPa' }),
  'cap-maker': makerFigures('kPa', 'opening pressure of the cap', [17, 600]),
  thermostat: quantity('degC', 'temperature at which the thermostat begins to open', {
    how: 'hung in water with a thermometer beside it, heated slowly; twice',
    typical: '82 degC',
    usual: [50, 120],
  }),
  'thermostat-maker': makerFigures('degC', 'opening temperature', [50, 120]),
  'pressure-test': pressureTestField(
    'cooling system',
    'hand pump and gauge at the filler, engine cold',
    '105 kPa',
    [17, 600],
  ),
  temperature: quantity('degC', 'temperature at which the coolant settles', {
    how: 'thermometer or scan tool after half an hour uphill and ten minutes of idling in traffic; the highest',
    typical: '94 degC',
    usual: [50, 130],
  }),
  'temperature-maker': makerFigures('degC', 'coolant temperature', [50, 130]),
  ambient: quantity('degC', 'air temperature on that drive', {
    how: 'thermometer in the shade',
    typical: '28 degC',
    usual: [-10, 55],
  }),
  coolant: text('coolant filled in, and its share', 'silicate-free, 50 %'),
  openings,
  'openings-closed': yesNo('was an opening of the cooling system closed, or its fitting moved'),
};
type Cooling = Data<typeof shape>;

/** Radiator, fan, hoses and what keeps the engine at its temperature. */
export const cooling = kind({
  id: 'cooling',
  title: 'Cooling',
  covers:
    'Radiator, fan, hoses and thermostat: pressures and temperatures against their makers, the pressure test, and gaps against the movement of the engine.',
  shape,
  holdPoints: [
    {
      id: 'cooling-as-received',
      shows: 'Radiator, its support and hoses as they came',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'cooling-pressure-test',
      shows: 'Gauge on the filler at the start and at the end of the test',
      level: 'record',
      during: 'tested',
      before: 'finished',
      parts: ['start', 'end'],
    },
  ],
  cautions: ['pressure', 'spinning', 'electrical'],
  answers: (d) => ({
    ...pressureTestAnswers(d['pressure-test'], 'cooling.tight'),
    'cooling.support': d['support-cut'] && { answer: d['support-cut'], from: ['support-cut'] },
    'cooling.fan': d['fan-guarded'] && { answer: d['fan-guarded'], from: ['fan-guarded'] },
    'cooling.hoses': hoses(d),
    'assembly.openings':
      d['openings-closed'] === 'no'
        ? { answer: 'not applicable', because: 'no opening was closed and no fitting moved', from: ['openings-closed'] }
        : undefined,
  }),
  evaluate: ({ data }, work) => {
    const take = (name: 'cap' | 'thermostat' | 'temperature') => work.take(data[name], name);
    work.compare('cooling.temperature', '', take('temperature'), {
      limit: makerLimit(data['temperature-maker'], 'degC'),
    });
    work.compare('cooling.thermostat', '', take('thermostat'), { limit: makerLimit(data['thermostat-maker'], 'degC') });
    const cap = take('cap');
    work.compare('cooling.cap', '', cap, { limit: makerLimit(data['cap-maker'], 'kPa') });
    compareAgainst(
      'cooling.test-pressure',
      '',
      work.take(data['pressure-test']?.pressure, 'pressure-test', 'pressure'),
      ['cap_pressure', cap],
      work,
    );
    work.compare('mounts.gap', 'fan', work.take(data['fan-gap'], 'fan-gap'));
    for (const { id, gap } of data.hoses ?? []) work.compare('mounts.gap', id, work.take(gap, 'hoses', id, 'gap'));
    examineOpenings(data.openings, work);
  },
});

function hoses({ hoses: all }: Cooling) {
  const wrong = all?.filter((h) => h.clamped === 'no' || h.slack === 'no') ?? [];
  if (wrong.length > 0)
    return {
      answer: 'no',
      because: `not clamped on a bead, or too short: ${wrong.map((h) => h.id).join(', ')}`,
      from: ['hoses', wrong[0]!.id],
    };
  return all?.length && all.every((h) => h.clamped && h.slack && h.gap && h.says)
    ? { answer: 'yes', because: all.map((h) => h.says).join('; '), from: ['hoses'] }
    : undefined;
}
