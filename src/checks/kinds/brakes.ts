import { kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { type Brakes, shape } from './brakes-fields.js';
import { hasNote } from './parts/against.js';
import { examineBalance } from './parts/brake-balance.js';
import { boltAnswers, examineEngagement } from './parts/engagement.js';
import { makerLimit } from './parts/maker-window.js';
import { examineStops, quietAnswers, stopStates } from './parts/stop.js';
import { examineTorques, torqueAnswers } from './parts/torques.js';
import { unmetByFirstStop } from './trials/stop-conditions.js';

/** Brakes of another kind or size, or brakes that other work asks more of. */
export const brakes = kind({
  id: 'brakes',
  title: 'Brakes',
  covers:
    'Pedal, cylinders, booster, callipers, discs and drums, lines and parking brake: what was there and what is there, pressure and balance against the weighed axles, and the first stop.',
  shape,
  holdPoints: [
    {
      id: 'brakes-as-received',
      shows: 'Brakes as they came: sizes marked on the parts of the front and of the rear, routing of the lines',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['front', 'rear', 'lines'],
    },
    {
      id: 'lines-open',
      shows: 'Pipes, supports, grommets and joints before trim, guards or the tank cover them',
      level: 'record',
      during: 'assembled',
      before: 'trimmed',
      parts: ['supports', 'grommets', 'joints'],
      serves: 'brakes.lines-shown',
    },
    {
      id: 'hoses-at-ends',
      shows: 'Hoses at full droop, full bump and both locks',
      level: 'witness',
      during: 'assembled',
      before: 'tested',
      parts: ['droop', 'bump', 'left-lock', 'right-lock'],
      serves: 'brakes.lines-shown',
    },
    {
      id: 'leak-test',
      shows: 'Every joint dry under hard pedal pressure, before the car moves by itself',
      level: 'hold',
      during: 'assembled',
      before: 'tested',
    },
  ],
  cautions: ['brakes', 'stands', 'driving'],
  answers: (d) => ({
    ...quietAnswers(d),
    ...torqueAnswers(d.torques),
    ...fromFields(d),
    ...fromBolts(d),
  }),
  states: (d) => stopStates(d),
  evaluate: ({ data }, work) => {
    examineBalance(data, work);
    for (const axle of ['front', 'rear'] as const) examineWear(axle, data, work);
    work.compare('brakes.pedal-reserve', '', work.take(data['pedal-reserve'], 'pedal-reserve'), {
      limit: makerLimit(data['maker-pedal-reserve'], 'mm'),
    });
    for (const [item, field] of [
      ['brakes.line-support', 'support-spacing'],
      ['brakes.fluid-mark', 'fluid-mark'],
      ['brakes.threads-showing', 'threads-showing'],
    ] as const)
      work.compare(item, '', work.take(data[field], field));
    if (data['line-gap'] || !hasNote(work, 'clearance'))
      work.compare('brakes.line-wheel', '', work.take(data['line-gap'], 'line-gap'));
    if (data['pre-test'] || !hasNote(work, 'test')) {
      const stop = data['pre-test'];
      work.compare('brakes.pretest-pedal', '', work.take(stop?.['pedal-force'], 'pre-test', 'pedal-force'));
      const invalid = stop && unmetByFirstStop(stop, work);
      for (const field of ['average', 'peak'] as const)
        work.compare(`brakes.pretest-${field}`, '', work.take(stop?.[field], 'pre-test', field), { invalid });
    }
    if (!hasNote(work, 'wheels-tyres') && !work.isAnswered('brakes.tyre-diameter'))
      work.state('brakes.tyre-diameter', '', 'out', 'no note records other tyres');
    examineEngagement(data.bolts, work);
    examineTorques(data.torques, work);
    examineStops(data, work);
  },
});

/** Wear and run-out against the figures of the maker, for the kind of brake that is there. */
function examineWear(axle: 'front' | 'rear', data: Brakes, work: Work): void {
  const state = data.now || !data.planned ? 'now' : 'planned';
  const brake = data[state]?.[axle];
  const maker = data[`${axle}-maker`];
  const checks = [
    ['brakes.disc-thickness', 'disc', 'thickness'],
    ['brakes.disc-runout', 'disc', 'run-out'],
    ['brakes.drum-diameter', 'drum', 'diameter'],
  ] as const;
  for (const [item, type, field] of checks) {
    if (brake?.type !== undefined && brake.type !== type)
      work.state(item, axle, 'out', `the ${axle} axle has ${brake.type}s`, { path: [state, axle, 'type'] });
    else
      work.compare(
        item,
        axle,
        brake?.type ? work.take(brake[field], state, axle, field) : work.lacks(state, axle, 'type'),
        { limit: makerLimit(maker?.[field], 'mm') },
      );
  }
}

function fromFields(d: Brakes) {
  const yesNo = (answer: 'yes' | 'no' | undefined) => answer && { answer };
  const { leaks } = d;
  return {
    'brakes.hose-marking': yesNo(d['hoses-marked']),
    'brakes.hose-length': yesNo(d['hoses-reach']),
    'brakes.pedal-mount': yesNo(d['pedal-rigid']),
    'brakes.parking-cable': yesNo(d['cable-sound']),
    'brakes.matching': yesNo(d.matched),
    'brakes.smaller-parts': yesNo(d['smaller-or-lighter']),
    'brakes.lighter-sa': yesNo(d['smaller-or-lighter']),
    'brakes.lighter-wa': yesNo(d['smaller-or-lighter']),
    'engine.above-brakes-sa': yesNo(d['engine-above-options']),
    'engine.above-brakes-wa': yesNo(d['engine-above-options']),
    'brakes.engine-output': d['sold-with'] ? { answer: d['sold-with'] } : undefined,
    'brakes.leak-test': leaks?.dry && {
      answer: leaks.dry,
      because:
        [leaks['pedal-force']?.quantity.text, leaks.held?.quantity.text].filter(Boolean).join(' for ') || undefined,
    },
  };
}

/** What the bolts say of themselves: ISO class 8.8 or SAE grade 5 and better, and locked. */
function fromBolts({ bolts = [] }: Brakes) {
  const weak = bolts.filter(
    (b) =>
      b.class &&
      (b.class.standard === 'ISO 898-1' ? Number(b.class.text) < 8.8 : Number(b.class.text.replace(/\D/g, '')) < 5),
  );
  const graded = bolts.length > 0 && bolts.every((b) => b.class);
  const { 'fasteners.locking': locking } = boltAnswers(bolts);
  return {
    'brakes.fastener-grade':
      weak.length > 0
        ? { answer: 'no', because: weak.map((b) => `${b.id} ${b.class!.written}`).join(', ') }
        : graded
          ? { answer: 'yes' }
          : undefined,
    'brakes.locking': locking,
  };
}
