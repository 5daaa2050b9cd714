import { describe, expect, it } from 'vitest';
import { toUnit } from '../../../src/units/unit.js';
import { type Bench, examineNote, problemsOf } from './bench.js';

const around = {
  original: { wheelbase: '2600 mm', gvm: '1620 kg', 'track-front': '1450 mm', 'track-rear': '1440 mm' },
  vehicle: { seats: '5' },
};
const result = (bench: Bench, sheet: string, name: string, unit: string) => {
  const value = bench.runs.find((r) => r.id === `010-tried/${sheet}`)?.results?.[name];
  if (!value)
    throw new Error(
      `no ${name} of ${sheet}; runs: ${bench.runs.map((r) => `${r.id} ${r.outOfRange ?? ''}`).join(', ')}`,
    );
  return toUnit(value.si, unit);
};

const typical = `
stages: { as-received: 2026-02-02, tested: 2026-05-02 }
centre-of-mass-moved: no
was: { front: '[612.0, 612.5, 612.0] kg', rear: '[568.0, 567.5, 568.0] kg', load: tank full and nobody in it, fuel: 41 kg }
now: { front: '[655.5, 656.0, 655.5] kg', rear: '[576.5, 576.0, 576.5] kg', load: tank full and nobody in it, fuel: 41 kg }
laden: { front: 712 ± 1 kg, rear: 868 ± 1 kg }
ratings: { front: 760 kg, rear: 900 kg, from: maker's plate }
oil-coolant: 14 kg
full-fuel: 41 kg
scales-checked: 2026-01-10
`;

describe('axle loads', () => {
  it('finds the place of the centre of mass as received and as built, and its shift', async () => {
    const bench = await examineNote('mass', typical, around);
    // Moments about the front axle: derived, regression only.
    expect(result(bench, 'was/axle-masses', 'behindFront', 'mm')).toBeCloseTo(
      (2600 * 567.8333) / (612.1667 + 567.8333),
      1,
    );
    expect(result(bench, 'axle-load-change', 'shift', 'mm')).toBeLessThan(0);
    expect(bench.result('mass.laden')).toBe('met');
    expect(bench.one('mass.axle-front')).toMatchObject({
      result: 'met',
      basis: 'maker',
      limit: { document: "maker's plate" },
    });
    expect(bench.result('mass.axle-rear')).toBe('met');
    expect(bench.result('vehicle.gvm')).toBe('met');
    expect(bench.result('mass.cg-moved')).toBe('met');
    expect(bench.result('mass.as-received')).toBe('met');
    expect(bench.result('mass.scales-checked')).toBe('met');
    expect(bench.findings.filter((f) => f.result === 'against')).toEqual([]);
  });

  // Laden mass against the gross vehicle mass of build.md: 68 kg a person after MR810, South Australia (published, its currency not known).
  it.each([
    ['760 ± 0.1 kg', '859.5 ± 0.1 kg', 'met'],
    ['760 ± 0.1 kg', '860 ± 0.1 kg', 'unclear'],
    ['760 ± 0.1 kg', '860.5 ± 0.1 kg', 'against'],
  ])('laden %s and %s against 1620 kg: %s', async (front, rear, outcome) => {
    const { one } = await examineNote('mass', `laden: { front: ${front}, rear: ${rear} }`, around);
    expect(one('mass.laden')).toMatchObject({ result: outcome, marks: expect.arrayContaining(['common practice']) });
  });

  it.each([
    ['759 ± 0.5 kg', 'met'],
    ['760 ± 0.5 kg', 'unclear'],
    ['761 ± 0.5 kg', 'against'],
  ])('front axle of %s against a plate of 760 kg: %s', async (front, outcome) => {
    const bench = await examineNote(
      'mass',
      `laden: { front: ${front}, rear: 800 kg }\nratings: { front: 760 kg, from: plate }`,
      around,
    );
    expect(bench.result('mass.axle-front')).toBe(outcome);
  });

  it('gives no outcome on a rating whose paper is not named', async () => {
    const bench = await examineNote(
      'mass',
      'laden: { front: 700 kg, rear: 800 kg }\nratings: { front: 760 kg }',
      around,
    );
    expect(bench.one('mass.axle-front')).toMatchObject({
      result: 'unconfirmed',
      todo: expect.stringContaining('from'),
    });
  });
});

describe('wheel loads', () => {
  it('sums the wheels up to axles and finds the centre of mass beside the middle', async () => {
    const bench = await examineNote(
      'mass',
      'now: { front-left: 420 kg, front-right: 390 kg, rear-left: 340 kg, rear-right: 350 kg }',
      around,
    );
    // Equilibrium of moments, worked by hand: derived, regression only.
    expect(result(bench, 'now/corner-masses', 'behindFront', 'mm')).toBeCloseTo(1196, 0);
    expect(result(bench, 'now/corner-masses', 'toRight', 'mm')).toBeCloseTo(-9.7, 1);
  });

  it('names the wheel that is missing', async () => {
    const bench = await examineNote(
      'mass',
      'laden: { front-left: 420 kg, front-right: 390 kg, rear-left: 340 kg }',
      around,
    );
    expect(bench.one('mass.laden')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('laden.rear-right'),
    });
  });
});

describe('height of the centre of mass', () => {
  const level = 'front: 807.692 ± 0.001 kg, rear: 692.308 ± 0.001 kg, fuel: 40 kg';
  const raised = (raises: string) =>
    `now: { ${level}, raises: [${raises}] }\nwheel-centre-front: 310 mm\nwheel-centre-rear: 310 mm`;

  it('follows from the load that moves to the front, with what a kilogram of error does', async () => {
    const bench = await examineNote('mass', raised('{ id: high, raise: 600 mm, front: 840.692 ± 2 kg }'), around);
    // Equilibrium of moments, worked by hand: derived, regression only.
    expect(result(bench, 'now-high/centre-of-mass-height', 'height', 'mm')).toBeCloseTo(551.2, 1);
    expect(result(bench, 'now-high/centre-of-mass-height', 'sensitivity', 'mm/kg')).toBeCloseTo(7.308, 3);
  });

  it('at two raises that do not agree is told, however uncertain one of them is', async () => {
    const two = (u: number) =>
      raised(`{ id: a, raise: 600 mm, front: 840.692 ± 2 kg }, { id: b, raise: 600 mm, front: 870 ± ${u} kg }`);
    const told = async (u: number) => (await examineNote('mass', two(u), around)).all('agreement', 'cg_height').length;
    expect([await told(2), await told(25), await told(250)]).toEqual([1, 1, 1]);
    const alike = raised(
      '{ id: a, raise: 600 mm, front: 840.692 ± 2 kg }, { id: b, raise: 600 mm, front: 841 ± 2 kg }',
    );
    expect((await examineNote('mass', alike, around)).all('agreement', 'cg_height')).toEqual([]);
  });

  it('gives a reason in place of a number when the axle was hardly raised', async () => {
    const bench = await examineNote('mass', raised('{ id: low, raise: 100 mm, front: 812 kg }'), around);
    expect(bench.runs.find((r) => r.id.includes('now-low'))?.outOfRange).toContain('at least a tenth');
  });
});

it('adds persons and luggage by their places where the laden car was not weighed', async () => {
  const bench = await examineNote(
    'mass',
    'now: { front: 655 kg, rear: 577 kg, fuel: 41 kg }\nfull-fuel: 41 kg\nluggage: 0 kg\nplaces: [{ id: front-seats, mass: 136 kg, place: 1300 mm }, { id: rear-seat, mass: 204 kg, place: 2080 mm }]\nratings: { rear: 900 kg, from: plate }',
    around,
  );
  // 136 · 1300/2600 + 204 · 2080/2600 = 231.2 kg to the rear: moments, derived.
  expect(result(bench, 'laden/mass-added', 'rearAfter', 'kg')).toBeCloseTo(577 + 231.2, 6);
  expect(result(bench, 'laden-mass', 'laden', 'kg')).toBeCloseTo(655 + 577 + 5 * 68, 6);
  expect(bench.result('mass.axle-rear')).toBe('met');
});

it('sums the parts of a plan up with the weighing as received', async () => {
  const bench = await examineNote(
    'mass',
    'was: { front: 612 kg, rear: 568 kg }\nparts: [{ id: engine-out, mass: -152 kg, place: -100 mm }, { id: engine-in, mass: 214 kg, place: -60 mm }]',
    around,
  );
  expect(result(bench, 'planned/mass-added', 'added', 'kg')).toBeCloseTo(62, 6);
});

it('leaves the lane change to the certifier when the centre of mass moved', async () => {
  const { result: outcome, one } = await examineNote('mass', 'centre-of-mass-moved: yes', around);
  expect(outcome('tests.lane-change')).toBe('missing');
  expect(one('mass.cg-moved')).toMatchObject({
    result: 'unclear',
    todo: expect.stringContaining('tests.lane-change'),
  });
});

it('asks for everything in an empty note', async () => {
  const { findings, one } = await examineNote('mass', '', around);
  expect(findings.filter((f) => !['missing', 'out'].includes(f.result)).map((f) => f.item)).toEqual(['vehicle.gvm']);
  expect(one('mass.laden').todo).toContain('now.front');
});

it('refuses a mass in the wrong unit, where it stands', () => {
  expect(problemsOf('mass', 'now: { front: 655 mm }')).toMatchObject([
    { code: 'quantity', line: 4, found: expect.stringContaining('mm') },
  ]);
});
