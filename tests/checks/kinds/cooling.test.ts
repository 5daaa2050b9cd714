import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const K = 'cooling';
const manual = 'from: engine manual (invented)';
const moving = { notes: { '020-mounts.md': 'kind: mounts\nmovement-drive: 12.0 ± 0.5 mm\nmovement-overrun: 9 mm' } };

// The windows are invented: derived, regression only.
describe('temperatures against the engine maker', () => {
  const settled = (value: string) => `temperature: ${value}\ntemperature-maker: { greatest: 100 degC, ${manual} }`;
  it.each([
    ['98 ± 2 degC', 'met'],
    ['99 ± 2 degC', 'unclear'],
    ['103 ± 2 degC', 'against'],
    ['371.15 ± 1 K', 'met'],
  ])('coolant settles at %s: %s', async (value, outcome) => {
    expect((await examineNote(K, settled(value))).result('cooling.temperature')).toBe(outcome);
  });

  it('tells a margin of temperatures in kelvin', async () => {
    expect((await examineNote(K, settled('94 ± 2 degC'))).one('cooling.temperature').says).toContain(
      'measured 94 ± 2 degC, expected at most 100 degC; margin 6 K',
    );
  });

  it.each([
    ['82 ± 1 degC', 'met'],
    ['79 ± 1 degC', 'against'],
    ['88 ± 1 degC', 'against'],
  ])('thermostat opens at %s against 81 to 86: %s', async (value, outcome) => {
    expect(
      (
        await examineNote(K, `thermostat: ${value}\nthermostat-maker: { least: 81 degC, greatest: 86 degC, ${manual} }`)
      ).result('cooling.thermostat'),
    ).toBe(outcome);
  });

  it('waits for the figure where no window is given, says what to measure, and refuses other units', async () => {
    expect((await examineNote(K, 'thermostat: 82 degC')).result('cooling.thermostat')).toBe('unconfirmed');
    expect((await examineNote(K, '')).one('cooling.thermostat').todo).toContain('thermostat (hung in water');
    expect(problemsOf(K, 'thermostat: 82 kPa')).toMatchObject([{ code: 'quantity' }]);
    expect(problemsOf(K, 'thermostat: 82')).toMatchObject([{ code: 'quantity' }]);
  });
});

// Common practice, no source: the system is tested at the pressure of its cap.
describe('pressures', () => {
  const tested = (pressure: string, rest = 'held: 10 min, dry: yes') =>
    `cap: 100 ± 2 kPa\ncap-maker: { least: 95 kPa, greatest: 110 kPa, ${manual} }\npressure-test: { pressure: ${pressure}, ${rest} }`;
  it.each([
    ['105 ± 2 kPa', 'met'],
    ['101 ± 2 kPa', 'unclear'],
    ['90 ± 2 kPa', 'against'],
    ['16 psi', 'met'],
  ])('tested at %s: %s', async (pressure, outcome) => {
    const found = await examineNote(K, tested(pressure));
    expect([found.result('cooling.test-pressure'), found.result('cooling.cap')]).toEqual([outcome, 'met']);
  });

  it('the record is its evidence, and a wet joint counts against it', async () => {
    const dry = await examineNote(K, tested('105 kPa'));
    expect(dry.one('cooling.pressure-test')).toMatchObject({ result: 'met', answer: '105 kPa for 10 min' });
    expect(dry.result('cooling.tight')).toBe('met');
    expect((await examineNote(K, tested('105 kPa', 'held: 10 min, dry: no'))).result('cooling.tight')).toBe('against');
  });

  it('asks for the cap that the test is compared with', async () => {
    expect((await examineNote(K, 'pressure-test: { pressure: 105 kPa }')).one('cooling.test-pressure').todo).toContain(
      'cap (cap tester',
    );
  });
});

// Common practice, no source: a gap at rest is greater than the movement of the engine.
describe('gaps against the movement of the engine', () => {
  it.each([
    ['13.5 ± 0.5 mm', 'met'],
    ['12.0 ± 0.1 mm', 'unclear'],
    ['11.0 ± 0.2 mm', 'against'],
  ])('fan and hose at %s with 12 mm of movement: %s', async (gap, outcome) => {
    const found = await examineNote(K, `fan: engine\nfan-gap: ${gap}\nhoses: [{ id: upper, gap: ${gap} }]`, moving);
    expect([found.result('mounts.gap', 'fan'), found.result('mounts.gap', 'upper')]).toEqual([outcome, outcome]);
  });

  it('asks for the movement', async () => {
    expect((await examineNote(K, 'fan-gap: 28 mm')).one('mounts.gap')).toMatchObject({
      result: 'missing',
      says: expect.stringContaining('movement of engine and gearbox') as string,
    });
  });
});

describe('hoses', () => {
  const hose = (rest: string) => `hoses: [{ id: upper, says: moulded EPDM, gap: 25 mm, ${rest} }]`;
  it.each([
    ['clamped: yes, slack: yes', 'met'],
    ['clamped: no, slack: yes', 'against'],
    ['clamped: yes, slack: no', 'against'],
    ['clamped: yes', 'missing'],
  ])('%s: %s', async (rest, outcome) => {
    // Hoses lead nowhere else, so that a loose one does not conform through another item.
    expect((await examineNote(K, hose(rest))).result('cooling.hoses')).toBe(outcome);
  });
});

it('a radiator support that was cut leads to the structure', async () => {
  expect((await examineNote(K, 'support-cut: yes')).one('cooling.support')).toMatchObject({
    result: 'unclear',
    todo: 'settle body.structure-cut',
  });
  // That it can be a member of the structure was recalled: the answer is there, marked so.
  expect((await examineNote(K, 'support-cut: no')).one('cooling.support')).toMatchObject({
    result: 'met',
    outcome: 'answered',
    marks: ['recalled, not confirmed'],
  });
});

it('records openings that were closed', async () => {
  expect(
    (
      await examineNote(
        K,
        'openings: [{ id: heater, place: manifold, what: plugged, thread: 1/4-18 NPT, sealant: thread sealant }]',
      )
    ).result('assembly.openings', 'heater'),
  ).toBe('met');
  expect((await examineNote(K, 'openings-closed: no')).result('assembly.openings')).toBe('out');
});

it('a filled note has nothing against it but photos', async () => {
  const note = `support-cut: no
hoses: [{ id: upper, says: moulded EPDM, clamped: yes, slack: yes, gap: 25 mm }]
fan: electric
fan-gap: 28 mm
fan-guarded: yes
cap: '[102 ± 1, 103 ± 1, 102 ± 1] kPa'
cap-maker: { least: 95 kPa, greatest: 110 kPa, ${manual} }
thermostat: 82 ± 1 degC
thermostat-maker: { least: 80 degC, greatest: 84 degC, ${manual} }
pressure-test: { pressure: 105 ± 1 kPa, held: 10 min, after: 105 ± 1 kPa, dry: yes }
temperature: 94 degC
temperature-maker: { greatest: 105 degC, ${manual} }
openings-closed: no
answers: { engine.lines-protected: yes }`;
  const { findings } = await examineNote(K, note, moving);
  const own = findings.filter(
    (f) =>
      f.note === '010-tried' &&
      !['met', 'out', 'unconfirmed'].includes(f.result) &&
      f.form !== 'evidence' &&
      f.form !== 'order',
  );
  expect(own.map((f) => [f.item, f.says])).toEqual([]);
});

it('an empty note says what is missing and does not fail', async () => {
  const { result: outcome } = await examineNote(K, '');
  for (const item of [
    'cooling.temperature',
    'cooling.thermostat',
    'cooling.cap',
    'cooling.test-pressure',
    'cooling.tight',
    'cooling.support',
    'cooling.hoses',
    'cooling.fan',
    'cooling.pressure-test',
    'cooling.mounting-shown',
    'cooling.route-shown',
    'mounts.gap',
  ])
    expect(outcome(item), item).toBe('missing');
});
