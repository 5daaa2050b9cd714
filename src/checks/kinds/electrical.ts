import { z } from 'zod';
import { choice, list, named, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { compareAgainst } from './parts/against.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';

const shape = {
  battery: z
    .strictObject({
      now: text('battery and its place now', '12 V 60 Ah, boot right, in a box').meta({
        recordedFor: 'whoever looks for the battery',
      }),
      clamped: yesNo('is it held by a metal clamp or box that keeps it in place in a crash'),
      inside: yesNo('does it stand in the space of the occupants or the boot'),
      vented: yesNo('where it stands inside: is it sealed in a box and vented to the outside'),
    })
    .optional()
    .meta({ form: 'block', says: 'the battery' }),
  circuits: list(
    {
      says: text('what it feeds, and from where', 'radiator fan, relay beside the battery').meta({
        recordedFor: 'the certifier, who looks the circuit up on the car',
      }),
      starter: yesNo('is it the main cable of the starter, which has no fuse'),
      size: quantity('mm2', 'cross-section of the thinnest wire', {
        how: 'marking on the wire, or strands counted and measured',
        typical: '4 mm2',
        usual: [0.45, 120],
        places: 'smallest',
      }).meta({ recordedFor: 'the certifier, beside the rating of the wire' }),
      length: quantity('m', 'length of the wire, there and back', {
        how: 'tape along the loom',
        typical: '3.2 m',
        usual: [0.33, 30],
      }).meta({ recordedFor: 'the certifier, beside the rating of the wire' }),
      current: quantity('A', 'greatest steady current', {
        how: 'clamp meter after the start of the motor, engine running, everything on that it feeds',
        typical: '18 A',
        usual: [0.02, 400],
      }),
      fuse: named('A', 'rating of its fuse', { measuredAs: 'paper', typical: '25 A', usual: [1, 400] }),
      'fuse-distance': quantity('mm', 'length of wire between the source and the fuse', {
        how: 'tape along the wire',
        typical: '150 mm',
        usual: [16, 1400],
      }),
      wire: makerFigures('A', 'current in the wire, bundled as it is', [0.1, 400]),
      drop: quantity('V', 'voltage lost there and back at full current', {
        how: 'meter from battery plus to the consumer, and from its earth to battery minus, added',
        typical: '0.4 V',
        usual: [0, 3.9],
      }),
      'drop-maker': makerFigures('V', 'voltage drop', [0.05, 3]),
    },
    'circuits that were added or altered, each an item',
  ),
  looms: list(
    {
      says: text(
        'which loom, its sleeve and its grommets',
        'engine loom, split tube, rubber grommet at the firewall',
      ).meta({
        recordedFor: 'whoever looks for the loom on the car',
      }),
      near: text('what it comes near to', 'exhaust manifold').meta({
        recordedFor: 'whoever looks for the loom on the car',
      }),
      gap: quantity('mm', 'least gap to the exhaust and to parts that turn or travel', {
        places: 'smallest',
        how: 'stepped gauge, engine rocked both ways',
        typical: '70 mm',
        usual: [8, 650],
      }),
      maker: makerFigures('mm', 'gap', [8, 650]),
    },
    'looms that were added or moved, each an item',
  ),
  charging: list(
    {
      voltage: quantity('V', 'voltage at the battery, engine running', {
        how: 'meter on the posts, five minutes after the start',
        typical: '14.2 V',
        usual: [9, 32],
      }),
    },
    'charging voltages, such as `idle` and `loaded`',
  ),
  'charging-maker': makerFigures('V', 'charging voltage', [9, 32]),
  'total-current': quantity('A', 'current with every steady consumer on', {
    how: 'clamp meter on the battery cable, engine off, lamps, fans, heater and wipers on',
    typical: '58 A',
    usual: [6, 500],
  }),
  alternator: named('A', 'output of the alternator at the engine speed of slow driving', {
    measuredAs: 'paper',
    how: "maker's curve, or clamp meter with a load tester",
    typical: '75 A',
    usual: [10, 400],
  }),
  drain: quantity('mA', 'current at rest', {
    how: 'clamp meter on the battery cable, doors locked, half an hour later',
    typical: '22 mA',
    usual: [0, 215],
  }),
  'drain-maker': makerFigures('mA', 'current at rest', [0, 215]),
  'airbag-circuits': choice(
    {
      untouched: 'as the maker left them',
      none: 'the car has no airbags or belt tensioners',
      altered: 'cut, extended, moved or switched off',
    },
    'circuits of airbags and belt tensioners',
  ),
  'fault-lamps': yesNo('does every fault lamp light up at start and go out, with none taken out or bridged'),
  'pump-stops': yesNo('does an electric fuel pump stop by itself when the engine stops'),
  'neutral-start': choice(
    {
      yes: 'the engine starts in park and neutral only',
      no: 'it also starts in a drive position',
      manual: 'the gearbox is a manual one',
    },
    'start lock of an automatic gearbox',
  ),
};
type Electrical = Data<typeof shape>;
type Circuit = NonNullable<Electrical['circuits']>[number];

/** Items that not every note on wiring has: they are asked for where the note has something on them. */
const raisedBy: Readonly<Record<string, (d: Electrical) => boolean>> = {
  'electrical.charging': (d) => d.charging !== undefined,
  'electrical.alternator': (d) => d.alternator !== undefined || d['total-current'] !== undefined,
  'electrical.drain': (d) => d.drain !== undefined,
  'electrical.voltage-drop': (d) => d.circuits?.some((c) => c.drop) ?? false,
  'electrical.fuse-distance': (d) => d.circuits?.some((c) => c['fuse-distance']) ?? false,
};

/** Battery, charging and wiring. */
export const electrical = kind({
  id: 'electrical',
  title: 'Electrical system',
  covers:
    'Battery, charging, added circuits with wire sizes and fuses, routes of looms, and the circuits of airbags, which stay as they are.',
  shape,
  holdPoints: [
    {
      id: 'wiring-as-received',
      shows: 'Battery, fuse box and, where there are any, connectors of airbags as they came',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['battery', 'fuse-box'],
    },
    {
      id: 'looms-open',
      shows: 'Looms with sleeves and grommets, before trim covers them',
      level: 'record',
      during: 'assembled',
      before: 'trimmed',
      parts: ['sleeves', 'grommets'],
      serves: 'electrical.route-shown',
    },
    {
      id: 'battery-fitted',
      shows: 'Battery in its clamp with vent and main cable',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: ['clamp', 'vent', 'cable'],
      serves: 'electrical.battery-shown',
    },
  ],
  cautions: ['electrical', 'fuel', 'restraints'],
  answers: (d) => ({
    'electrical.battery': battery(d),
    'electrical.airbag-circuits':
      d['airbag-circuits'] === 'untouched'
        ? { answer: 'yes', from: ['airbag-circuits'] }
        : d['airbag-circuits'] === 'none'
          ? {
              answer: 'not applicable',
              because: 'the car has no airbags or belt tensioners',
              from: ['airbag-circuits'],
            }
          : undefined,
    'retained.fault-lamps': d['fault-lamps'] && { answer: d['fault-lamps'], from: ['fault-lamps'] },
    'fuel.pump-stops': d['pump-stops'] && { answer: d['pump-stops'], from: ['pump-stops'] },
    'gearbox.neutral-start': d['neutral-start'] && { answer: d['neutral-start'], from: ['neutral-start'] },
  }),
  states: (d) => ({ gearbox: d['neutral-start'] && (d['neutral-start'] === 'manual' ? 'manual' : 'automatic') }),
  raises: (item, d) => raisedBy[item]?.(d) ?? true,
  evaluate: ({ data }, work) => {
    if (data['airbag-circuits'] === 'altered') {
      work.state(
        'electrical.airbag-circuits',
        '',
        'against',
        'circuits of airbags or belt tensioners were cut, extended, moved or switched off: this stops the note until the certifier has decided',
        { stop: true, answer: 'no', todo: 'stop work on it and put it to the certifier', path: ['airbag-circuits'] },
      );
    }
    if (!data.circuits?.length)
      for (const item of ['electrical.wire-current', 'electrical.fuse-current', 'electrical.fuse-wire'])
        work.compare(item, '', work.lacks('circuits'));
    for (const circuit of data.circuits ?? []) examineCircuit(circuit, work);
    if (!data.looms?.length) work.compare('electrical.loom-gap', '', work.lacks('looms'));
    for (const { id, gap, maker } of data.looms ?? [])
      work.compare('electrical.loom-gap', id, work.take(gap, 'looms', id, 'gap'), { limit: makerLimit(maker, 'mm') });
    examineSupply(data, work);
  },
});

/** The fuse carries the current, and blows before the wire burns. */
function examineCircuit(circuit: Circuit, work: Work): void {
  const { id } = circuit;
  const take = (name: 'current' | 'fuse' | 'fuse-distance' | 'drop') => work.take(circuit[name], 'circuits', id, name);
  if (circuit.drop)
    work.compare('electrical.voltage-drop', id, take('drop'), { limit: makerLimit(circuit['drop-maker'], 'V') });
  if (circuit.starter === 'yes') {
    for (const item of ['electrical.wire-current', 'electrical.fuse-current', 'electrical.fuse-wire'])
      work.state(item, id, 'out', 'the main cable of the starter has no fuse, and carries its current for seconds', {
        path: ['circuits', id, 'starter'],
      });
    return;
  }
  work.compare('electrical.wire-current', id, take('current'), { limit: makerLimit(circuit.wire, 'A') });
  compareAgainst('electrical.fuse-current', id, take('current'), ['fuse_rating', take('fuse')], work);
  compareAgainst(
    'electrical.fuse-wire',
    id,
    take('fuse'),
    ['wire_rating', work.take(circuit.wire?.greatest, 'circuits', id, 'wire', 'greatest')],
    work,
  );
  const wrong = (['electrical.fuse-wire', 'electrical.fuse-current'] as const).some(
    (item) => work.cameOut(item, id) === 'against',
  );
  if (wrong)
    work.derive('electrical.fuses', {
      answer: 'no',
      because: `the fuse of ${id} does not suit its wire and current`,
      from: ['circuits', id, 'fuse'],
    });
  if (circuit['fuse-distance']) work.compare('electrical.fuse-distance', id, take('fuse-distance'));
}

function examineSupply(data: Electrical, work: Work): void {
  for (const { id, voltage } of data.charging ?? [])
    work.compare('electrical.charging', id, work.take(voltage, 'charging', id, 'voltage'), {
      limit: makerLimit(data['charging-maker'], 'V'),
    });
  if (data.alternator ?? data['total-current'])
    compareAgainst(
      'electrical.alternator',
      '',
      work.take(data.alternator, 'alternator'),
      ['total_current', work.take(data['total-current'], 'total-current')],
      work,
    );
  if (data.drain)
    work.compare('electrical.drain', '', work.take(data.drain, 'drain'), {
      limit: makerLimit(data['drain-maker'], 'mA'),
    });
}

function battery({ battery: b }: Electrical) {
  const wrong = [
    b?.clamped === 'no' && 'not held by a metal clamp or box',
    b?.inside === 'yes' && b.vented === 'no' && 'inside, and not vented to the outside',
  ].filter(Boolean);
  if (wrong.length > 0) return { answer: 'no', because: wrong.join('; '), from: ['battery'] };
  return b?.clamped && b.inside && (b.inside === 'no' || b.vented)
    ? { answer: 'yes', because: b.now, from: ['battery'] }
    : undefined;
}
