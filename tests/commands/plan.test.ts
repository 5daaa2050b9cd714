import { describe, expect, it } from 'vitest';
import type { planJson } from '../../src/app/results/plan-json.js';
import { folderWith } from '../project/scratch.js';
import { gusset } from './run.js';

type Json = ReturnType<typeof planJson>;

const car = (registration: string, more = '') => `---
title: A car made up for tests
vehicle: { make: Examplia, model: One, built: 1984-05, category: MA, registration: ${registration}, seats: 5 }
original: { mass: 1120 kg, induction: na, wheelbase: 2640 mm, gvm: 1620 kg }
${more}---
`;
const planned = `---
kind: body-structure
title: Crossmember to be made anew
structure-cut: yes
pieces:
  - id: crossmember
    role: replacement
    was: { section: HAT 60x40x20x2.0, steel: unknown, wall: 2.0 ± 0.01 mm }
    planned: { section: RHS 50x30x2.5 (EN 10219), steel: S355, wall: 2.5 ± 0.01 mm }
    welds: [{ id: rail-left, type: fillet, leg: 3 mm, length: 110 mm, thickness: 2.0 mm, category: GP, metal: 490 MPa, load-case: drop }]
---

To be made.
`;
const build = (notes: Readonly<Record<string, string>>, md = car('VIC')) =>
  folderWith({
    'build.md': md,
    ...Object.fromEntries(Object.entries(notes).map(([name, text]) => [`notes/${name}`, text])),
  });
const json = async (...args: string[]): Promise<Json> =>
  JSON.parse((await gusset('plan', ...args, '--format', 'json')).out) as Json;

describe('a build with only planned values', () => {
  it('holds them against the limits already', async () => {
    const plan = await json(build({ '020-crossmember.md': planned }));
    const ratio = plan.limits.find((l) => l.item === 'body.thickness-ratio')!;
    // 2.5 times the original thickness: common practice, no source. 2.5 / 2.0 is 1.25.
    expect(ratio).toMatchObject({ limit: { max: 2.5, basis: 'practice' }, kinds: ['body-structure'] });
    expect(ratio.findings).toMatchObject([{ subject: 'crossmember', outcome: 'within-usual-practice' }]);
  });

  it('names the sections and codes that are touched, with their edition', async () => {
    const { sections } = await json(build({ '020-crossmember.md': planned }));
    expect(sections.find((s) => s.section === 'LH')).toMatchObject({
      codes: expect.arrayContaining(['LT1']),
      kinds: ['body-structure'],
    });
    // Section LT, version 2.0, January 2011: its cover page.
    expect(sections.find((s) => s.section === 'LT')).toMatchObject({ edition: '2.0, January 2011' });
  });

  it('asks about unknown steel, a load case that nobody agreed to, and the hold point', async () => {
    const { questions } = await json(
      build(
        { '020-crossmember.md': planned },
        car('VIC', 'load-cases: [{ id: drop, says: gearbox on the crossmember, force: 1.4 kN, factor: 3 }]\n'),
      ),
    );
    expect(questions.find((q) => q.about === 'steel')?.asks).toContain('crossmember');
    expect(questions.find((q) => q.about === 'load-case')).toMatchObject({
      of: 'drop',
      asks: expect.stringContaining('gearbox on the crossmember'),
    });
    expect(
      questions
        .filter((q) => q.about === 'release')
        .map((q) => q.asks)
        .join(' '),
    ).toContain('`tacked`');
    const agreed = await json(
      build(
        { '020-crossmember.md': planned },
        car(
          'VIC',
          'load-cases: [{ id: drop, says: gearbox, force: 1.4 kN, factor: 3, agreed-with: R. Ansell, agreed-on: 2026-02-10 }]\n',
        ),
      ),
    );
    expect(agreed.questions.filter((q) => q.about === 'load-case')).toEqual([]);
  });

  it('tells which of the baseline the note has already', async () => {
    const { baseline } = await json(build({ '020-crossmember.md': planned }));
    expect(baseline.find((b) => b.path === 'pieces.[].was.wall')).toMatchObject({
      note: '020-crossmember',
      written: true,
      unit: 'mm',
      how: expect.stringContaining('caliper'),
    });
    expect(baseline.find((b) => b.path === 'pieces.[].was.loss')).toMatchObject({ written: false });
    expect(baseline.some((b) => /planned|now/.test(b.path))).toBe(false);
  });
});

describe('kinds named on the command line', () => {
  it('plan a build that has no note yet', async () => {
    const folder = build({});
    const plan = await json(folder, '--kinds', 'engine,mass');
    expect(plan.kinds).toEqual([
      { id: 'engine', title: 'Engine', notes: [] },
      { id: 'mass', title: 'Mass', notes: [] },
    ]);
    expect(plan.sheets.map((s) => s.id)).toEqual(
      expect.arrayContaining(['engine-capacity', 'axle-load-change', 'centre-of-mass-height']),
    );
    expect(plan.baseline.map((b) => b.path)).toEqual(expect.arrayContaining(['was.front', 'was.rear']));
    // 5.0 cm3/kg of 1120 kg for a naturally aspirated car of 1100 kg or more: VSB 14, LA, Table LA1 (quoted).
    expect(plan.limits.find((l) => l.item === 'engine.capacity')?.limit).toMatchObject({
      max: 5600,
      unit: 'cm3',
      recommended: true,
    });
    // The gross vehicle mass of build.md.
    expect(plan.limits.find((l) => l.item === 'mass.laden')?.limit).toMatchObject({ max: 1620, unit: 'kg' });
  });

  it('are planned beside the notes there are, each once', async () => {
    const plan = await json(build({ '020-crossmember.md': planned }), '--kinds', 'body-structure,mass,mass');
    expect(plan.kinds.map((k) => [k.id, k.notes])).toEqual([
      ['body-structure', ['020-crossmember']],
      ['mass', []],
    ]);
  });

  it('are needed where there is no note, which is said', async () => {
    const { code, err } = await gusset('plan', build({}));
    expect(code).toBe(2);
    expect(err).toContain('--kinds engine,brakes');
  });

  it('are known by their names', async () => {
    const { code, err } = await gusset('plan', build({}), '--kinds', 'engin');
    expect(code).toBe(2);
    expect(err).toContain('did you mean `engine`?');
  });
});

describe('by the car', () => {
  it('leaves out what is asked in another state, and says why', async () => {
    const brakes = async (registration: string) => json(build({}, car(registration)), '--kinds', 'test');
    const nsw = await brakes('NSW');
    expect(nsw.tests.map((t) => t.item)).toContain('brakes.pretest-pedal');
    const vic = await brakes('VIC');
    expect(vic.tests.map((t) => t.item)).not.toContain('brakes.pretest-pedal');
    expect(vic.leftOut.find((l) => l.item === 'brakes.pretest-pedal')?.because).toContain('applies in NSW');
  });

  it('names figures that nobody confirmed, and takes those of the own copy', async () => {
    const without = await json(build({}), '--kinds', 'mass');
    expect(without.figures.map((f) => f.item)).toContain('mass.axle-front');
    const folder = folderWith({
      'build.md': car('VIC'),
      'limits.yaml':
        "figures:\n  - { item: mass.axle-front, max: 760 kg, edition: '1984', clause: plate, read-by: JO, on: 2026-01-05 }\n",
    });
    const own = await json(folder, '--kinds', 'mass');
    expect(own.figures.map((f) => f.item)).not.toContain('mass.axle-front');
    expect(own.limits.find((l) => l.item === 'mass.axle-front')?.limit).toMatchObject({
      max: 760,
      basis: 'own-copy',
      readBy: 'JO',
    });
  });

  it('asks what stops a note before it is begun', async () => {
    const { questions } = await json(build({}), '--kinds', 'seating');
    expect(questions.filter((q) => q.about === 'stop').map((q) => q.item)).toEqual(
      expect.arrayContaining(['seating.anchorages-kept', 'seating.airbags-kept']),
    );
  });
});

it('puts hold points in the order in which they are covered', async () => {
  const { points } = await json(build({ '020-crossmember.md': planned }), '--kinds', 'seating,mass');
  const stages = [
    'dismantled',
    'cut',
    'machined',
    'tacked',
    'welded',
    'assembled',
    'painted',
    'trimmed',
    'tested',
    'finished',
  ];
  const at = points.map((p) => stages.indexOf(p.before));
  expect(at).toEqual([...at].sort((a, b) => a - b));
  expect(points.find((p) => p.id === 'tacked')).toMatchObject({
    level: 'hold',
    during: 'tacked',
    before: 'welded',
    note: '020-crossmember',
  });
});

it('has a stable form', async () => {
  const plan = await json(build({ '020-crossmember.md': planned }));
  expect(plan).toMatchObject({ form: 'gusset-plan/2', title: 'A car made up for tests' });
  expect(Object.keys(plan)).toEqual([
    'form',
    'build',
    'title',
    'kinds',
    'sections',
    'limits',
    'figures',
    'leftOut',
    'sheets',
    'baseline',
    'points',
    'tests',
    'questions',
  ]);
  expect(Object.keys(plan.points[0]!)).toEqual(['kind', 'note', 'id', 'shows', 'parts', 'level', 'during', 'before']);
});

it('reads well in a terminal, and certifies nothing', async () => {
  const { code, out } = await gusset('plan', build({ '020-crossmember.md': planned }));
  expect(code).toBe(0);
  for (const title of [
    'Sections and modification codes touched',
    'Limits',
    'Figures to read in the own copy',
    'Calculations to prepare',
    'Baseline',
    'Measuring card',
    'Tests and reports to book',
    'Questions for the certifier',
  ])
    expect(out).toContain(title);
  expect(out).toMatch(/\[ \] before `welded`, hold: Each new piece tacked/);
  expect(out).toContain('Gusset certifies nothing');
  expect(out.split('\n').filter((line) => line.length > 100)).toEqual([]);
});
