import { describe, expect, it } from 'vitest';
import { type Around, examineNote, problemsOf } from './bench.js';

const K = 'mounts';
const cars = (torque = '400.0 ± 0.1 N·m', more = '') => ({
  '020-engine.md': `kind: engine\ntorque: ${torque}`,
  '030-gearbox.md': `kind: gearbox\nratios: [{ id: 1st, ratio: 3.00 }, { id: 5th, ratio: 0.80 }]${more}`,
});
const loadCase = (factor = '1') =>
  `load-cases: [{ id: engine-torque, says: first gear, factor: ${factor}, agreed-with: R. Ansell (invented), agreed-on: 2026-02-10 }]`;
const around: Around = { notes: cars(), more: loadCase() };
const side = (rating: string, rest = '') => `
spacing: 600.0 ± 0.1 mm
load-case: engine-torque
mounts: [{ id: left, takes: torque, load: 80.00 ± 0.01 kg, rating: ${rating}${rest} }]`;

// 400 N·m × 3.00 over 600 mm: 2000 N; with 80 kg at 9.80665 m/s² 2784.5 N. Equilibrium of moments, worked by hand.
describe('torque reaction through first gear', () => {
  it.each([
    ['2785 N', 'unclear'],
    ['2800 N', 'met'],
    ['2760 N', 'against'],
  ])('a mount rated %s is %s', async (rating, outcome) => {
    const { one, runs } = await examineNote(K, side(rating.replace(' N', ' ± 1 N')), around);
    expect(one('mounts.torque-reaction', 'left').result).toBe(outcome);
    expect(runs.find((r) => r.id === '010-tried/left/mount-reaction')!.results!['pressed']!.si).toBeCloseTo(
      2784.532,
      3,
    );
  });

  it('takes the factor of the load case on the torque', async () => {
    const { runs } = await examineNote(K, side('9 kN'), { ...around, more: loadCase('2') });
    expect(runs.find((r) => r.sheet.id === 'mount-reaction')!.results!['pressed']!.si).toBeCloseTo(4784.532, 3);
    const { factor } = runs.find((r) => r.sheet.id === 'utilisation')!.inputs;
    expect(factor).toMatchObject({ si: 1, origin: { kind: 'given', text: 'already in the demand' } });
  });

  it('takes the final drive where it sits in the same housing, and the converter', async () => {
    const with370 = { ...around, original: { 'final-drive': '3.70' } };
    const pair = async (note: string) =>
      (await examineNote(K, note, with370)).runs.find((r) => r.sheet.id === 'mount-reaction')!.results!['pair']!.si;
    expect(await pair(side('9 kN'))).toBeCloseTo(2000, 9);
    expect(await pair(`layout: transaxle${side('9 kN')}`)).toBeCloseTo(7400, 9);
    expect(await pair(`converter-ratio: 2.0${side('9 kN')}`)).toBeCloseTo(4000, 9);
  });

  it('is capacity only without a load case, and not yet agreed without the certifier', async () => {
    expect(
      (await examineNote(K, side('9 kN').replace('load-case: engine-torque\n', ''), around)).one(
        'mounts.torque-reaction',
      ),
    ).toMatchObject({ result: 'missing', marks: ['capacity only'] });
    expect((await examineNote(K, side('9 kN'), { notes: cars() })).one('mounts.torque-reaction')).toMatchObject({
      result: 'missing',
      says: expect.stringContaining('no load case `engine-torque`') as string,
    });
    const unagreed = loadCase().replace(', agreed-with: R. Ansell (invented), agreed-on: 2026-02-10', '');
    expect(
      (await examineNote(K, side('9 kN'), { ...around, more: unagreed })).one('mounts.torque-reaction'),
    ).toMatchObject({
      outcome: 'not-checked',
      marks: expect.arrayContaining(['proposed: load case not yet agreed with the certifier']) as string[],
      says: expect.stringContaining('margin') as string,
    });
  });

  // 2000 N up less 784.5 N of weight: 1215.5 N, worked by hand.
  it('compares the pull on the other side with what holds it', async () => {
    const { result: outcome } = await examineNote(K, side('9 kN', ', rating-up: 1300 N'), around);
    expect(outcome('mounts.torque-reaction', 'left-lifted')).toBe('met');
    expect(
      (await examineNote(K, side('9 kN', ', rating-up: 1100 N'), around)).result(
        'mounts.torque-reaction',
        'left-lifted',
      ),
    ).toBe('against');
  });

  it('names what is missing in this note and in others', async () => {
    const { one } = await examineNote(K, side('9 kN').replace('spacing: 600.0 ± 0.1 mm\n', ''), { more: loadCase() });
    for (const part of ['spacing (tape', 'the engine note', 'the gearbox note'])
      expect(one('mounts.torque-reaction').todo).toContain(part);
  });

  it('a mount near the axis takes its own load case', async () => {
    const rear = 'mounts: [{ id: rear, takes: weight, rating: 4.0 kN, load-case: drop }]';
    const drop =
      'load-cases: [{ id: drop, says: shock, force: 1.4 kN, factor: 3, agreed-with: R. Ansell (invented), agreed-on: 2026-02-10 }]';
    expect((await examineNote(K, rear, { ...around, more: drop })).result('mounts.torque-reaction', 'rear')).toBe(
      'against',
    );
    expect(
      (await examineNote(K, rear.replace('4.0 kN', '4.3 kN'), { ...around, more: drop })).result(
        'mounts.torque-reaction',
        'rear',
      ),
    ).toBe('met');
  });

  it('refuses a mass as a rating and a bare spacing', () => {
    expect(problemsOf(K, side('900 kg'))).toMatchObject([
      { code: 'quantity', found: expect.stringContaining('kg') as string },
    ]);
    expect(problemsOf(K, 'spacing: 600')).toMatchObject([{ code: 'quantity' }]);
  });

  it('is asked once: the engine note leaves it to the mounts note', async () => {
    expect((await examineNote(K, side('9 kN'), around)).all('mounts.torque-reaction').map((f) => f.note)).toEqual([
      '010-tried',
    ]);
    expect((await examineNote('engine', 'torque: 400 N·m')).all('mounts.torque-reaction')).toHaveLength(1);
  });
});

// EN 10219 RHS 50×30×2.5: W 4.52 cm³ (table page of EN 10219:2006). 2784.5 N at 100 mm: 278.45 N·m, 61.6 MPa.
describe('brackets', () => {
  const bracket = (reach: string, steel = 'S235') =>
    side('9 kN', `, brackets: [{ id: body, section: RHS 50x30x2.5 (EN 10219), steel: ${steel}, reach: ${reach} }]`);
  it('bend less than their steel yields', async () => {
    const found = (await examineNote(K, bracket('100.0 ± 0.5 mm'), around)).one('mounts.bracket-stress', 'left-body');
    expect(found.result).toBe('met');
    expect(Math.abs(found.measured!.si / 61.6e6 - 1)).toBeLessThan(0.003);
  });

  it.each([
    ['375 mm', 'met'],
    ['381.5 mm', 'unclear'],
    ['390 mm', 'against'],
  ])('reach of %s in S235: %s', async (reach, outcome) => {
    expect(
      (await examineNote(K, bracket(reach.replace(' mm', ' ± 1 mm')), around)).result('mounts.bracket-stress'),
    ).toBe(outcome);
  });

  it('need a known steel and a load case', async () => {
    expect((await examineNote(K, bracket('100 mm', 'unknown'), around)).result('mounts.bracket-stress')).toBe(
      'missing',
    );
    expect(
      (await examineNote(K, bracket('100 mm').replace('load-case: engine-torque\n', ''), around)).one(
        'mounts.bracket-stress',
      ),
    ).toMatchObject({ result: 'missing', says: expect.stringContaining('under engine torque alone') as string });
  });

  it('are not asked for where there are none; their welds go by their own load case', async () => {
    expect((await examineNote(K, side('9 kN'), around)).all('mounts.bracket-stress')).toEqual([]);
    const welded = bracket('100 mm').replace(
      'reach: 100 mm',
      'reach: 100 mm, welds: [{ id: root, type: fillet, leg: 3 mm, length: 100 mm, thickness: 3.0 mm, other: 5 mm, joint: tee, steel: S235, category: GP, metal: 490 MPa }]',
    );
    expect((await examineNote(K, welded, around)).one('body.load', 'left-body-root').marks).toEqual(['capacity only']);
  });
});

// Common practice, no source: the gap at rest must be greater than the movement.
describe('movement and gaps', () => {
  const moves = 'movement-drive: 12.0 ± 0.5 mm\nmovement-overrun: 9 mm\n';
  it.each([
    ['13.5 ± 0.5 mm', 'met'],
    ['12.0 ± 0.5 mm', 'unclear'],
    ['11.0 ± 0.2 mm', 'against'],
  ])('a gap of %s against the greater movement of 12 mm: %s', async (gap, outcome) => {
    expect(
      (await examineNote(K, `${moves}gaps: [{ id: firewall, gap: ${gap} }]`)).result('mounts.gap', 'firewall'),
    ).toBe(outcome);
  });

  it('reach the gaps of the gearbox note, whichever comes first', async () => {
    const gearbox = 'kind: gearbox\ngaps: [{ id: tunnel, gap: 11.0 ± 0.2 mm }]';
    for (const name of ['005-gearbox.md', '020-gearbox.md'])
      expect((await examineNote(K, moves, { notes: { [name]: gearbox } })).result('mounts.gap', 'tunnel')).toBe(
        'against',
      );
  });

  it('are stated together', async () => {
    expect((await examineNote(K, moves)).one('mounts.movement')).toMatchObject({
      result: 'met',
      answer: '12.0 ± 0.5 mm under drive, 9 mm on the overrun',
    });
    expect((await examineNote(K, 'movement-drive: 12 mm')).result('mounts.movement')).toBe('missing');
  });
});

describe('hardness of the rubber', () => {
  it.each([
    ['60', 'met'],
    ['66 ± 0.5', 'against'],
  ])('%s points of Shore A against 55 to 65: %s', async (hardness, outcome) => {
    const note = side('9 kN', `, hardness: ${hardness}, hardness-maker: { least: 55, greatest: 65, from: maker }`);
    expect((await examineNote(K, note, around)).result('mounts.hardness', 'left')).toBe(outcome);
  });
  it('is asked for where it was measured', async () => {
    expect((await examineNote(K, side('9 kN'), around)).all('mounts.hardness')).toEqual([]);
  });
});

describe('bolts', () => {
  const bolt = (rest: string) => `bolts: [{ id: block, thread: M10x1.5, class: '8.8', engaged: 14 ± 0.2 mm, ${rest} }]`;
  it('by the rule of thumb, which is recalled and so gives no outcome', async () => {
    expect((await examineNote(K, bolt('tapped: aluminium'))).one('fasteners.engagement', 'block')).toMatchObject({
      result: 'unconfirmed',
      says: expect.stringContaining('at least 20 mm') as string,
    });
    expect((await examineNote(K, bolt(''))).one('fasteners.engagement')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('bolts.block.tapped') as string,
    });
  });

  // M10×1.5, equal strengths: L_e 7.446 mm by FED-STD-H28/2B with 6g/6H limits (worked in the reference of the sheet).
  it('by the strength of both threads, where that is known', async () => {
    const strong = (await examineNote(K, bolt('tapped: steel, tapped-strength: 800 MPa'))).one('fasteners.engagement');
    expect(strong).toMatchObject({ result: 'met', basis: 'quoted' });
    expect(strong.limit!.min!.si).toBeCloseTo(0.007446, 5);
    expect(
      (await examineNote(K, bolt('tapped: aluminium, tapped-strength: 180 MPa'))).result('fasteners.engagement'),
    ).toBe('against');
  });

  it('state grade and locking', async () => {
    const { result: outcome } = await examineNote(K, bolt('tapped: steel, locking: spring washer'));
    expect([outcome('fasteners.grade'), outcome('fasteners.locking')]).toEqual(['met', 'met']);
  });
});

it('a filled note has nothing against it but photos, papers and what must be read in the own copy', async () => {
  const note = `${side('9 kN', ', hardness: 60, hardness-maker: { least: 55, greatest: 65, from: maker }, brackets: [{ id: body, section: RHS 50x30x3 (EN 10219), steel: S355, reach: 95 mm }]')}
movement-drive: 12 mm
movement-overrun: 9 mm
gaps: [{ id: firewall, to: firewall, gap: 20 mm }]
bolts: [{ id: block, thread: M10x1.5, class: '8.8', tapped: steel, tapped-strength: 400 MPa, engaged: 20 mm, locking: spring washer }]
torques: [{ id: block, joint: bracket to block, thread: M10x1.5, torque: 45 ± 1 N·m, maker: { least: 40 N·m, greatest: 50 N·m, from: manual } }]
held-if-torn: yes
clear-of-heat: yes
welder: M. Brandt (invented)
answers: { engine.fasteners: yes, fasteners.appendix: yes }`;
  const { findings } = await examineNote(K, note, around);
  const own = findings.filter((f) => f.note === '010-tried' && f.form !== 'evidence' && f.form !== 'order');
  expect(own.filter((f) => f.result !== 'met').map((f) => [f.item, f.result])).toEqual([]);
});

it('an empty note says what is missing and does not fail', async () => {
  const { all, result: outcome } = await examineNote(K, '');
  for (const item of [
    'mounts.torque-reaction',
    'mounts.gap',
    'mounts.movement',
    'mounts.retention',
    'mounts.heat',
    'mounts.drawing',
    'engine.mounts',
    'fasteners.engagement',
    'fasteners.locking',
    'body.weld-standard',
  ])
    expect(outcome(item), item).toBe('missing');
  expect(all('mounts.shown').map((f) => [f.subject, f.result])).toEqual([
    ['mounts-tacked', 'missing'],
    ['mounts-fitted', 'missing'],
  ]);
});
