import { z } from 'zod';
import { backgroundCorrection } from '../../calc/noise/levels.js';
import { choice, list, named, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Work } from '../engine/work.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';
import { difference, negated } from './parts/maybe.js';

const tape = 'tape from level ground, car unladen at ride height';
const shape = {
  was: text('the exhaust as it came', 'single pipe of 45 mm, one muffler, outlet left rear'),
  now: text(
    'the exhaust now: pipes, mufflers, hangers',
    'single pipe of 57 mm, two mufflers, outlet left rear, five rubber hangers',
  ),
  outlet: z
    .strictObject({
      form: choice({ horizontal: 'level or sloping', vertical: 'upright, ending above the cab' }, 'form of the outlet'),
      height: quantity('mm', 'height of the outlet above the ground', {
        measuredAs: 'ride-height',
        how: `${tape}; to the upper edge`,
        typical: '310 mm',
      }),
      points: choice(
        { rear: 'to the rear', right: 'to the right', left: 'to the left', front: 'to the front' },
        'where it points',
      ),
      slope: quantity('deg', 'slope of the outlet against level, without a sign', {
        measuredAs: 'slope',
        range: 'signed',
        how: 'inclinometer in or on the last straight of the pipe, car level',
        typical: '8 deg',
        usual: [0, 75],
      }),
      slopes: choice({ down: 'down, away from the car', up: 'up, away from the car' }, 'which way it slopes'),
      'past-joint': quantity(
        'mm',
        'how far it ends past the outermost joint of the floor that is not welded or sealed',
        {
          measuredAs: 'length',
          range: 'signed',
          how: 'tape along the pipe, from below',
          typical: '160 mm',
          usual: [0, 1500],
        },
      ),
      'past-side': quantity(
        'mm',
        'how far it stands out past the widest point of the body; negative where it ends short of it',
        {
          measuredAs: 'length',
          range: 'signed',
          how: 'plumb line at the widest point',
          typical: '-120 mm',
          usual: [0, 1100],
        },
      ),
      'above-cab': quantity('mm', 'how far an upright outlet ends above the cab', {
        measuredAs: 'length',
        range: 'signed',
        how: 'straightedge over the roof',
        typical: '170 mm',
        usual: [0, 1600],
      }),
      near: text('the nearest door, window or vent, and how far away', 'tailgate, 420 mm'),
    })
    .optional()
    .meta({ form: 'block', says: 'the outlet' }),
  clearances: list(
    {
      to: choice(
        {
          'fuel-line': 'fuel line or hose',
          'gas-line': 'line for liquefied gas',
          'brake-line': 'brake line or hose',
          wiring: 'wiring',
          tank: 'fuel tank',
          floor: 'floor or trim',
          tyre: 'tyre',
          axle: 'axle, shaft or link',
          mount: 'rubber of a mount',
          other: 'something else',
        },
        'what it passes',
      ),
      place: text('where', 'over the rear axle, left'),
      gap: quantity('mm', 'least gap', {
        places: 'smallest',
        measuredAs: 'rule',
        how: 'stepped gauge, the axle where the gap is smallest, exhaust pushed by hand',
        typical: '35 mm',
        usual: [3.6, 340],
      }),
      shielded: yesNo('is there a heat shield between them'),
      maker: makerFigures('mm', 'gap', [3.6, 340]),
      temperature: quantity('degC', 'temperature that the part reaches', {
        how: 'temperature strip or thermocouple on the part, after half an hour uphill',
        typical: '62 degC',
        usual: [10, 600],
      }),
      'temperature-maker': makerFigures('degC', 'temperature of the part', [10, 600]),
    },
    'what the exhaust passes, each place an item',
  ),
  'back-pressure': quantity('kPa', 'pressure ahead of converter or muffler at full power', {
    how: 'gauge in the port of the sensor, full throttle at the speed of greatest power, on a dynamometer',
    typical: '18 kPa',
    usual: [2, 170],
  }),
  'back-pressure-maker': makerFigures('kPa', 'back pressure', [2, 170]),
  catalyst: choice(
    {
      kept: "the maker's converter, still there",
      replaced: 'replaced by one that is made for this engine',
      removed: 'taken out or emptied',
      'never-sold': 'neither vehicle nor engine was sold with one',
    },
    'catalytic converter',
  ),
  'catalyst-why': text(
    'what the replacement is, or which rules vehicle and engine were built to',
    'both built in 1984, before converters',
  ),
  sensors: yesNo(
    'is every exhaust sensor of the engine in place, as far from the converter as its maker put it, and working',
  ),
  'open-blow-off': yesNo('is there a blow-off valve to the open air, or an external wastegate'),
  'leak-test': text('how it was found tight', 'outlet held shut with a rag, joints sprayed, cold and hot'),
  noise: z
    .strictObject({
      approval: choice(
        { none: 'built before ADR 83/00 or not approved to it', 'ADR 83/00': 'approved to ADR 83/00' },
        'noise rule that the model was approved to',
      ),
      signature: named('dB(A)', 'stationary noise with which the model was approved', {
        measuredAs: 'paper',
        how: 'plate under the bonnet or published list',
        typical: '84 dB(A)',
        usual: [50, 130],
      }),
      was: quantity('dB(A)', 'stationary noise as received, the same way', {
        how: 'highest of three readings',
        typical: '86 dB(A)',
      }),
      now: quantity('dB(A)', 'stationary noise now, where no test note records it', {
        how: 'highest of three readings, meter half a metre from the outlet at 45 degrees, engine held at its test speed',
        typical: '88 dB(A)',
      }),
      background: quantity('dB(A)', 'noise of the place with the engine off', {
        how: 'same place and setting, before and after',
        typical: '56 dB(A)',
      }),
    })
    .optional()
    .meta({ form: 'block', says: 'stationary noise' }),
};
type Exhaust = Data<typeof shape>;

/** Exhaust from the head to its outlet. */
export const exhaust = kind({
  id: 'exhaust',
  title: 'Exhaust',
  covers:
    'Exhaust from the head to its outlet: place and direction of the outlet, converter and sensors, what it passes and how warm that gets, tightness, noise.',
  shape,
  holdPoints: [
    {
      id: 'exhaust-as-received',
      shows: 'Exhaust and outlet as they came, from below',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['pipe', 'outlet'],
    },
    {
      id: 'exhaust-tacked',
      shows: 'Exhaust tacked in place, with the axle at full bump and full droop',
      level: 'record',
      during: 'tacked',
      before: 'welded',
      parts: ['bump', 'droop'],
    },
    {
      id: 'exhaust-fitted',
      shows: 'Exhaust with hangers and shields along its whole route, its outlet, and a gauge in the least gaps',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: ['route', 'outlet', 'gaps'],
      serves: 'exhaust.route-shown',
    },
  ],
  cautions: ['stands', 'welding', 'fuel', 'noise'],
  answers: (d) => ({
    'exhaust.outlet': outletWords(d.outlet),
    'exhaust.outlet-direction': d.outlet?.points && {
      answer: d.outlet.points === 'rear' || d.outlet.points === 'right' ? 'yes' : 'no',
      because: `it points to the ${d.outlet.points}`,
    },
    'exhaust.catalyst': catalyst(d),
    'exhaust.sensors': d.sensors && { answer: d.sensors, from: ['sensors'] },
    'engine.blow-off': d['open-blow-off'] && { answer: d['open-blow-off'], from: ['open-blow-off'] },
    'exhaust.leak-test': d['leak-test'] ? { answer: d['leak-test'], shown: 'note' } : undefined,
    'noise.rule': d.noise?.approval && {
      answer:
        d.noise.approval === 'none'
          ? 'not approved to ADR 83/00'
          : `approved to ADR 83/00${d.noise.signature ? ` with ${d.noise.signature.quantity.text}` : ''}`,
    },
  }),
  states: (d) => ({ outlet: d.outlet?.form, 'noise-approval': d.noise?.approval }),
  raises: (item, d) => {
    if (item === 'exhaust.heat') return d.clearances?.some((c) => c.temperature) ?? false;
    if (item === 'fuel.gas-exhaust') return d.clearances?.some((c) => c.to === 'gas-line') ?? false;
    return item !== 'exhaust.back-pressure' || d['back-pressure'] !== undefined;
  },
  evaluate: ({ data }, work) => {
    examineOutlet(data.outlet, work);
    examineClearances(data.clearances ?? [], work);
    if (data['back-pressure'])
      work.compare('exhaust.back-pressure', '', work.take(data['back-pressure'], 'back-pressure'), {
        limit: makerLimit(data['back-pressure-maker'], 'kPa'),
      });
    examineNoise(data.noise, work);
  },
});

function outletWords(outlet: Exhaust['outlet']) {
  if (!outlet?.height || !outlet.points || !outlet.slope || !outlet.slopes) return undefined;
  const { height, points, slope, slopes, near } = outlet;
  const words = [`${height.quantity.text} above the ground`, `to the ${points}`, `${slope.quantity.text} ${slopes}`];
  return { answer: [...words, ...(near ? [`nearest opening: ${near}`] : [])].join(', ') };
}

/** Down is positive. */
function examineOutlet(outlet: Exhaust['outlet'], work: Work): void {
  const take = (name: 'height' | 'slope' | 'past-joint' | 'past-side' | 'above-cab') =>
    work.take(outlet?.[name], 'outlet', name);
  const slope = take('slope');
  work.compare('exhaust.outlet-height', '', take('height'));
  work.compare(
    'exhaust.outlet-angle',
    '',
    isMissing(slope) || outlet?.slopes === 'down'
      ? slope
      : outlet?.slopes === 'up'
        ? negated(slope)
        : work.lacks('outlet', 'slopes'),
  );
  work.compare('exhaust.outlet-joint', '', take('past-joint'));
  work.compare('exhaust.outlet-side', '', take('past-side'));
  work.compare('exhaust.outlet-above-cab', '', take('above-cab'));
}

function examineClearances(places: NonNullable<Exhaust['clearances']>, work: Work): void {
  if (places.length === 0) work.compare('exhaust.clearance', '', work.lacks('clearances'));
  for (const { id, to, gap, shielded, maker, temperature, 'temperature-maker': warmest } of places) {
    const least = work.take(gap, 'clearances', id, 'gap');
    if (to === 'fuel-line') work.compare('fuel.exhaust-distance', id, least);
    else if (to === 'gas-line')
      work.compare('fuel.gas-exhaust', id, shielded ? least : work.lacks('clearances', id, 'shielded'), {
        states: { fuel: 'lpg', 'heat-shield': shielded ?? 'no' },
      });
    else work.compare('exhaust.clearance', id, least, { limit: makerLimit(maker, 'mm') });
    if (temperature)
      work.compare('exhaust.heat', id, work.take(temperature, 'clearances', id, 'temperature'), {
        limit: makerLimit(warmest, 'degC'),
      });
  }
}

/** The test note records the noise in full; without one, a reading here is shown beside the figure and does not count. */
function examineNoise(noise: Exhaust['noise'], work: Work): void {
  if (!noise?.now && work.build.notes.some((n) => n.kind === 'test' && n.data['noise'] !== undefined)) return;
  const level = work.take(noise?.now, 'noise', 'now');
  const signature = work.take(noise?.signature, 'noise', 'signature');
  work.publish('signature_noise', signature);
  const invalid = [
    'meter, engine speed and place of the microphone have no place in this note: record the test in a note of its own',
  ];
  work.compare('tests.noise', '', level, { invalid });
  work.compare('tests.noise-signature', '', isMissing(signature) && !isMissing(level) ? signature : level, { invalid });
  if (!noise?.background) return;
  const background = work.take(noise.background, 'noise', 'background');
  work.sheet(backgroundCorrection, '', { measured: level, background });
  work.compare('tests.noise-background', '', difference(level, background));
}

function catalyst({ catalyst: state, 'catalyst-why': why }: Exhaust) {
  if (state === undefined) return undefined;
  if (state === 'never-sold') return { answer: 'not applicable', because: why, from: ['catalyst'] };
  return {
    answer: state === 'removed' ? 'no' : 'yes',
    because: state === 'replaced' ? `replaced${why ? ` by ${why}` : ''}` : why,
    from: ['catalyst'],
  };
}
