import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const system = (now: string, name = 'airbag', more = '') =>
  `systems: [{ id: one, system: ${name}, now: ${now}${more} }]`;

describe('what stops a note', () => {
  it.each([
    ['airbag', 'disabled', 'seating.airbags-kept'],
    ['belt-tensioner', 'removed', 'seating.airbags-kept'],
    ['airbag-circuit', 'altered', 'electrical.airbag-circuits'],
    ['stability-control', 'disabled', 'brakes.stability-control'],
    ['stability-control', 'removed', 'brakes.stability-control'],
  ])('%s %s is an open finding for the certifier', async (name, now, item) => {
    const { one } = await examineNote('retained-systems', system(now, name, ', because: no room'));
    expect(one(item)).toMatchObject({
      result: 'against',
      stop: true,
      says: expect.stringContaining('no room'),
      todo: expect.stringContaining('certifier'),
    });
  });

  it('a disabled airbag is not hidden by a note that says all is well', async () => {
    const bench = await examineNote('retained-systems', system('disabled'), {
      notes: { '005-other.md': 'kind: retained-systems\nanswers: { seating.airbags-kept: yes }' },
    });
    expect(bench.all('seating.airbags-kept').filter((f) => f.result === 'met')).toEqual([]);
    expect(bench.one('seating.airbags-kept', 'one')).toMatchObject({ result: 'against', stop: true });
  });

  it.each(['moved', 'altered', 'added'])('a belt anchorage that was %s', async (state) => {
    const { one } = await examineNote(
      'retained-systems',
      `anchorages: [{ id: front-left-upper, place: front left upper, state: ${state} }]`,
    );
    expect(one('seating.anchorages-kept')).toMatchObject({
      result: 'against',
      stop: true,
      subject: 'front-left-upper',
    });
  });

  it.each([
    ['412 ± 1 mm', '413 ± 1 mm', 'met'],
    ['412 ± 1 mm', '418 ± 1 mm', 'against'],
  ])('an anchorage said to be kept that lay at %s and lies at %s: %s', async (was, now, outcome) => {
    const { one } = await examineNote(
      'retained-systems',
      `anchorages: [{ id: a, place: front left upper, state: kept, point: door striker, was: ${was}, now: ${now} }]`,
    );
    expect(one('seating.anchorages-kept').result).toBe(outcome);
  });
});

describe('what is kept', () => {
  it('answers the items that ask after it', async () => {
    const { result: outcome, one } = await examineNote(
      'retained-systems',
      'systems: [{ id: cat, system: catalyst, now: kept }, { id: can, system: canister, now: replaced }, { id: bag, system: airbag, now: never-fitted }]',
    );
    expect(one('exhaust.catalyst')).toMatchObject({ outcome: 'answered', marks: ['recalled, not confirmed'] });
    expect(outcome('engine.canister')).toBe('met');
    expect(one('seating.airbags-kept')).toMatchObject({
      result: 'out',
      says: expect.stringContaining('built without'),
    });
  });

  it('says no for the emission equipment as a whole when one part of it is gone', async () => {
    const { one } = await examineNote(
      'retained-systems',
      'systems: [{ id: cat, system: catalyst, now: kept }, { id: egr, system: exhaust-recirculation, now: removed }]',
    );
    expect(one('engine.emission-equipment')).toMatchObject({
      result: 'against',
      says: expect.stringContaining('taken out'),
    });
    expect(one('exhaust.catalyst').outcome).toBe('answered');
  });

  it('asks in South Australia for the canister of the years that its guide names', async () => {
    const { result: outcome } = await examineNote('retained-systems', system('kept', 'canister'), {
      vehicle: { registration: 'SA', built: '1984-05' },
    });
    expect(outcome('engine.canister-sa')).toBe('met');
  });
});

describe('fault memory and sensors', () => {
  it.each([
    ['0', 'met'],
    ['1', 'against'],
  ])('%s stored faults: %s', async (codes, outcome) => {
    const { one } = await examineNote('retained-systems', `fault-memory: yes\nfault-codes-now: ${codes}`);
    expect(one('retained.fault-codes')).toMatchObject({ result: outcome, basis: 'practice' });
  });

  it('asks nothing of a car without a fault memory', async () => {
    const { result: outcome } = await examineNote('retained-systems', 'fault-memory: no');
    expect([outcome('retained.fault-codes'), outcome('retained.scan')]).toEqual(['out', 'out']);
  });

  const gap = (now: string, maker = ', maker: { least: 0.4 mm, greatest: 1.0 mm, from: made-up manual }') =>
    `systems: [{ id: abs, system: antilock, now: kept }]\nsensor-gaps: [{ id: front-left, was: 0.7 mm, now: ${now}${maker} }]`;
  it.each([
    ['0.45 ± 0.03 mm', 'met'],
    ['0.40 ± 0.03 mm', 'unclear'],
    ['0.35 ± 0.03 mm', 'against'],
    ['1.10 ± 0.03 mm', 'against'],
  ])('a gap of %s in a window of its maker: %s', async (now, outcome) => {
    const { one } = await examineNote('retained-systems', gap(now));
    expect(one('retained.sensor-gap')).toMatchObject({ result: outcome, basis: 'maker' });
  });

  it('gives no outcome without the maker’s figure', async () => {
    expect((await examineNote('retained-systems', gap('0.7 mm', ''))).result('retained.sensor-gap')).toBe(
      'unconfirmed',
    );
  });

  it('a lamp that stays lit is told', async () => {
    const { one } = await examineNote(
      'retained-systems',
      'lamps: [{ id: a, lamp: airbag, lights: yes, goes-out: no }]',
    );
    expect(one('retained.fault-lamps')).toMatchObject({
      result: 'against',
      says: expect.stringContaining('airbag'),
    });
  });

  it('refuses a gap in the wrong unit', () => {
    expect(problemsOf('retained-systems', gap('0.7 kg'))).toMatchObject([{ code: 'quantity' }]);
  });
});

it('asks for everything in an empty note', async () => {
  const { findings } = await examineNote('retained-systems', '');
  expect(new Set(findings.map((f) => f.result))).toEqual(new Set(['missing', 'out']));
});
