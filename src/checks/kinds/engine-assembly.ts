import { z } from 'zod';
import { compressionRatio } from '../../calc/engine/compression.js';
import { choice, list, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { bearings, examineBearings } from './assembly/bearings.js';
import { examineOpenings, openings } from './assembly/openings.js';
import { examineRings, rings } from './assembly/rings.js';
import { examineTiming, timing } from './assembly/timing.js';
import { examineTorques, joints, torqueAnswers } from './assembly/torques.js';
import { examineUnbalance, rotating } from './assembly/unbalance.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';

const shape = {
  engine: text('which engine, and in which state it came', 'six-cylinder in line, 3.0 l, used, 160 000 km'),
  history: choice(
    { used: 'used', rebuilt: 'rebuilt before it came', new: 'new, as its maker built it' },
    'history of the engine',
  ),
  shells: choice(
    { new: 'new main and big-end shells', reused: 'old shells put back', untouched: 'bottom end not opened' },
    'bearing shells of the mains and big ends',
  ),
  bore: quantity('mm', 'bore of the cylinders as measured, where the engine note does not state it', {
    measuredAs: 'fit',
    how: 'bore gauge at three heights, two directions, each cylinder',
    typical: '[86.02, 86.02, 86.01] mm',
  }),
  bearings,
  'end-float': quantity('mm', 'end float of the crankshaft', {
    measuredAs: 'dial',
    how: 'dial indicator on the end of the crankshaft, levered both ways, three times',
    typical: '[0.14, 0.15, 0.14] mm',
    usual: [0.02, 1.3],
  }),
  'end-float-maker': makerFigures('mm', 'end float', [0.02, 1.3]),
  rings,
  clearances: list(
    {
      of: text('what was measured', 'piston to bore, cylinder 1'),
      value: quantity('mm', 'clearance or wear as measured', {
        places: 'each',
        measuredAs: 'fit',
        how: 'difference of bore gauge and micrometer, feeler gauge, or dial indicator; three times',
        typical: '0.045 mm',
        usual: [0.004, 2],
      }),
      maker: makerFigures('mm', 'clearance or wear', [0.004, 2]),
    },
    'further clearances: piston to bore, ring in groove, rod side, valves, oil pump, flatness of the head, taper of bores',
  ),
  compression: z
    .strictObject({
      chamber: quantity('cm3', 'chamber in the head, valves and plug fitted', {
        how: 'burette through a plate with a hole, three times; the smallest chamber',
        typical: '[48.2, 48.1, 48.2] cm3',
      }),
      'gasket-bore': quantity('mm', 'bore of the head gasket', {
        measuredAs: 'thickness',
        how: 'caliper, two directions',
        typical: '87.0 mm',
      }),
      'gasket-thickness': quantity('mm', 'thickness of the head gasket when clamped', {
        how: "maker's data, or a used one of the same kind",
        typical: '1.20 mm',
      }),
      deck: quantity('mm', 'piston below the deck at top dead centre; negative where it stands above', {
        measuredAs: 'dial',
        range: 'signed',
        how: 'dial indicator over the piston pin, across the deck',
        typical: '0.30 mm',
        usual: [0, 2.9],
      }),
      crown: quantity('cm3', 'volume of the piston crown: positive for a dish, negative for a dome', {
        range: 'signed',
        how: "piston maker's data, or burette",
        typical: '4.0 cm3',
        usual: [0, 39],
      }),
      maker: makerFigures('1', 'compression ratio', [5, 25]),
    })
    .optional()
    .meta({ form: 'block', says: 'volumes above the piston' }),
  cranking: list(
    {
      pressure: quantity('kPa', 'cranking pressure of the cylinder', {
        how: 'all plugs out, throttle open, battery charged, gauge held until it no longer rises',
        typical: '1150 kPa',
      }),
    },
    'cylinders, each an item, as received or after the work',
  ),
  'cranking-maker': makerFigures('kPa', 'cranking pressure', [300, 6000]),
  'oil-pressure': list(
    {
      speed: quantity('rpm', 'engine speed', { how: 'tachometer', typical: '800 rpm', usual: [150, 7900] }),
      pressure: quantity('kPa', 'oil pressure with the engine hot', {
        how: 'gauge screwed into the port of the sender',
        typical: '180 kPa',
        usual: [20, 1500],
      }),
      maker: makerFigures('kPa', 'oil pressure', [20, 1500]),
    },
    'oil pressures, such as `idle` and `fast`',
  ),
  joints,
  ...timing,
  rotating,
  'rotating-replaced': yesNo('was a damper, flywheel or flexplate replaced'),
  openings,
  'openings-closed': yesNo('was an opening closed, or its fitting moved'),
};
type Assembly = Data<typeof shape>;

/** Items that not every engine has: they are asked for where the note has something on them. */
const raisedBy: Readonly<Record<string, (d: Assembly) => boolean>> = {
  'assembly.clearance': (d) => d.clearances !== undefined,
  'assembly.cranking-pressure': (d) => d.cranking !== undefined,
  'assembly.oil-pressure': (d) => d['oil-pressure'] !== undefined,
  'assembly.torque': (d) =>
    !d.joints?.length || d.joints.some((j) => !j.steps?.length || j.steps.some((s) => s.torque ?? !s.angle)),
  'assembly.torque-angle': (d) => d.joints?.some((j) => j.steps?.some((s) => s.angle)) ?? false,
};

/** The bench record of an engine that was opened. */
export const engineAssembly = kind({
  id: 'engine-assembly',
  title: 'Engine assembly',
  covers:
    'The bench record of an engine that was opened or prepared: clearances, gaps, torques, compression, balance, timing mark, and openings that were closed.',
  shape,
  holdPoints: [
    {
      id: 'engine-as-received',
      shows: 'Engine as it came, with its number, damper scale and pointer',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['number', 'timing-scale'],
    },
    {
      id: 'bearings-measured',
      shows: 'Bore gauge in a bearing with its shells fitted and the cap tightened',
      level: 'record',
      during: 'dismantled',
      before: 'assembled',
    },
    {
      id: 'timing-mark',
      shows: 'Pointer on the scale with the piston at the positive stop',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      serves: 'assembly.timing-mark-shown',
    },
    {
      id: 'openings-closed',
      shows: 'Each closed opening before parts cover it',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: (d) => (d.openings ?? []).map((o) => o.id),
      serves: 'assembly.openings-shown',
    },
  ],
  cautions: ['lifting', 'spinning'],
  answers: (d) => ({
    ...torqueAnswers(d.joints),
    'assembly.shells':
      d.history === 'new'
        ? { answer: 'not applicable', because: 'the engine is new, as its maker built it', from: ['history'] }
        : d.shells === 'new'
          ? { answer: 'yes', from: ['shells'] }
          : undefined,
    'assembly.unbalance':
      d['rotating-replaced'] === 'no'
        ? {
            answer: 'not applicable',
            because: 'no rotating part of the crankshaft was replaced',
            from: ['rotating-replaced'],
          }
        : undefined,
    'assembly.openings':
      d['openings-closed'] === 'no'
        ? { answer: 'not applicable', because: 'no opening was closed and no fitting moved', from: ['openings-closed'] }
        : undefined,
    'assembly.openings-shown':
      d['openings-closed'] === 'no'
        ? { answer: 'not applicable', because: 'no opening was closed and no fitting moved', from: ['openings-closed'] }
        : undefined,
    'assembly.clearance-record':
      d.bearings && d.rings ? { answer: 'readings of bearings and rings', shown: 'note' } : undefined,
  }),
  facts: (d) => ({ engine_bore: d.bore }),
  raises: (item, d) => raisedBy[item]?.(d) ?? true,
  evaluate: ({ data }, work) => {
    examineShells(data, work);
    examineBearings(data.bearings, work);
    work.compare('assembly.end-float', '', work.take(data['end-float'], 'end-float'), {
      limit: makerLimit(data['end-float-maker'], 'mm'),
    });
    const bore = data.bore ? work.take(data.bore, 'bore') : work.fact('engine_bore');
    examineRings(data.rings, bore, work);
    for (const { id, value, maker } of data.clearances ?? [])
      work.compare('assembly.clearance', id, work.take(value, 'clearances', id, 'value'), {
        limit: makerLimit(maker, 'mm'),
      });
    examineCompression(data, work);
    for (const { id, pressure } of data.cranking ?? [])
      work.compare('assembly.cranking-pressure', id, work.take(pressure, 'cranking', id, 'pressure'), {
        limit: makerLimit(data['cranking-maker'], 'kPa'),
      });
    for (const { id, pressure, maker } of data['oil-pressure'] ?? [])
      work.compare('assembly.oil-pressure', id, work.take(pressure, 'oil-pressure', id, 'pressure'), {
        limit: makerLimit(maker, 'kPa'),
      });
    examineTorques(data.joints, work);
    examineTiming(data, work);
    examineUnbalance(data.rotating, work);
    examineOpenings(data.openings, work);
  },
});

/** A used engine gets new shells. That the old ones still have their clearance does not settle it. */
function examineShells({ history, shells }: Assembly, work: Work): void {
  if (history === 'new' || (shells !== 'reused' && shells !== 'untouched')) return;
  const says =
    shells === 'reused'
      ? 'the old main and big-end shells were put back'
      : 'the bottom end was not opened, so the old shells are still in';
  work.state('assembly.shells', '', 'against', says, {
    answer: 'no',
    todo: 'fit new shells and measure their clearance, or put it to the certifier',
    path: ['shells'],
  });
}

function examineCompression({ compression: c, bore }: Assembly, work: Work): void {
  const take = (name: 'chamber' | 'gasket-bore' | 'gasket-thickness' | 'deck') =>
    work.take(c?.[name], 'compression', name);
  const ratio = work.sheet(compressionRatio, '', {
    bore: bore ? work.take(bore, 'bore') : work.fact('engine_bore'),
    stroke: work.fact('engine_stroke'),
    chamber: take('chamber'),
    gasketBore: take('gasket-bore'),
    gasketThickness: take('gasket-thickness'),
    deck: take('deck'),
    ...(c?.crown ? { crown: work.take(c.crown, 'compression', 'crown') } : {}),
  });
  work.compare('assembly.compression', '', ratio.get('ratio'), { limit: makerLimit(c?.maker, '1') });
}
