import { describe, expect, it } from 'vitest';
import { expanded } from '../../../src/calc/value.js';
import { jointAngleLimit } from '../../../src/checks/kinds/parts/joint-table.js';
import { given } from '../../../src/checks/kinds/parts/maybe.js';
import { type Around, examineNote, problemsOf } from './bench.js';

const degrees = (si: number) => (si * 180) / Math.PI;
const RPM = (2 * Math.PI) / 60;

/** A one-piece shaft whose joints work at these angles, upright and in one plane. */
const station = (id: string, front: number, rear = front, u = '± 0.02') =>
  `  - { id: ${id}, gearbox: 3.00 ${u} deg down to the rear, shaft: ${(3 + front).toFixed(2)} ${u} deg down to the rear, pinion: ${(3 + front - rear).toFixed(2)} ${u} deg nose up }`;
const shaft = (...stations: string[]) =>
  `shafts: one\nlength: 1200 ± 1 mm\noffset: 0.00 ± 0.01 mm\ntwist: 0.0 ± 0.1 deg\nstations:\n${stations.join('\n')}`;
/** The speed of the shaft, by engine speed in a direct top gear. */
const turning = (rpm: string): Around => ({
  notes: {
    '001-engine.md': `kind: engine\nhighest-speed: ${rpm}`,
    '002-gearbox.md':
      'kind: gearbox\nratios: [{ id: first, ratio: 3.2 ± 0.0001 }, { id: top, ratio: 1.0000 ± 0.00001 }]',
  },
});

describe('the table of joint angle by shaft speed', () => {
  const at = (rpm: number) => jointAngleLimit(given(rpm * RPM, 'rpm', 'a speed'));
  // Published table of a joint maker, as a guidance page on operating angles quotes it; slower rows from memory.
  it.each([
    [5000, 3.2, 'quoted'],
    [4500, 3.7, 'quoted'],
    [4000, 4.2, 'quoted'],
    [3500, 5.0, 'quoted'],
    [3000, 5.8, 'memory'],
    [2500, 7.0, 'memory'],
    [2000, 8.7, 'memory'],
    [1500, 11.5, 'memory'],
  ])('%d rpm: %d degrees, %s', (rpm, max, basis) => {
    expect(at(rpm)).toMatchObject({ basis, unit: 'deg' });
    expect(degrees(at(rpm)!.max!.si)).toBeCloseTo(max, 9);
  });

  // Linear between the printed rows: half way from 5000 to 4500 and from 4000 to 3500.
  it.each([
    [4750, 3.45, 'quoted'],
    [3750, 4.6, 'quoted'],
    [3250, 5.4, 'memory'],
    [900, 11.5, 'memory'],
  ])('%d rpm between the rows: %d degrees, %s', (rpm, max, basis) => {
    expect(at(rpm)!.basis).toBe(basis);
    expect(degrees(at(rpm)!.max!.si)).toBeCloseTo(max, 9);
  });

  it('never allows more to a faster shaft, and ends at its first row', () => {
    for (let rpm = 100; rpm < 5000; rpm += 7)
      expect(at(Math.min(rpm + 7, 5000))!.max!.si).toBeLessThanOrEqual(at(rpm)!.max!.si);
    expect(at(5001)).toBeUndefined();
  });

  it('brings the uncertainty of the speed along', () => {
    const speed = { ...given(4750 * RPM, 'rpm', 'a speed'), parts: new Map([['limiter', 100 * RPM]]) };
    // 100 rpm at 0.5 degrees in 500 rpm.
    expect(degrees(expanded(jointAngleLimit(speed)!.max!))).toBeCloseTo(0.1, 9);
  });
});

describe('angle of each joint against shaft speed', () => {
  it.each([
    ['4750 ± 1 rpm', 3.45, 'unclear'],
    ['4750 ± 1 rpm', 3.4, 'met'],
    ['4750 ± 1 rpm', 3.5, 'against'],
    ['3750 ± 1 rpm', 4.5, 'met'],
    ['3750 ± 1 rpm', 4.7, 'against'],
    ['3000 ± 1 rpm', 1.0, 'unconfirmed'],
    ['3000 ± 1 rpm', 9.0, 'unconfirmed'],
    ['5200 ± 1 rpm', 1.0, 'unconfirmed'],
  ])('at %s a joint of %d degrees is %s, unladen and laden', async (rpm, angle, outcome) => {
    const { one } = await examineNote(
      'driveline',
      shaft(station('ride', angle), station('laden', angle)),
      turning(rpm),
    );
    for (const subject of ['ride-joint-1', 'ride-joint-2', 'laden-joint-1', 'laden-joint-2'])
      expect(one('driveline.angle-speed', subject).result).toBe(outcome);
  });

  it('judges each joint by itself: an unequal pair hides nothing', async () => {
    const { result } = await examineNote('driveline', shaft(station('ride', 3.0, 3.8)), turning('4750 ± 1 rpm'));
    expect([result('driveline.angle-speed', 'ride-joint-1'), result('driveline.angle-speed', 'ride-joint-2')]).toEqual([
      'met',
      'against',
    ]);
  });

  it('asks for the angles laden in one place, and does not hold bump and droop against speed', async () => {
    const { one, all } = await examineNote(
      'driveline',
      shaft(station('ride', 2), station('bump', 6), station('droop', 9)),
      turning('4750 ± 1 rpm'),
    );
    expect(one('driveline.angle-speed', 'laden')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('stations.laden.shaft') as string,
    });
    expect(all('driveline.angle-speed').map((f) => f.subject)).toEqual(['ride-joint-1', 'ride-joint-2', 'laden']);
  });

  it('is overruled by the figure of the builder’s own copy', async () => {
    const limits =
      'figures:\n  - { item: driveline.angle-speed, max: 2 deg, clause: p. 4, edition: "2024", read-by: JO, on: 2026-01-10 }\n';
    const { one } = await examineNote('driveline', shaft(station('ride', 2.5)), { ...turning('4750 ± 1 rpm'), limits });
    expect(one('driveline.angle-speed', 'ride-joint-1')).toMatchObject({ result: 'against', basis: 'own-copy' });
  });

  it('refuses a slope in mm, and one without its direction', () => {
    expect(problemsOf('driveline', 'stations: [{ id: ride, shaft: 3 mm down to the rear }]')).toHaveLength(1);
    expect(problemsOf('driveline', 'stations: [{ id: ride, shaft: 3 deg }]')).toMatchObject([
      { found: expect.stringContaining('without a direction') as string },
    ]);
  });
});

describe('at mock-up, before the speed is known', () => {
  it('angles and their difference are given from geometry alone', async () => {
    const { one, result, runs } = await examineNote('driveline', shaft(station('ride', 4, 2.5)));
    const found = one('driveline.angle-equal', 'ride');
    expect(found).toMatchObject({ result: 'against', limit: { recommended: true } });
    expect(degrees(found.measured!.si)).toBeCloseTo(1.5, 6);
    expect(result('driveline.angle-least', 'ride-joint-1')).toBe('met');
    expect(one('driveline.angle-speed', 'ride')).toMatchObject({
      result: 'missing',
      says: expect.stringContaining('highest engine speed') as string,
    });
    // θ_e of 4.0° and 2.5° in one plane: 3.1225° (derived, confirmed by turning a chain of joints step by step).
    const run = runs.find((r) => r.id === '010-tried/ride/driveline-two-joints')!;
    expect(degrees(run.results!['equivalent']!.si)).toBeCloseTo(3.1225, 2);
    expect(run.results).not.toHaveProperty('torsional');
  });

  it('the accelerations come with the speed and judge nothing', async () => {
    const { runs, findings } = await examineNote('driveline', shaft(station('ride', 4, 2.5)), turning('3000 ± 1 rpm'));
    const run = runs.find((r) => r.id === '010-tried/ride/driveline-two-joints')!;
    // 293, 481 and 188 rad/s² at 3000 rpm: regression only.
    expect(['torsional', 'inertiaDrive', 'inertiaCoast'].map((name) => Math.round(run.results![name]!.si))).toEqual([
      293, 481, 188,
    ]);
    expect(findings.filter((f) => f.measured?.unit === 'rad/s²')).toEqual([]);
  });

  it('a two-piece shaft has its three angles as well', async () => {
    const two =
      'shafts: two\nlength: 900 ± 1 mm\nfront-length: 700 ± 1 mm\nstations: [{ id: ride, gearbox: 3.0 deg down to the rear, front-shaft: 3.5 deg down to the rear, shaft: 6.5 deg down to the rear, pinion: 3.5 deg nose up }]';
    const { runs, all } = await examineNote('driveline', two);
    const run = runs.find((r) => r.id === '010-tried/ride/driveline-three-joints')!;
    expect(['joint1', 'joint2', 'joint3'].map((j) => degrees(run.results![j]!.si).toFixed(2))).toEqual([
      '0.50',
      '3.00',
      '3.00',
    ]);
    expect(all('driveline.angle-least').map((f) => f.subject)).toEqual([
      'ride-joint-1',
      'ride-joint-2',
      'ride-joint-3',
    ]);
    expect(all('driveline.angle-equal').map((f) => f.result)).toEqual(['out']);
  });

  it('says once for each item what a note without readings lacks', async () => {
    const { all } = await examineNote('driveline', 'shafts: one');
    expect(
      ['angle-least', 'angle-equal', 'uniformity', 'angle-speed', 'angle-largest'].map((id) =>
        all(`driveline.${id}`).map((f) => f.result),
      ),
    ).toEqual([['missing'], ['missing'], ['missing'], ['missing', 'missing'], ['missing']]);
  });
});

describe('recommendations', () => {
  it.each([
    // Guidance page of a maker of driveline parts: half a degree or more, equal within one degree.
    [0.6, 0.6, 'met', 'met'],
    [0.4, 0.4, 'against', 'met'],
    [2.0, 2.9, 'met', 'met'],
    [2.0, 3.1, 'met', 'against'],
  ])('joints of %d and %d degrees: least %s, equal %s', async (front, rear, least, equal) => {
    const { one } = await examineNote('driveline', shaft(station('ride', front, rear)));
    expect(one('driveline.angle-least', 'ride-joint-1')).toMatchObject({ result: least, limit: { recommended: true } });
    expect(one('driveline.angle-equal', 'ride')).toMatchObject({ result: equal, limit: { recommended: true } });
  });

  it('yokes out of phase are told though the angles are equal', async () => {
    // Two joints of 3° with the yokes a quarter turn out leave the squares of both: 4.24°, U = 0.55 %; in phase nothing.
    const phase = async (twist: string) =>
      (
        await examineNote('driveline', shaft(station('ride', 3)).replace('twist: 0.0 ± 0.1 deg', `twist: ${twist}`))
      ).one('driveline.uniformity', 'ride');
    expect((await phase('0.0 ± 0.1 deg')).result).toBe('met');
    const out = await phase('90.0 ± 0.1 deg');
    expect(out.result).toBe('against');
    expect(out.measured!.si).toBeCloseTo(0.0055, 4);
  });
});

describe('the largest working angle', () => {
  const full = (droop: number, more = '') =>
    `${shaft(station('ride', 2), station('bump', 1), station('droop', droop))}\n${more}`;
  const maker = 'maker-angle: { greatest: 10 deg, from: sheet of the joint }';
  it.each([
    [10.0, 'unclear'],
    [9.9, 'met'],
    [10.1, 'against'],
  ])('%d degrees at droop against 10 of its maker is %s, at whatever speed', async (droop, outcome) => {
    const { one } = await examineNote('driveline', full(droop, maker), turning('6000 ± 1 rpm'));
    expect(one('driveline.angle-largest')).toMatchObject({
      result: outcome,
      basis: 'maker',
      marks: expect.arrayContaining([expect.stringMatching(/^largest at droop, joint [12]$/)]) as string[],
    });
  });

  it('waits for bump and droop, and for the maker’s figure with its paper', async () => {
    expect(
      (await examineNote('driveline', `${shaft(station('ride', 2))}\n${maker}`)).one('driveline.angle-largest'),
    ).toMatchObject({ result: 'missing', todo: expect.stringContaining('stations.droop.shaft') as string });
    expect((await examineNote('driveline', full(5))).one('driveline.angle-largest')).toMatchObject({
      result: 'unconfirmed',
      todo: expect.stringContaining('from its maker') as string,
    });
    expect(
      (await examineNote('driveline', `${full(5)}\nmaker-angle: { greatest: 10 deg }`)).one('driveline.angle-largest'),
    ).toMatchObject({ result: 'unconfirmed' });
    expect(problemsOf('driveline', 'maker-angle: { greatest: 10 mm, from: sheet }')).toMatchObject([
      { code: 'quantity' },
    ]);
  });

  it('takes no least angle of the maker for the greatest', async () => {
    const { result } = await examineNote(
      'driveline',
      full(5, 'maker-angle: { least: 1 deg, from: sheet of the joint }'),
    );
    expect(result('driveline.angle-largest')).toBe('unconfirmed');
  });

  it('free rotation by hand at bump and droop is asked for', async () => {
    expect((await examineNote('driveline', full(5))).result('driveline.free-rotation')).toBe('missing');
    const answered = (word: string) =>
      examineNote('driveline', `${full(5)}\nanswers: { driveline.free-rotation: ${word} }`);
    expect((await answered('yes')).one('driveline.free-rotation')).toMatchObject({ of: 'answer', outcome: 'answered' });
    expect((await answered('no')).result('driveline.free-rotation')).toBe('against');
  });
});

it('judges the pinion by the angles of its joint alone', async () => {
  const { findings } = await examineNote('driveline', shaft(station('ride', 1, 4)), turning('4000 ± 1 rpm'));
  expect(findings.filter((f) => f.item === 'driveline.pinion')).toEqual([]);
});
