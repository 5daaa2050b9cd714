import { describe, expect, it } from 'vitest';
import { type Around, examineNote, problemsOf } from './bench.js';

const K = 'exhaust';
const SA: Around = { vehicle: { registration: 'SA' } };
/** On a text that was replaced nothing conforms until the builder has confirmed the figure. */
const onReplacedText = (result: string) => (result === 'met' ? 'unconfirmed' : result);
const outlet = (rest: string) => `outlet: { form: horizontal, ${rest} }`;

// South Australia, Vehicle Standards Rules 1999, r. 148 (replaced in 2013): outlet under 750 mm, level to 45 degrees down,
// 40 mm past the outermost open floor joint, no further than the widest point, to the rear or the right; upright ones 150 mm above the cab.
describe('outlet, South Australia', () => {
  it.each([
    ['height: 749 ± 0.5 mm', 'exhaust.outlet-height', 'met'],
    ['height: 750.0 ± 0.1 mm', 'exhaust.outlet-height', 'unclear'],
    ['height: 751 ± 0.5 mm', 'exhaust.outlet-height', 'against'],
    ['past-joint: 41 ± 1 mm', 'exhaust.outlet-joint', 'met'],
    ['past-joint: 39 ± 0.5 mm', 'exhaust.outlet-joint', 'against'],
    ['past-side: -1 ± 1 mm', 'exhaust.outlet-side', 'met'],
    ['past-side: 2 ± 1 mm', 'exhaust.outlet-side', 'against'],
    ['slope: 43.5 ± 1 deg, slopes: down', 'exhaust.outlet-angle', 'met'],
    ['slope: 46 ± 0.5 deg, slopes: down', 'exhaust.outlet-angle', 'against'],
    ['slope: 5 ± 1 deg, slopes: up', 'exhaust.outlet-angle', 'against'],
    ['slope: 5 deg', 'exhaust.outlet-angle', 'missing'],
    ['points: rear', 'exhaust.outlet-direction', 'met'],
    ['points: right', 'exhaust.outlet-direction', 'met'],
    ['points: left', 'exhaust.outlet-direction', 'against'],
    ['height: 300 mm', 'exhaust.outlet-above-cab', 'out'],
  ])('%s: %s is %s', async (rest, item, outcome) => {
    const found = (await examineNote(K, outlet(rest), SA)).one(item);
    expect(found.result).toBe(found.of === 'requirement' ? onReplacedText(outcome) : outcome);
  });

  it.each([
    ['151 ± 1 mm', 'met'],
    ['149 ± 0.5 mm', 'against'],
  ])('an upright outlet %s above the cab: %s', async (above, outcome) => {
    const found = await examineNote(K, `outlet: { form: vertical, above-cab: ${above}, height: 1800 mm }`, SA);
    expect([found.result('exhaust.outlet-above-cab'), found.result('exhaust.outlet-height')]).toEqual([
      onReplacedText(outcome),
      'out',
    ]);
  });

  it('is marked as a text that was replaced, and does not apply elsewhere', async () => {
    expect((await examineNote(K, outlet('height: 300 mm'), SA)).one('exhaust.outlet-height').marks).toContain(
      'superseded text',
    );
    expect((await examineNote(K, outlet('height: 800 mm'))).result('exhaust.outlet-height')).toBe('out');
  });

  it('refuses a height in kg and a bare number', () => {
    expect(problemsOf(K, outlet('height: 300 kg'))).toMatchObject([
      { code: 'quantity', found: expect.stringContaining('kg') as string },
    ]);
    expect(problemsOf(K, outlet('height: 300'))).toMatchObject([{ code: 'quantity' }]);
  });
});

it('states the outlet in words', async () => {
  const whole = outlet('height: 310 mm, points: rear, slope: 8 deg, slopes: down, near: "tailgate, 420 mm"');
  expect((await examineNote(K, whole)).one('exhaust.outlet')).toMatchObject({
    result: 'met',
    answer: '310 mm above the ground, to the rear, 8 deg down, nearest opening: tailgate, 420 mm',
  });
  expect((await examineNote(K, outlet('height: 310 mm'))).result('exhaust.outlet')).toBe('missing');
});

describe('what it passes', () => {
  const place = (rest: string) => `clearances: [{ id: here, ${rest} }]`;

  // Light vehicle inspection manual, items on gas: 150 mm, with a shield 50 mm.
  it.each([
    ['151 ± 1 mm', 'no', 'met'],
    ['149 ± 0.5 mm', 'no', 'against'],
    ['51 ± 1 mm', 'yes', 'met'],
    ['49 ± 0.5 mm', 'yes', 'against'],
  ])('a gas line at %s, shielded %s: %s', async (gap, shielded, outcome) => {
    expect(
      (await examineNote(K, place(`to: gas-line, gap: ${gap}, shielded: ${shielded}`))).result(
        'fuel.gas-exhaust',
        'here',
      ),
    ).toBe(outcome);
  });

  it('petrol lines wait for the own copy; other parts for what was agreed', async () => {
    expect((await examineNote(K, place('to: fuel-line, gap: 90 mm'))).result('fuel.exhaust-distance', 'here')).toBe(
      'unconfirmed',
    );
    const wiring = 'to: wiring, gap: 40 ± 1 mm, maker: { least: 35 mm, from: agreed with R. Ansell (invented) }';
    expect((await examineNote(K, place(wiring))).result('exhaust.clearance', 'here')).toBe('met');
    expect((await examineNote(K, place(wiring.replace('40', '30')))).result('exhaust.clearance', 'here')).toBe(
      'against',
    );
    expect((await examineNote(K, place('to: wiring, gap: 40 mm'))).result('exhaust.clearance', 'here')).toBe(
      'unconfirmed',
    );
    expect((await examineNote(K, place('to: wiring'))).one('exhaust.clearance')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('clearances.here.gap (stepped gauge') as string,
    });
  });

  it('tells temperatures and how far they are from the limit', async () => {
    const hot = (value: string) =>
      place(
        `to: floor, gap: 40 mm, temperature: ${value}, temperature-maker: { greatest: 80 degC, from: maker of the mat }`,
      );
    expect((await examineNote(K, hot('62 ± 2 degC'))).one('exhaust.heat', 'here')).toMatchObject({
      result: 'met',
      says: expect.stringContaining('margin 18 K') as string,
    });
    expect((await examineNote(K, hot('79 ± 2 degC'))).result('exhaust.heat')).toBe('unclear');
    expect((await examineNote(K, hot('90 ± 2 degC'))).one('exhaust.heat').says).toContain('beyond it by 10 K');
    expect((await examineNote(K, place('to: floor, gap: 40 mm'))).all('exhaust.heat')).toEqual([]);
  });
});

describe('emission equipment', () => {
  it.each([
    ['catalyst: kept', 'met'],
    ['catalyst: removed', 'against'],
    ['catalyst: never-sold\ncatalyst-why: built in 1984', 'out'],
    ['catalyst: never-sold', 'missing'],
    ['', 'missing'],
  ])('%j: %s; the rule was recalled, and is marked so', async (note, outcome) => {
    expect((await examineNote(K, note)).result('exhaust.catalyst')).toBe(outcome);
  });

  it('a blow-off valve to the open air is refused in South Australia (page on cars)', async () => {
    expect((await examineNote(K, 'open-blow-off: yes', SA)).result('engine.blow-off')).toBe('against');
    expect((await examineNote(K, 'open-blow-off: yes')).result('engine.blow-off')).toBe('out');
  });

  it('sensors stay', async () => {
    expect((await examineNote(K, 'sensors: no')).result('exhaust.sensors')).toBe('against');
  });
});

// Victoria, Environment Protection Regulations 2021, r. 143: 96 dB(A) for cars built before 1 November 1983, 90 from then on.
// New South Wales, Noise Control Regulation 2008, cl. 4 (replaced): the approved level plus 5 dB(A).
describe('stationary noise', () => {
  const noise = (rest: string) => `noise: { ${rest} }`;
  it.each([
    ['1983-10', '80.0 ± 0.1 dB(A)', 'at most 96 dB(A)'],
    ['1983-10', '99.0 ± 0.1 dB(A)', 'at most 96 dB(A)'],
    ['1983-11', '80.0 ± 0.1 dB(A)', 'at most 90 dB(A)'],
  ])('Victoria, built %s, %s: shown beside %s, and does not count without a test note', async (built, now, limit) => {
    const { one } = await examineNote(K, noise(`approval: none, now: ${now}`), {
      vehicle: { registration: 'VIC', built },
    });
    expect(one('tests.noise')).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringMatching(
        new RegExp(`${limit.replace(/[()]/g, '\\$&')}; the result does not count: .*a note of its own`),
      ),
    });
  });

  it('New South Wales, approved with 84 dB(A): the same', async () => {
    const around: Around = { vehicle: { registration: 'NSW', built: '2008-05' } };
    const of = async (rest: string) => (await examineNote(K, noise(rest), around)).one('tests.noise-signature');
    expect(await of('approval: ADR 83/00, signature: 84 dB(A), now: 80.0 ± 0.1 dB(A)')).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringContaining('at most 89 dB(A)'),
    });
    expect((await of('approval: ADR 83/00, now: 80.0 ± 0.1 dB(A)')).todo).toContain('noise.signature');
  });

  it('the background lies 10 dB below (common practice), and the sheet takes it off', async () => {
    const { result: outcome, runs } = await examineNote(
      K,
      noise('approval: none, now: 90.0 ± 0.1 dB(A), background: 80.5 ± 0.1 dB(A)'),
    );
    expect(outcome('tests.noise-background')).toBe('against');
    // 90 dB less a background of 80 dB is 89.54 dB: subtraction of sound energies, exact.
    expect(
      (await examineNote(K, noise('approval: none, now: 90.0 dB(A), background: 80.0 dB(A)'))).runs[0]!.results![
        'source'
      ]!.si,
    ).toBeCloseTo(89.54, 2);
    expect(runs).toHaveLength(1);
  });

  it('is left to the test note where there is one', async () => {
    const test = { notes: { '020-test.md': 'kind: test\ntest: noise\nnoise: { approval: none }' } };
    expect((await examineNote(K, noise('approval: none'), test)).all('tests.noise').map((f) => f.note)).not.toContain(
      '010-tried',
    );
  });

  it('states the noise rule', async () => {
    expect((await examineNote(K, noise('approval: none'))).one('noise.rule')).toMatchObject({
      answer: 'not approved to ADR 83/00',
    });
  });
});

it('the record of the leak test is its evidence', async () => {
  expect((await examineNote(K, 'leak-test: outlet held shut, joints sprayed')).result('exhaust.leak-test')).toBe('met');
});

it('back pressure is compared with its maker where it was measured', async () => {
  expect((await examineNote(K, '')).all('exhaust.back-pressure')).toEqual([]);
  expect(
    (await examineNote(K, 'back-pressure: 18 ± 1 kPa\nback-pressure-maker: { greatest: 25 kPa, from: manual }')).result(
      'exhaust.back-pressure',
    ),
  ).toBe('met');
});

it('a filled note has nothing against it but photos, papers, what must be read in the own copy and the test of the noise', async () => {
  const note = `${outlet('height: 310 mm, points: rear, slope: 8 deg, slopes: down, past-joint: 160 mm, past-side: -15 mm')}
clearances: [{ id: line, to: fuel-line, gap: 90 mm, shielded: no }, { id: floor, to: floor, gap: 35 mm, shielded: yes, temperature: 62 degC }]
catalyst: never-sold
catalyst-why: both built in 1984
sensors: yes
open-blow-off: no
leak-test: outlet held shut, joints sprayed
noise: { approval: none, now: 88.0 dB(A), background: 56 dB(A) }
answers: { exhaust.clear-of-lines: yes, engine.lines-protected: yes, exhaust.outlet-rule: ADR 42/02 clause 11 does not apply to 1984, engine.epa-guideline: yes }`;
  const { findings } = await examineNote(K, note);
  const own = findings.filter(
    (f) => !['met', 'out', 'unconfirmed'].includes(f.result) && f.form !== 'evidence' && f.form !== 'order',
  );
  expect(own.map((f) => f.item)).toEqual(['tests.noise']);
});

it('an empty note says what is missing and does not fail', async () => {
  const { result: outcome } = await examineNote(K, '', SA);
  for (const item of [
    'exhaust.outlet',
    'exhaust.outlet-joint',
    'exhaust.outlet-side',
    'exhaust.clearance',
    'exhaust.catalyst',
    'exhaust.sensors',
    'exhaust.clear-of-lines',
    'exhaust.leak-test',
    'exhaust.route-shown',
    'engine.noise-report',
    'tests.noise',
    'fuel.exhaust-distance',
    'noise.rule',
  ])
    expect(outcome(item), item).toBe('missing');
});
