import { capacityFactor, engineCapacity } from '../../calc/engine/capacity.js';
import { mountReaction } from '../../calc/engine/mounts.js';
import type { FactName } from '../../project/facts.js';
import { choice, count, quantity, text, yesNo } from '../../project/fields.js';
import { showQuantity } from '../../units/show.js';
import { kind } from '../engine/kind.js';
import { isMissing, type Work } from '../engine/work.js';
import { hasNote } from './parts/against.js';

/** Another engine, or an engine made larger. */
export const engine = kind({
  id: 'engine',
  title: 'Engine',
  covers:
    'Another engine, or the original one made larger or stronger: what it is, where it came from, how it is mounted, and which emission equipment it keeps.',
  shape: {
    engine: text('what engine was fitted, and out of what', 'six-cylinder in line, 3.0 l').meta({
      recordedFor: 'the certifier, who names the engine in the certificate',
    }),
    number: text('engine number as stamped on the block').meta({
      recordedFor: 'the register, beside the picture of the number',
    }),
    principle: choice({ piston: 'reciprocating pistons', rotary: 'rotary', electric: 'electric motor' }, 'principle'),
    induction: choice({ na: 'naturally aspirated', forced: 'turbocharged or supercharged' }, 'induction'),
    bore: quantity('mm', 'bore as measured, after any reboring', {
      measuredAs: 'fit',
      how: 'bore gauge at three heights, two directions',
      typical: '86.0 mm',
      usual: [45, 140],
    }),
    stroke: quantity('mm', 'stroke of the crankshaft fitted', {
      measuredAs: 'thickness',
      how: 'depth gauge on the piston between its dead centres',
      typical: '86.0 mm',
      usual: [40, 140],
    }),
    cylinders: count('number of cylinders', { typical: '6' }),
    capacity: quantity('cm3', 'swept volume as the maker states it, where bore and stroke were not measured', {
      measuredAs: 'paper',
      typical: '2998 cm3',
      usual: [300, 9000],
    }),
    power: quantity('kW', 'rated power', {
      how: "the maker's figure with its source, or a dynamometer sheet",
      typical: '140 kW',
    }),
    torque: quantity('N*m', 'highest torque', {
      measuredAs: 'paper',
      how: "the maker's figure with its source, or a dynamometer sheet",
      typical: '270 N·m',
      usual: [30, 1200],
    }),
    'highest-speed': quantity('rpm', 'highest engine speed', {
      measuredAs: 'paper',
      how: 'speed at which the limiter cuts in, read on an independent meter',
      typical: '6200 rpm',
      usual: [1500, 15000],
    }),
    mass: quantity('kg', 'mass of the engine as fitted', {
      measuredAs: 'part-mass',
      how: 'hanging scale on the hoist, with oil, without coolant',
      typical: '215 kg',
      usual: [40, 500],
    }),
    'mount-spacing': quantity('mm', 'distance between left and right mount, square to the crankshaft', {
      how: 'tape between the centres of the rubbers',
      typical: '560 mm',
      usual: [200, 1000],
    }),
    'mount-load': quantity('kg', 'mass carried by one side mount at rest', {
      how: 'half of the engine less what the gearbox mount carries',
      typical: '85 kg',
    }),
    'mount-capacity': quantity(
      'N',
      'load that one mount with its bracket is rated or calculated for, along the torque reaction',
      {
        measuredAs: 'paper',
        how: 'data sheet of the mount, or a sheet for the bracket',
        typical: '9 kN',
        usual: [1000, 60_000],
      },
    ),
    'load-case': text('load case in build.md that the mounts are reckoned for', 'engine-torque'),
    'converter-ratio': quantity('1', 'torque multiplication of the converter at stall, automatic gearbox only', {
      measuredAs: 'paper',
      typical: '2.0',
      usual: [1, 4],
    }),
    canister: yesNo('evaporative canister fitted and connected'),
  },
  holdPoints: [
    {
      id: 'engine-number',
      shows: 'Engine number as stamped on the block',
      level: 'record',
      during: 'as-received',
      before: 'assembled',
      serves: 'engine.identity number',
    },
    {
      id: 'mounts-bare',
      shows: 'Mounts and brackets before the engine covers them',
      level: 'record',
      during: 'tacked',
      before: 'assembled',
    },
  ],
  cautions: ['lifting', 'fuel', 'stands', 'electrical'],
  reckons: ['engine_capacity'],
  facts: (d) => ({
    engine_capacity: d.capacity,
    engine_power: d.power,
    engine_torque: d.torque,
    engine_speed: d['highest-speed'],
    engine_mass: d.mass,
    engine_bore: d.bore,
    engine_stroke: d.stroke,
  }),
  answers: (d) => ({ 'engine.canister': d.canister && { answer: d.canister, from: ['canister'] } }),
  states: (d) => ({ induction: d.induction, principle: d.principle ?? 'piston' }),
  evaluate: ({ data }, work) => {
    const swept = work.sheet(engineCapacity, '', {
      bore: work.take(data.bore, 'bore'),
      stroke: work.take(data.stroke, 'stroke'),
      cylinders: work.take(data.cylinders, 'cylinders'),
    });
    work.agree(
      'capacity',
      { says: 'swept volume', unit: 'cm3' },
      work.take(data.capacity, 'capacity'),
      swept.get('capacity'),
    );
    const capacity = data.capacity ? work.take(data.capacity, 'capacity') : swept.get('capacity');
    work.publish('engine_capacity', capacity);
    work.sheet(capacityFactor, '', { capacity, originalMass: work.fact('original_mass') });
    work.compare('engine.capacity', '', capacity);
    askForBrakes(data, work);

    if (hasNote(work, 'mounts') && !data['mount-spacing'] && !data['mount-capacity']) return;
    const loadCase = work.loadCase(data['load-case']);
    const reaction = work.sheet(mountReaction, '', {
      torque: work.take(data.torque, 'torque'),
      ratio: work.fact('first_gear'),
      spacing: work.take(data['mount-spacing'], 'mount-spacing'),
      ...(data['mount-load'] ? { weight: work.take(data['mount-load'], 'mount-load') } : {}),
      ...(data['converter-ratio'] ? { converter: work.take(data['converter-ratio'], 'converter-ratio') } : {}),
      ...(loadCase?.factor ? { factor: work.take(loadCase.factor, 'load-case') } : {}),
    });
    work.demandAgainst('mounts.torque-reaction', '', {
      factored: true,
      demand: reaction.get('pressed'),
      capacity: work.take(data['mount-capacity'], 'mount-capacity'),
      loadCase,
      named: data['load-case'],
    });
  },
});

/** What rules on brakes ask about an engine: what it gives now, and where that is stated. */
const output: readonly [says: string, fact: FactName, unit: string, field: 'capacity' | 'power' | 'torque'][] = [
  ['swept volume', 'engine_capacity', 'cm3', 'capacity'],
  ['power', 'engine_power', 'kW', 'power'],
  ['torque', 'engine_torque', 'N*m', 'torque'],
];

/** Common practice, no source: ratings are rounded, and turned from one unit into another. As ratings they are compared as read. */
const roundedBy = 0.01;

/**
 * An engine beyond the one that the car came with is beyond what its brakes were sold with, as far as the build says. That
 * another such engine was sold with the same brakes is for the certifier to see.
 */
function askForBrakes(data: { capacity?: unknown; power?: unknown; torque?: unknown }, work: Work): void {
  const more = output.flatMap(([says, fact, unit, field]) => {
    const [now, was] = [work.fact(fact), work.fact(fact, 'as-received')];
    if (isMissing(now) || isMissing(was) || now.si - was.si <= roundedBy * was.si) return [];
    const from = data[field] ? field : 'bore';
    return [{ fact, from, says: `${says} ${showQuantity(now.si, unit)} against ${showQuantity(was.si, unit)}` }];
  });
  const derive = (item: string, found: typeof more) => {
    const [first] = found;
    if (first)
      work.derive(item, {
        answer: 'yes',
        because: `${found.map((m) => m.says).join(', ')} of the engine that the car came with`,
        from: [first.from],
        todo: 'correct the answer or the figures; where the maker sold such an engine with these brakes, put its data to the certifier',
      });
  };
  derive('engine.brakes', more);
  derive('engine.above-brakes-sa', more);
  derive(
    'engine.above-brakes-wa',
    more.filter((m) => m.fact === 'engine_capacity'),
  );
}
