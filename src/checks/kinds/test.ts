import type { Answer } from '../../project/common.js';
import { type Data, kind } from '../engine/kind.js';
import type { Derived } from '../engine/told.js';
import type { Work } from '../engine/work.js';
import { shape } from './test-fields.js';
import { examineBrakeTest, pulled, recordedOnly, testSpeeds } from './trials/brake-stops.js';
import { examineNoise } from './trials/noise.js';
import { examineSpeedometer } from './trials/speedometer.js';
import { examineStiffness } from './trials/stiffness.js';

type Test = Data<typeof shape>;

/** How the items of each test begin; those of none belong to all. */
const itemsOf = {
  brakes: /^brakes\./,
  noise: /^(?:tests\.noise|noise\.)/,
  speedometer: /^speedometer\./,
  twist: /^tests\.twist/,
  'lane-change': /^tests\.lane-change/,
  emissions: /^(?:tests\.emissions|engine\.idle-co)/,
  road: /^tests\.road/,
} as const;

/** Tests of the whole car, a note for each. */
export const test = kind({
  id: 'test',
  title: 'Test',
  covers:
    'One test of the car: brakes, stationary noise, speedometer, twist and bending before and after, lane change, emissions or a road test, with every reading.',
  shape,
  holdPoints: [
    {
      id: 'baseline',
      shows: 'The same test on the car as it came, where the result is compared with it',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'set-up',
      shows: 'Car and instruments set up for the test',
      level: 'witness',
      during: 'tested',
      before: 'finished',
      serves: 'tests.set-up-shown',
    },
  ],
  cautions: ['driving', 'brakes', 'noise', 'stands'],
  raises: (item, d) => {
    const owner = Object.entries(itemsOf).find(([, begins]) => begins.test(item))?.[0];
    return owner === undefined || d.test === undefined || d.test === owner;
  },
  answers: (d) => ({
    'tests.conditions': conditions(d),
    'tests.instruments': d.instruments ? { answer: d.instruments, shown: 'note' } : undefined,
    'tests.readings': hasReadings(d)
      ? { answer: 'in this note', shown: 'note', because: recordedOnly(d.brakes) }
      : undefined,
    'tests.emissions': d.emissions?.report ? { answer: d.emissions.report } : undefined,
    'tests.road-recheck': recheck(d),
    'tests.lane-change-driver': d['lane-change']?.confidence && {
      answer: d['lane-change'].confidence,
      from: ['lane-change', 'confidence'],
    },
    'noise.rule': d.noise?.approval && {
      answer:
        d.noise.approval === 'none'
          ? 'not approved to ADR 83/00'
          : `approved to ADR 83/00${d.noise.signature ? ` with ${d.noise.signature.quantity.text}` : ''}`,
    },
    'speedometer.reference': d['true-speed-by'] ? { answer: d['true-speed-by'], shown: 'note' } : undefined,
    'brakes.pretest-pull': pulled(d.brakes),
    'brakes.test-speed': testSpeeds(d.brakes),
  }),
  states: (d) => ({
    'noise-approval': d.noise?.approval,
    'speedometer-rule': d['speedometer-rule'],
    'centre-of-mass-moved': d.test === 'lane-change' ? 'yes' : undefined,
  }),
  evaluate: ({ data }, work) => {
    const does = (name: keyof typeof itemsOf) => data.test === undefined || data.test === name;
    if (does('brakes')) examineBrakeTest(data.brakes ?? {}, work);
    const aside = does('brakes') && data.brakes?.stops?.find((s) => s.state !== 'was' && s.pulled === 'yes');
    if (aside)
      work.derive('brakes.side-balance', {
        answer: 'no',
        because: `in stop ${aside.id} the car pulled to a side, or a wheel locked early`,
        from: ['brakes', 'stops', aside.id, 'pulled'],
      });
    if (does('noise')) examineNoise(data.noise ?? {}, work);
    if (does('speedometer')) examineSpeedometer(data.speeds, data['speedometer-rule'], work);
    if (does('twist')) examineStiffness(data.twist, data.bending, work);
    if (does('emissions'))
      work.compare('engine.idle-co', '', work.take(data.emissions?.['idle-co'], 'emissions', 'idle-co'));
    if (does('lane-change')) laneChange(data, work);
  },
});

function conditions(d: Test): Answer | undefined {
  const told = [d.place, d.weather, d['load-and-tyres'], d.driver];
  return told.every(Boolean) ? { answer: told.join('; ') } : undefined;
}

/** That it was looked over counts with what was found. */
function recheck({ road }: Test): Derived | undefined {
  if (!road?.rechecked || (road.rechecked === 'yes' && !road.found)) return undefined;
  return { answer: road.rechecked, because: road.found, from: ['road', 'rechecked'] };
}

const hasReadings = (d: Test): boolean =>
  [d.brakes?.stops, d.noise?.outlets, d.speeds, d.twist?.now, d['lane-change']?.runs].some(
    (list) => (list?.length ?? 0) > 0,
  ) || d.emissions?.['idle-co'] !== undefined;

function laneChange(data: Test, work: Work): void {
  work.compare('tests.lane-change-gvm', '', work.fact('gvm'));
  const runs = data['lane-change']?.runs ?? [];
  if (runs.length === 0) work.compare('tests.lane-change-cones', '', work.lacks('lane-change', 'runs'));
  for (const run of runs)
    work.compare('tests.lane-change-cones', run.id, work.take(run.cones, 'lane-change', 'runs', run.id, 'cones'));
  const speeds = runs.filter((run) => run.speed).sort((a, b) => b.speed!.quantity.si - a.speed!.quantity.si);
  const fastest = speeds[0] ?? runs[0];
  const path = ['lane-change', 'runs', ...(fastest ? [fastest.id, 'speed'] : [])];
  work.compare('tests.lane-change-speed', fastest?.id ?? '', work.take(fastest?.speed, ...path));
}
