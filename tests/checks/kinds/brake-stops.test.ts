import { describe, expect, it } from 'vitest';
import { type Around, examineNote } from './bench.js';

const instruments = `instruments:
  - { id: meter, what: decelerometer, uncertainty: 0.05 m/s2, checked: 2026-01-10 }
  - { id: gauge, what: pedal gauge, uncertainty: 1 N, checked: 2026-01-10 }
  - { id: logger, what: satellite logger, uncertainty: 0.2 km/h, checked: 2026-01-10 }
  - { id: old, what: decelerometer, uncertainty: 0.05 m/s2, checked: 2024-12-01 }
  - { id: never, what: decelerometer, uncertainty: 0.05 m/s2 }`;
// Unladen 1170 kg, oil and coolant 10, three quarters of the fuel 30, three free seats 204: 1414 kg, worked by hand.
const nsw: Around = {
  vehicle: { registration: 'NSW', seats: '5' },
  original: { gvm: '1620 kg', wheelbase: '2600 mm', 'top-speed': '197 km/h' },
  more: instruments,
  notes: {
    '090-mass.md':
      'kind: mass\nnow: { front: 650 ± 0.5 kg, rear: 570 ± 0.5 kg, fuel: 40 ± 0.5 kg }\noil-coolant: 10 ± 0.5 kg\nfull-fuel: 40 ± 0.5 kg',
  },
};
const vic: Around = { ...nsw, vehicle: { registration: 'VIC' } };

type Fields = Readonly<Record<string, string>>;
const lines = (of: Fields) =>
  Object.entries(of)
    .filter(([, value]) => value !== '')
    .map(([key, value]) => `${key}: ${value}`)
    .join(', ');
const deceleration = (value: number, meter = 'meter') => `{ value: ${value.toFixed(2)} m/s2, with: ${meter} }`;
const pedal = (value: number) => `{ value: ${value} N, with: gauge }`;
const speed = (value: number) => `{ value: ${value} km/h, with: logger }`;
/** A stop that keeps all conditions of the test; a field left empty is left out. */
const stop = (id: string, test: string, changed: Fields = {}) =>
  `{ ${lines({
    id,
    test,
    speed: speed(test === 'pre-test' ? 30 : test === 'high-speed' ? 158 : 80),
    'pedal-force': pedal(400),
    deceleration: deceleration(6),
    peak: deceleration(7),
    ...changed,
  })} }`;
const note = (stops: readonly string[], test: Fields = {}, rest: Fields = {}) => {
  const all: Fields = { stages: '{ tested: 2026-02-10 }', 'load-and-tyres': 'driver and observer', ...rest };
  const head = Object.entries(all)
    .filter(([, value]) => value !== '')
    .map(([key, value]) => `${key}: ${value}`)
    .join('\n');
  const own = { 'test-mass': '1420 ± 0.5 kg', 'seats-occupied': '2', 'surface-friction': '0.80 ± 0.05', ...test };
  return `${head}\ntest: brakes\nbrakes: { ${lines(own)}, stops: [${stops.join(', ')}] }`;
};

// Brake assessment manual, New South Wales, v1.0, October 2013, pre-test: pedal at most 885 N, average at least 2.9 m/s2,
// peak at least 3.4 m/s2 (published, currency not known).
describe('the first stop', () => {
  it.each<[Fields, string, string]>([
    [{ 'pedal-force': pedal(860) }, 'brakes.pretest-pedal', 'met'],
    [{ 'pedal-force': pedal(885) }, 'brakes.pretest-pedal', 'unclear'],
    [{ 'pedal-force': pedal(910) }, 'brakes.pretest-pedal', 'against'],
    [{ deceleration: deceleration(3.1) }, 'brakes.pretest-average', 'met'],
    [{ deceleration: deceleration(2.9) }, 'brakes.pretest-average', 'unclear'],
    [{ deceleration: deceleration(2.7) }, 'brakes.pretest-average', 'against'],
    [{ peak: deceleration(3.2) }, 'brakes.pretest-peak', 'against'],
  ])('%j: %s %s', async (field, item, outcome) => {
    const { one } = await examineNote('test', note([stop('p1', 'pre-test', field)]), nsw);
    expect(one(item)).toMatchObject({ result: outcome, basis: 'published' });
  });

  it('does not hold a car of another state against that manual', async () => {
    const { result: outcome } = await examineNote('test', note([stop('p1', 'pre-test')]), vic);
    expect(outcome('brakes.pretest-peak')).toBe('out');
  });

  it('a pull is told', async () => {
    const { one } = await examineNote('test', note([stop('p1', 'pre-test', { pulled: 'yes' })]), nsw);
    expect(one('brakes.pretest-pull')).toMatchObject({ result: 'against', says: expect.stringContaining('p1') });
  });
});

describe('a stop whose conditions are unmet or unstated is inconclusive, with the reason', () => {
  const laden = 'circuit-failed-laden';
  it.each<[string, Fields, Fields, Fields, string]>([
    ['no speed', { speed: '' }, {}, {}, 'the speed is not stated'],
    ['75 km/h for 80', { speed: speed(75) }, {}, {}, 'made from 75 km/h, the test asks for 80 km/h'],
    ['no pedal force', { 'pedal-force': '' }, {}, {}, 'the pedal force is not stated'],
    ['886 N on the pedal', { 'pedal-force': pedal(886) }, {}, {}, 'pressed with 886 N, more than the test lets'],
    ['no friction', {}, { 'surface-friction': '' }, {}, 'the friction of the surface is not stated'],
    ['a slippery surface', {}, { 'surface-friction': '0.59 ± 0.01' }, {}, 'the friction of the surface was 0.59'],
    ['no mass', {}, { 'test-mass': '' }, {}, 'the mass of the laden car is not stated'],
    ['too light a car', {}, { 'test-mass': '1400 ± 0.5 kg' }, {}, 'the laden car was lighter than the test asks'],
    ['no seats', {}, { 'seats-occupied': '' }, {}, 'whether the laden car was heavy enough is not known'],
    ['no instrument', { deceleration: '6.0 ± 0.1 m/s2' }, {}, {}, 'no instrument is named for deceleration'],
    ['no calibration', { deceleration: deceleration(6, 'never') }, {}, {}, 'build.md states no calibration of never'],
    ['an old calibration', { deceleration: deceleration(6, 'old') }, {}, {}, 'the calibration of old, 2024-12-01'],
    ['no day', {}, {}, { stages: '' }, 'the day of the test is not stated'],
  ])('%s', async (_, ofStop, ofTest, rest, reason) => {
    const { one } = await examineNote('test', note([stop('s', laden, ofStop)], ofTest, rest), nsw);
    expect(one('brakes.half-system-laden')).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringContaining(reason),
    });
  });

  it.each<[string, Fields, Fields]>([
    ['all of them met', {}, {}],
    ['76 km/h, 5 % short', { speed: speed(76) }, {}],
    ['885 N', { 'pedal-force': pedal(885) }, {}],
    ['a friction of 0.6', {}, { 'surface-friction': '0.60' }],
  ])('%s: the stop counts', async (_, ofStop, ofTest) => {
    const { one } = await examineNote('test', note([stop('s', laden, ofStop)], ofTest), nsw);
    expect(one('brakes.half-system-laden').outcome).toBe('conforms');
  });

  it('a weak stop that does not count decides as little', async () => {
    const weak = stop('s', laden, { deceleration: deceleration(2), speed: '' });
    expect((await examineNote('test', note([weak]), nsw)).one('brakes.half-system-laden').outcome).toBe('inconclusive');
  });

  it('55 km/h do for the conversion that the manual numbers 19', async () => {
    const notes = {
      ...nsw.notes,
      '020-b.md': 'kind: brakes\nanswers: { brakes.assessment-item: { answer: item 19 } }',
    };
    const tried = note([stop('s', laden, { speed: speed(55) })]);
    const one = async (around: Around) => (await examineNote('test', tried, around)).result('brakes.half-system-laden');
    expect([await one({ ...nsw, notes }), await one(nsw)]).toEqual(['met', 'unclear']);
  });

  it('asks for the load where the test leaves it open', async () => {
    const says = async (load: string) =>
      (await examineNote('test', note([stop('s', 'antilock-failed', { load })]), nsw)).one('brakes.antilock-failed');
    expect(await says('')).toMatchObject({
      result: 'unclear',
      says: expect.stringContaining('whether the car was laden'),
    });
    expect((await says('laden')).result).toBe('met');
    expect((await says('unladen')).result).toBe('met');
  });

  it('of tries with one circuit the best that counts is taken', async () => {
    const tried = [
      stop('a', laden, { failure: 'front', deceleration: deceleration(4), speed: '' }),
      stop('b', laden, { failure: 'front', deceleration: deceleration(3) }),
    ];
    const { all } = await examineNote('test', note(tried, { 'split-system': 'yes' }), nsw);
    expect(all('brakes.half-system-laden')).toMatchObject([{ subject: 'b', outcome: 'conforms' }]);
  });

  it('the first stop in the note on brakes as well', async () => {
    const tried = (more: string) =>
      examineNote('brakes', `stages: { tested: 2026-02-10 }\npre-test: { average: ${deceleration(4)}${more} }`, nsw);
    expect((await tried('')).one('brakes.pretest-average')).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringContaining('the pedal force is not stated'),
    });
    expect((await tried(`, pedal-force: ${pedal(910)}`)).result('brakes.pretest-average')).toBe('unclear');
    expect((await tried(`, pedal-force: ${pedal(400)}`)).one('brakes.pretest-average').outcome).toBe('conforms');
  });
});

// The same manual, test D: at least 2.55 m/s2; a split system one of up to four tries for each failure, another each of ten stops.
describe('tries and stops', () => {
  const tries = (fourth = 2.7) =>
    [1.9, 2.1, 2.2, fourth, 2.9].map((d, i) =>
      stop(`f${i + 1}`, 'circuit-failed-laden', { failure: 'front', deceleration: deceleration(d) }),
    );
  it('counts the best of four tries of a split system', async () => {
    const { all } = await examineNote('test', note(tries(), { 'split-system': 'yes' }), nsw);
    expect(all('brakes.half-system-laden')).toMatchObject([{ subject: 'f4', result: 'met' }]);
  });

  it('counts no fifth try', async () => {
    const { all } = await examineNote('test', note(tries(2.3), { 'split-system': 'yes' }), nsw);
    expect(all('brakes.half-system-laden')).toMatchObject([{ subject: 'f4', result: 'against' }]);
  });

  it('counts every stop of another system, and says how many are still to be made', async () => {
    const { all } = await examineNote('test', note(tries(), { 'split-system': 'no' }), nsw);
    expect(all('brakes.half-system-laden').map((f) => f.result)).toEqual([
      'against',
      'against',
      'against',
      'met',
      'met',
      'missing',
    ]);
  });

  it('calculates the deceleration from distances at 80 % and 10 % of the speed', async () => {
    const { runs, one } = await examineNote(
      'test',
      note([stop('s1', 'pre-test', { speed: speed(100), deceleration: '', 'to-high': '20 m', 'to-low': '60 m' })]),
      nsw,
    );
    // 6.076 m/s2: formula of the draft amendment to UN Regulation 13 (quoted), worked by hand.
    expect(runs.find((r) => r.sheet.id === 'brake-mean-deceleration')?.results?.['deceleration']?.si).toBeCloseTo(
      6.0764,
      4,
    );
    expect(one('brakes.pretest-average').run).toContain('s1');
  });

  it('tells stops that are compared with nothing', async () => {
    const tried = [
      stop('a', 'service', { load: 'laden' }),
      stop('b', 'other'),
      stop('c', '', {}),
      stop('d', 'service', { state: 'was' }),
    ];
    expect((await examineNote('test', note(tried), nsw)).one('tests.readings').says).toContain(
      'compared with nothing: stop b, c, d',
    );
    expect((await examineNote('test', note(tried.slice(0, 1)), nsw)).one('tests.readings').says).not.toContain(
      'nothing',
    );
  });
});

// None of these figures was read: they are asked from the own copy. The figures here are made up.
describe('fade, higher speed and pedal force', () => {
  const limits = (item: string, bound: string) =>
    `figures: [{ item: ${item}, ${bound}, edition: made up, clause: made up, read-by: JO, on: 2026-01-05 }]`;

  it.each(['brakes.fade', 'brakes.high-speed', 'brakes.pedal-force'])(
    '%s is asked once, with its figure',
    async (item) => {
      const tried = await examineNote('test', 'test: brakes', vic);
      expect(tried.one(item)).toMatchObject({ outcome: 'not-measured', todo: expect.stringContaining('brakes.stops') });
      expect((await examineNote('brakes', '', vic)).all(item)).toEqual([]);
    },
  );

  const repeated = (hot: Fields = {}, cold: Fields = {}) => [
    stop('f1', 'fade', { load: 'unladen', deceleration: deceleration(6), ...cold }),
    stop('f2', 'fade', { load: 'unladen', deceleration: deceleration(4) }),
    stop('f3', 'fade', { load: 'unladen', deceleration: deceleration(4.2), ...hot }),
  ];
  it('holds the last of the repeated stops against the first', async () => {
    const own = { ...vic, limits: limits('brakes.fade', 'min: "60 %"') };
    const { one } = await examineNote('test', note(repeated()), own);
    expect(one('brakes.fade')).toMatchObject({ outcome: 'conforms', run: expect.stringContaining('brake-fade') });
    expect(one('brakes.fade').measured!.si).toBeCloseTo(0.7, 12);
    expect((await examineNote('test', note(repeated()), vic)).one('brakes.fade').outcome).toBe('limit-not-confirmed');
    const less = await examineNote('test', note(repeated({ deceleration: deceleration(3) })), own);
    expect(less.one('brakes.fade').outcome).toBe('does-not-conform');
  });

  it.each<[Fields, string]>([
    [{ 'pedal-force': pedal(421) }, 'more pedal force than stop f1'],
    [{ speed: speed(76) }, 'from a lower speed than stop f1'],
    [{ load: '' }, 'stop f3: it is not stated whether the car was laden'],
  ])('a hot stop with %j does not count', async (hot, reason) => {
    const own = { ...vic, limits: limits('brakes.fade', 'min: "60 %"') };
    expect((await examineNote('test', note(repeated(hot)), own)).one('brakes.fade')).toMatchObject({
      outcome: 'inconclusive',
      says: expect.stringContaining(reason),
    });
    const alike = await examineNote('test', note(repeated({ 'pedal-force': pedal(420), speed: speed(80) })), own);
    expect(alike.one('brakes.fade').outcome).toBe('conforms');
  });

  it('a stop alone is no fade test', async () => {
    const { one } = await examineNote('test', note(repeated().slice(0, 1)), vic);
    expect(one('brakes.fade').outcome).toBe('not-measured');
  });

  // 80 % of 197 km/h is 157.6 km/h; 5 % less is 149.7. Above 200 km/h of top speed 160 stand (UN R13-H, recalled).
  it.each([
    ['197 km/h', 150, 'conforms'],
    ['197 km/h', 149, 'inconclusive'],
    ['197 km/h', 80, 'inconclusive'],
    ['250 km/h', 152, 'conforms'],
    ['250 km/h', 151, 'inconclusive'],
  ])('a car of %s stopped from %s km/h: %s', async (top, from, outcome) => {
    const around: Around = {
      ...vic,
      original: { ...nsw.original, 'top-speed': top },
      limits: limits('brakes.high-speed', 'min: 5 m/s2'),
    };
    const tried = note([stop('h', 'high-speed', { load: 'unladen', speed: speed(from) })]);
    expect((await examineNote('test', tried, around)).one('brakes.high-speed').outcome).toBe(outcome);
  });

  it('asks for the top speed', async () => {
    const { 'top-speed': _, ...original } = nsw.original!;
    const around: Around = { ...vic, original, limits: limits('brakes.high-speed', 'min: 5 m/s2') };
    const tried = note([stop('h', 'high-speed', { load: 'unladen' })]);
    expect((await examineNote('test', tried, around)).one('brakes.high-speed').says).toContain(
      'the top speed of the car',
    );
  });

  it('shows the greatest pedal force; each beyond the figure is told, and its stop does not count', async () => {
    const service = (id: string, force: number) =>
      stop(id, 'circuit-failed-light', { failure: id, 'pedal-force': pedal(force) });
    const tried = note([service('a', 300), service('b', 560), service('c', 450), service('d', 550)]);
    const { all } = await examineNote('test', tried, nsw);
    expect(all('brakes.pedal-force')).toMatchObject([{ subject: 'b', outcome: 'limit-not-confirmed' }]);
    const own = { ...nsw, limits: limits('brakes.pedal-force', 'max: 500 N') };
    const with500 = await examineNote('test', tried, own);
    const came = (item: string) => with500.all(item).map((f) => [f.subject, f.result]);
    expect(came('brakes.pedal-force')).toEqual([
      ['b', 'against'],
      ['d', 'against'],
      ['c', 'met'],
    ]);
    expect(came('brakes.half-system-light')).toEqual([
      ['a', 'met'],
      ['b', 'unclear'],
      ['c', 'met'],
      ['d', 'unclear'],
    ]);
  });
});

describe('the mass of the laden car', () => {
  // Appendix 1 of the manual: unladen, oil and coolant, three quarters of the fuel, 68 kg a seat that is not occupied.
  const weighed = {
    vehicle: nsw.vehicle!,
    notes: {
      '090-mass.md':
        'kind: mass\nnow: { front: 650 ± 0.5 kg, rear: 570 ± 0.5 kg, fuel: 40 ± 0.5 kg }\noil-coolant: 10 ± 0.5 kg\nfull-fuel: 40 ± 0.5 kg',
    },
    original: { wheelbase: '2600 mm' },
  };
  // 1170 unladen + 10 + 30 + 68 × 3 = 1414 kg: worked by hand.
  it.each([
    ['1417 ± 0.1 kg', 'met'],
    ['1414 ± 0.1 kg', 'unclear'],
    ['1411 ± 0.1 kg', 'against'],
  ])('a test mass of %s, from the weighing in a later note: %s', async (mass, outcome) => {
    const { one } = await examineNote(
      'test',
      `test: brakes\nbrakes: { test-mass: ${mass}, seats-occupied: 2 }`,
      weighed,
    );
    expect(one('brakes.test-mass').limit?.min?.si).toBeCloseTo(1414, 6);
    expect(one('brakes.test-mass').result).toBe(outcome);
  });

  it('says which masses it lacks', async () => {
    const { one } = await examineNote('test', 'test: brakes\nbrakes: { test-mass: 1414 kg, seats-occupied: 2 }', {
      vehicle: nsw.vehicle!,
    });
    expect(one('brakes.test-mass')).toMatchObject({
      result: 'missing',
      says: expect.stringContaining('mass of oil and coolant'),
    });
  });
});
