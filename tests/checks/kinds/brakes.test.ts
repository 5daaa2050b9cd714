import { describe, expect, it } from 'vitest';
import { type Around, examineNote, problemsOf } from './bench.js';

const at = (registration: string): Around => ({ vehicle: { registration } });

const axle = (which: string, piston: string, radius: string) =>
  `  ${which}: { type: disc, pistons: 1, piston: ${piston}, mount: floating, friction: 0.38, radius: ${radius}, rolling: 300 mm, move: 0.6 mm, swell: 0.8 cm3, thickness: 21.8 mm, run-out: 0.05 mm }`;
const system = (more = 'split: axles') => `
pedal-force: 350 N
now:
  pedal-ratio: 4.0
  layout: tandem
  bore: 22.2 mm
  stroke: 34 mm
  ${more}
${axle('front', '54 mm', '110 mm')}
${axle('rear', '34 mm', '115 mm')}
laden: { front: 800 kg, rear: 800 kg, cg-height: 560 mm }`;
const weighed: Around = {
  original: { wheelbase: '2.6 m' },
  notes: {
    '005-mass.md':
      'kind: mass\nwas: { front: 700 kg, rear: 640 kg }\nnow: { front: 807.6923 kg, rear: 692.3077 kg }\ncg-height: 0.55 m',
  },
};

describe('pressure and balance', () => {
  // Worked by hand, regression only: 1400 N on 22.2 mm give 3.6169 MPa; T = 2 · 0.38 · p · A · r; 692.5 N·m and 4617 N at the front.
  it('goes from the pedal to the shares of both axles', async () => {
    const { runs } = await examineNote('brakes', system(), weighed);
    const result = (id: string, name: string) => runs.find((r) => r.id === `010-tried/${id}`)!.results![name]!.si;
    expect(result('unladen/brake-chain-tandem', 'frontPressure')).toBeCloseTo(3.6169e6, -3);
    expect(result('unladen/brake-chain-tandem', 'frontTorque')).toBeCloseTo(692.5, 1);
    expect(result('unladen/brake-chain-tandem', 'frontForce')).toBeCloseTo(4617, 0);
    expect(result('unladen/brake-chain-tandem', 'share')).toBeCloseTo(0.707, 3);
    expect(result('unladen/brake-chain-tandem', 'deceleration')).toBeCloseTo(4617 / 0.707 / 1500, 2);
  });

  it('finds the rate up to which the front locks first, by equilibrium, unladen and laden', async () => {
    const { one, runs } = await examineNote('brakes', system(), weighed);
    const share = runs.find((r) => r.id === '010-tried/unladen/brake-chain-tandem')!.results!['share']!.si;
    // z* = (φ L − b) / h with b = L · m_f / m.
    expect(one('brakes.front-first', 'unladen').measured!.si).toBeCloseTo(
      (share * 2.6 - 2.6 * (807.6923 / 1500)) / 0.55,
      9,
    );
    expect(one('brakes.front-first', 'laden').measured!.si).toBeCloseTo((share * 2.6 - 1.3) / 0.56, 9);
    expect(one('brakes.front-first', 'laden')).toMatchObject({ result: 'unconfirmed' });
    expect(one('brakes.balance-sheet')).toMatchObject({
      result: 'met',
      run: '010-tried/laden/brake-distribution',
    });
  });

  it('shows what is left with one circuit, by the split', async () => {
    const ids = async (split: string) =>
      (await examineNote('brakes', system(`split: ${split}`), weighed)).runs
        .filter((r) => r.sheet.id === 'brake-circuit-failure')
        .map((r) => r.id.split('/')[1]);
    expect(await ids('axles')).toEqual(['unladen-front', 'unladen-rear', 'laden-front', 'laden-rear']);
    expect(await ids('diagonal')).toEqual(['unladen-diagonal', 'laden-diagonal']);
  });

  it('takes the rolling radius from the note on wheels where it was not measured', async () => {
    const notes = {
      ...weighed.notes,
      '020-wheels.md':
        'kind: wheels-tyres\nfront: { now: { tyre: 195/65R15 91H } }\nrear: { now: { tyre: 195/65R15 91H } }',
    };
    const { runs } = await examineNote('brakes', system().replaceAll(', rolling: 300 mm', ''), { ...weighed, notes });
    const input = runs.find((r) => r.sheet.id === 'brake-chain-tandem')!.inputs['frontRolling'] as { si: number };
    // 635 mm by the ETRTO tables (memory), 3.05 diameters a turn.
    expect(input.si).toBeCloseTo((0.635 * 3.05) / (2 * Math.PI), 12);
  });

  it('reckons two cylinders on a balance bar, and drums by their factor', async () => {
    const note = system('split: axles')
      .replace(
        'layout: tandem\n  bore: 22.2 mm',
        'layout: dual\n  front-bore: 19.05 mm\n  rear-bore: 17.8 mm\n  bar-share: 55 %',
      )
      .replace(
        axle('rear', '34 mm', '115 mm'),
        '  rear: { type: drum, pistons: 1, piston: 19.05 mm, factor: 2.2, radius: 100 mm, rolling: 300 mm, move: 1.2 mm, swell: 0.5 cm3, diameter: 200.4 mm }',
      );
    const { runs, one } = await examineNote('brakes', note, weighed);
    expect(runs.map((r) => r.sheet.id)).toContain('brake-chain-dual');
    expect(one('brakes.disc-thickness', 'rear').result).toBe('out');
    expect(one('brakes.drum-diameter', 'rear').result).toBe('unconfirmed');
    expect(one('brakes.drum-diameter', 'front').result).toBe('out');
  });

  it('counts the fluid of a floating calliper once and of a fixed one twice', async () => {
    const used = async (note: string) => (await examineNote('brakes', note, weighed)).one('brakes.stroke');
    const floating = await used(system());
    // (2 · π/4 · 54² · 0.6 + 800) mm³ over π/4 · 22.2², and the same at the rear with 34 mm, of 34 mm: worked by hand.
    const bore = (Math.PI / 4) * 22.2 ** 2;
    const volume = (d: number, sides: number) => 2 * sides * (Math.PI / 4) * d ** 2 * 0.6 + 800;
    expect(floating.measured!.si).toBeCloseTo((volume(54, 1) + volume(34, 1)) / bore / 34, 6);
    const fixed = await used(system().replaceAll('mount: floating', 'mount: fixed'));
    expect(fixed.measured!.si).toBeCloseTo((volume(54, 2) + volume(34, 2)) / bore / 34, 6);
    expect([floating.result, fixed.result]).toEqual(['met', 'met']);
    expect((await used(system().replace('stroke: 34 mm', 'stroke: 10 mm'))).result).toBe('against');
  });

  it('says what is missing', async () => {
    const { one } = await examineNote(
      'brakes',
      system().replace('friction: 0.38, radius: 110 mm', 'radius: 110 mm'),
      weighed,
    );
    expect(one('brakes.front-first', 'unladen')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('now.front.friction') as string,
    });
    const without = await examineNote('brakes', system(), { original: { wheelbase: '2.6 m' } });
    expect(without.one('brakes.front-first', 'unladen').todo).toContain('the mass note');
  });

  it('refuses a bore in degrees and half a piston', () => {
    expect(problemsOf('brakes', 'now: { bore: 22.2 deg }')).toMatchObject([{ code: 'quantity' }]);
    expect(problemsOf('brakes', 'now: { front: { pistons: 1.5 } }')).toMatchObject([{ expected: 'a whole number' }]);
  });
});

// Brake assessment manual, New South Wales, v1.0 of October 2013 (published, currency not known).
describe('what New South Wales asks', () => {
  it.each([
    ['support-spacing: 300 ± 1 mm', 'brakes.line-support', 'unclear'],
    ['support-spacing: 298 ± 1 mm', 'brakes.line-support', 'met'],
    ['support-spacing: 302 ± 1 mm', 'brakes.line-support', 'against'],
    ['line-gap: 10.0 ± 0.2 mm', 'brakes.line-wheel', 'unclear'],
    ['line-gap: 10.5 ± 0.2 mm', 'brakes.line-wheel', 'met'],
    ['line-gap: 9.5 ± 0.2 mm', 'brakes.line-wheel', 'against'],
    ['fluid-mark: 100 ± 1 mm', 'brakes.fluid-mark', 'unclear'],
    ['fluid-mark: 98 ± 1 mm', 'brakes.fluid-mark', 'met'],
    ['fluid-mark: 102 ± 1 mm', 'brakes.fluid-mark', 'against'],
    ['threads-showing: 1', 'brakes.threads-showing', 'met'],
    ['threads-showing: 0', 'brakes.threads-showing', 'against'],
    ['pre-test: { pedal-force: 885 ± 1 N }', 'brakes.pretest-pedal', 'unclear'],
    ['pre-test: { pedal-force: 880 ± 1 N }', 'brakes.pretest-pedal', 'met'],
  ])('%s: %s is %s', async (field, item, outcome) => {
    expect((await examineNote('brakes', field, at('NSW'))).one(item)).toMatchObject({
      result: outcome,
      basis: 'published',
    });
    expect((await examineNote('brakes', field, at('VIC'))).result(item)).toBe('out');
  });

  it('leaves the stops to a note of the test, and the gap to one of clearances', async () => {
    const notes = {
      '020-test.md': 'kind: test\ntest: brakes\nbrakes: { stops: [{ id: p1, test: pre-test, pedal-force: 300 N }] }',
      '030-sweep.md': 'kind: clearance',
    };
    const { all } = await examineNote('brakes', '', { ...at('NSW'), notes });
    expect(all('brakes.pretest-pedal').map((f) => f.note)).toEqual(['020-test']);
    expect(all('brakes.line-wheel').every((f) => f.note !== '020-test')).toBe(true);
  });

  it('reads grade and locking from the bolts', async () => {
    const bolts = (grade: string, locking = ', locking: wire') =>
      `bolts: [{ id: calliper, thread: M12x1.75, class: ${grade}, tapped: steel, engaged: 16.0 mm${locking} }]`;
    const answers = async (text: string) => {
      const { result: outcome } = await examineNote('brakes', text, at('NSW'));
      return [outcome('brakes.fastener-grade'), outcome('brakes.locking')];
    };
    expect(await answers(bolts('8.8'))).toEqual(['met', 'met']);
    expect(await answers(bolts('SAE 5'))).toEqual(['met', 'met']);
    expect(await answers(bolts('10.9', ''))).toEqual(['met', 'missing']);
    expect(await answers(bolts('6.8'))).toEqual(['against', 'met']);
    expect(await answers(bolts('SAE 2'))).toEqual(['against', 'met']);
  });
});

describe('engagement, wear and answers', () => {
  it.each([
    // One, one and a half and two diameters: recalled rules of thumb, so no outcome.
    ['steel', '12.5 mm', 'unconfirmed', 0.012],
    ['cast-iron', '20.0 mm', 'unconfirmed', 0.018],
    ['aluminium', '26.0 mm', 'unconfirmed', 0.024],
  ])('a thread in %s that engages %s is %s', async (tapped, engaged, outcome, least) => {
    const { one } = await examineNote(
      'brakes',
      `bolts: [{ id: calliper, thread: M12x1.75, tapped: ${tapped}, engaged: ${engaged} }]`,
    );
    expect(one('fasteners.engagement', 'calliper')).toMatchObject({ result: outcome, basis: 'memory' });
    expect(one('fasteners.engagement', 'calliper').limit!.min!.si).toBeCloseTo(least, 12);
  });

  it('holds discs against the maker’s figures', async () => {
    const disc = (thickness: string) =>
      `now: { front: { type: disc, thickness: ${thickness}, run-out: 0.05 mm } }\nfront-maker: { thickness: { least: 20.4 mm, from: marked on the disc }, run-out: { greatest: 0.10 mm, from: maker of the disc } }`;
    const thickness = async (text: string) =>
      (await examineNote('brakes', disc(text))).result('brakes.disc-thickness', 'front');
    expect([
      await thickness('20.40 ± 0.02 mm'),
      await thickness('20.50 ± 0.02 mm'),
      await thickness('20.30 ± 0.02 mm'),
    ]).toEqual(['unclear', 'met', 'against']);
    expect((await examineNote('brakes', disc('21 mm'))).result('brakes.disc-runout', 'front')).toBe('met');
  });

  it('answers where two states ask the same', async () => {
    const { result: outcome } = await examineNote(
      'brakes',
      'engine-above-options: yes\nsmaller-or-lighter: no',
      at('SA'),
    );
    expect([outcome('engine.above-brakes-sa'), outcome('brakes.lighter-sa'), outcome('brakes.lighter-wa')]).toEqual([
      'unclear',
      'met',
      'out',
    ]);
  });

  it('asks for the step in tyre diameter only in New South Wales, where other tyres are recorded', async () => {
    const wheels = { '020-wheels.md': 'kind: wheels-tyres' };
    const asked = async (registration: string, notes: Record<string, string>) =>
      (await examineNote('brakes', '', { vehicle: { registration }, notes })).result('brakes.tyre-diameter');
    expect(await asked('NSW', {})).toBe('out');
    expect(await asked('NSW', wheels)).toBe('missing');
    expect(await asked('VIC', wheels)).toBe('out');
  });

  it('stops where stability control does not work', async () => {
    expect((await examineNote('brakes', 'stability-control: no')).one('brakes.stability-control')).toMatchObject({
      result: 'against',
      stop: true,
    });
  });
});

const typical = `${system().replace('split: axles', 'split: axles\n  booster-ratio: 3.0\n  booster-assist: 1400 N')}
was: { pedal-ratio: 4.0, layout: tandem, bore: 20.6 mm, front: { type: disc, pistons: 1, piston: 48 mm, friction: 0.38, radius: 96 mm, rolling: 298 mm }, rear: { type: drum, pistons: 1, piston: 22.2 mm, factor: 2.3, radius: 101 mm, rolling: 298 mm } }
front-maker: { thickness: { least: 20.4 mm, from: marked on the disc }, run-out: { greatest: 0.10 mm, from: maker of the disc } }
rear-maker: { thickness: { least: 8.0 mm, from: marked on the disc }, run-out: { greatest: 0.10 mm, from: maker of the disc } }
pedal-reserve: 70 mm
maker-pedal-reserve: { least: 50 mm, from: manual of the maker }
free-play: 6 mm
support-spacing: 260 mm
line-gap: 18 mm
fluid-mark: 40 mm
fluid: DOT 4, engraved plate
threads-showing: 2
hoses-marked: yes
hoses-reach: yes
pedal-rigid: yes
cable-sound: yes
matched: yes
smaller-or-lighter: no
engine-above-options: no
sold-with: 2.3 l, 85 kW, engine within that
antilock: none
stability-control: none
bolts: [{ id: calliper, joint: calliper to bracket, thread: M12x1.75, class: 8.8, tapped: steel, tapped-strength: 500 MPa, engaged: 16.0 mm, locking: wire }]
torques: [{ id: calliper, torque: 80 N·m, maker: { least: 75 N·m, greatest: 90 N·m, from: manual of the maker } }]
leaks: { pedal-force: 800 N, held: 3 min, dry: yes }
pre-test: { pedal-force: { value: 310 N, with: gauge }, average: { value: 4.6 m/s2, with: meter }, peak: { value: 5.9 m/s2, with: meter } }
stages: { tested: 2026-02-10 }`;
const instruments =
  'instruments: [{ id: gauge, what: pedal gauge, uncertainty: 5 N, checked: 2026-01-10 }, { id: meter, what: decelerometer, uncertainty: 0.1 m/s2, checked: 2026-01-10 }]';

describe('the note as a whole', () => {
  it('a typical note has nothing against it', async () => {
    const { findings } = await examineNote('brakes', typical, { ...weighed, ...at('NSW'), more: instruments });
    expect(
      findings.filter((f) => f.note === '010-tried' && ['against', 'unclear'].includes(f.result)).map((f) => f.id),
    ).toEqual([]);
    expect(
      findings.filter((f) => f.note === '010-tried' && f.form === 'limit' && f.result === 'missing').map((f) => f.id),
    ).toEqual([]);
  });

  it('an empty note says what is missing', async () => {
    const { findings } = await examineNote('brakes', '', at('NSW'));
    expect(findings.filter((f) => f.result === 'missing').length).toBeGreaterThan(25);
    expect(findings.filter((f) => f.result === 'met' || f.result === 'against')).toEqual([]);
  });
});
