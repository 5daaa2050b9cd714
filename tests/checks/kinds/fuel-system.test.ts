import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const K = 'fuel-system';
const line = (rest: string, more = '') => `${more}lines: [{ id: supply, ${rest} }]`;

// National guidelines for street rods, second edition, 2.2: supports of a fuel line every 300 mm. Not read for other cars.
describe('spacing of the supports', () => {
  it.each([
    ['300 ± 0.001 mm', 'unclear'],
    ['299 ± 1 mm', 'met'],
    ['302 ± 1 mm', 'against'],
  ])('%s on a street rod: %s', async (spacing, outcome) => {
    expect(
      (await examineNote(K, line(`support-spacing: ${spacing}`, 'fuel: petrol\nstreet-rod: yes\n'))).result(
        'fuel.line-support',
        'supply',
      ),
    ).toBe(outcome);
  });

  it('of other cars waits for the own copy, which then decides', async () => {
    const note = line('support-spacing: 350 ± 1 mm', 'fuel: petrol\n');
    expect((await examineNote(K, note)).result('fuel.line-support', 'supply')).toBe('unconfirmed');
    const limits =
      'figures: [{ item: fuel.line-support, max: 400 mm, edition: "2.0", clause: "x", read-by: JO, on: 2026-01-01 }]\n';
    expect((await examineNote(K, note, { limits })).one('fuel.line-support')).toMatchObject({
      result: 'met',
      basis: 'own-copy',
    });
  });

  it('says what to measure, and refuses a mass and a bare number', async () => {
    expect((await examineNote(K, 'fuel: petrol')).one('fuel.line-support')).toMatchObject({ result: 'missing' });
    expect(
      (await examineNote(K, line('says: supply', 'fuel: petrol\n'))).one('fuel.line-support', 'supply').todo,
    ).toContain('lines.supply.support-spacing (tape along the line');
    expect(problemsOf(K, line('support-spacing: 300 kg'))).toMatchObject([
      { code: 'quantity', found: expect.stringContaining('kg') as string },
    ]);
    expect(problemsOf(K, line('support-spacing: 300'))).toMatchObject([{ code: 'quantity' }]);
  });
});

// Light vehicle inspection manual, items on gas: clips at 600 mm or closer; 150 mm from the exhaust, 50 mm with a shield.
describe('lines for liquefied gas', () => {
  const gas = (rest: string) => line(rest, 'fuel: lpg\n');
  it.each([
    ['599 ± 1 mm', 'met'],
    ['600 ± 1 mm', 'unclear'],
    ['601.5 ± 1 mm', 'against'],
  ])('clips at %s: %s', async (spacing, outcome) => {
    expect((await examineNote(K, gas(`support-spacing: ${spacing}`))).result('fuel.gas-clips', 'supply')).toBe(outcome);
  });

  it.each([
    ['151 ± 1 mm', 'no', 'met'],
    ['149 ± 0.5 mm', 'no', 'against'],
    ['51 ± 1 mm', 'yes', 'met'],
    ['51 ± 1 mm', 'no', 'against'],
    ['49 ± 0.5 mm', 'yes', 'against'],
  ])('%s to the exhaust, shielded %s: %s', async (distance, shielded, outcome) => {
    expect(
      (await examineNote(K, gas(`exhaust-distance: ${distance}, shielded: ${shielded}`))).result(
        'fuel.gas-exhaust',
        'supply',
      ),
    ).toBe(outcome);
  });

  it('ask whether there is a shield, and nothing of the rules for petrol', async () => {
    const { one, all } = await examineNote(K, gas('exhaust-distance: 160 mm'));
    expect(one('fuel.gas-exhaust')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('shielded') as string,
    });
    expect([...all('fuel.line-support'), ...all('fuel.exhaust-distance')]).toEqual([]);
  });

  it('do not apply to petrol', async () => {
    const { result: outcome } = await examineNote(K, line('support-spacing: 300 mm', 'fuel: petrol\n'));
    expect([outcome('fuel.gas-clips'), outcome('fuel.gas-exhaust'), outcome('fuel.gas-standard')]).toEqual([
      'out',
      'out',
      'out',
    ]);
  });
});

// Common practice, no source: what is under pressure is rated for it and tested at it.
describe('pressures', () => {
  const rated = (rating: string) => line(`pressure-rating: ${rating}`, 'fuel: petrol\npressure: 300 ± 5 kPa\n');
  it.each([
    ['900 kPa', 'met'],
    ['302 kPa', 'unclear'],
    ['290 kPa', 'against'],
    ['44 psi', 'unclear'],
    ['3.5 bar', 'met'],
  ])('a line rated %s at 300 kPa: %s', async (rating, outcome) => {
    expect((await examineNote(K, rated(rating))).result('fuel.line-pressure', 'supply')).toBe(outcome);
  });

  it('asks for the pressure of the system', async () => {
    expect((await examineNote(K, line('pressure-rating: 900 kPa'))).one('fuel.line-pressure', 'supply')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('pressure (gauge at the rail') as string,
    });
  });

  it.each([
    ['320 ± 5 kPa', 'met'],
    ['303 ± 5 kPa', 'unclear'],
    ['250 ± 5 kPa', 'against'],
  ])('tested at %s: %s', async (pressure, outcome) => {
    expect(
      (
        await examineNote(K, `pressure: 300 ± 5 kPa\npressure-test: { pressure: ${pressure}, held: 10 min, dry: yes }`)
      ).result('fuel.test-pressure'),
    ).toBe(outcome);
  });

  it('compares the pressure in service with its maker', async () => {
    const note = (value: string) =>
      `pressure: ${value}\npressure-maker: { least: 280 kPa, greatest: 320 kPa, from: manual }`;
    expect((await examineNote(K, note('300 ± 5 kPa'))).result('fuel.pressure')).toBe('met');
    expect((await examineNote(K, note('340 ± 5 kPa'))).result('fuel.pressure')).toBe('against');
  });

  it('a dry joint counts with pressure and time, a wet one without', async () => {
    const dry = await examineNote(K, 'pressure-test: { pressure: 350 kPa, held: 10 min, after: 349 kPa, dry: yes }');
    expect(dry.one('fuel.tight')).toMatchObject({
      result: 'met',
      says: expect.stringContaining('350 kPa for 10 min, 349 kPa at the end') as string,
    });
    expect((await examineNote(K, 'pressure-test: { held: 10 min, dry: yes }')).result('fuel.tight')).toBe('missing');
    const wet = await examineNote(K, 'pressure-test: { pressure: 350 kPa, dry: no }');
    expect(wet.result('fuel.tight')).toBe('against');
  });
});

// Common practice, no source: the canister stays where emission rules ask for one.
describe('evaporative canister', () => {
  it.each([
    ['canister: kept', 'met'],
    ['canister: removed', 'against'],
    ['canister: never-asked\ncanister-why: vehicle of 1970', 'out'],
    ['canister: never-asked', 'missing'],
    ['', 'missing'],
  ])('%j: %s', async (note, outcome) => {
    expect((await examineNote(K, note)).result('engine.canister')).toBe(outcome);
  });

  // South Australian guide on engines: carbon canister for cars from 1 July 1976 to 1 January 1986 (ADR 27A, B and C).
  it.each([
    ['1976-06', 'kept', 'out'],
    ['1976-07', 'kept', 'met'],
    ['1985-12', 'removed', 'against'],
    ['1985-12', 'never-asked\ncanister-why: none of them', 'missing'],
    ['1986-01', 'removed', 'out'],
  ])('South Australia, built %s, %j: %s', async (built, canister, outcome) => {
    expect(
      (await examineNote(K, `canister: ${canister}`, { vehicle: { registration: 'SA', built } })).result(
        'engine.canister-sa',
      ),
    ).toBe(outcome);
  });

  it('another note does not hide one that was taken out', async () => {
    const { result: outcome } = await examineNote(K, 'canister: removed', {
      notes: { '005-engine.md': 'kind: engine\ncanister: yes' },
    });
    expect(outcome('engine.canister')).toBe('against');
  });
});

describe('tank', () => {
  const tank = (rest: string) => `tank: { ${rest} }`;
  it("that was made or altered shows its plate; the maker's does not", async () => {
    const plate = 'plate: 1.60 ± 0.02 mm, plate-maker: { least: 1.5 mm, from: agreed with R. Ansell (invented) }';
    expect((await examineNote(K, tank(`made: new, ${plate}`))).result('fuel.tank-plate')).toBe('met');
    expect((await examineNote(K, tank(`made: new, ${plate.replace('1.60', '1.40')}`))).result('fuel.tank-plate')).toBe(
      'against',
    );
    expect((await examineNote(K, tank('made: altered'))).result('fuel.tank-plate')).toBe('missing');
    expect((await examineNote(K, tank('made: original'))).all('fuel.tank-plate')).toEqual([]);
  });

  it('states its volumes, its place, vent and clearances', async () => {
    const { one, result: outcome } = await examineNote(
      K,
      tank('volume: 52 L, volume-was: 50 L, apart: yes, vented: no, clearances: [{ id: exhaust, gap: 60 mm }]'),
    );
    expect(one('fuel.tank-volume')).toMatchObject({ result: 'met', answer: '52 L, 50 L as it came' });
    // The clearances were not read, so that they give no outcome.
    expect([outcome('fuel.tank-place'), outcome('fuel.tank-clearance', 'exhaust'), outcome('fuel.vent')]).toEqual([
      'met',
      'unconfirmed',
      'against',
    ]);
  });
});

// South Australian page on fuel systems: nothing added inside cabin or boot, pump stops with the ignition, push-on hoses clamped.
it.each([
  ['yes', 'no', 'met'],
  ['no', 'yes', 'against'],
])('South Australia asks for clamps, a pump that stops, and nothing inside: %s', async (good, inside, outcome) => {
  const note = `pump: { stops-with-engine: ${good}, stops-with-ignition: ${good} }\nclamped: ${good}\nadded-inside: ${inside}`;
  const there = await examineNote(K, note, { vehicle: { registration: 'SA' } });
  for (const item of ['fuel.pump-ignition', 'fuel.push-on', 'fuel.inside', 'fuel.pump-stops'])
    expect(there.result(item), item).toBe(outcome);
  expect((await examineNote(K, note)).result('fuel.inside')).toBe('out');
});

it('a filled note has nothing against it but photos and what must be read in the own copy', async () => {
  const note = `fuel: petrol
tank: { made: original, volume: 52 L, apart: yes, vented: yes, clearances: [{ id: road, gap: 190 mm }] }
lines: [{ id: supply, support-spacing: 280 mm, exhaust-distance: 120 mm, shielded: no, pressure-rating: 900 kPa }]
pressure: 300 kPa
pressure-maker: { least: 280 kPa, greatest: 320 kPa, from: manual }
pump: { stops-with-engine: yes, stops-with-ignition: yes }
added-inside: no
clamped: yes
canister: kept
pressure-test: { pressure: 350 kPa, held: 10 min, dry: yes }
answers: { fuel.material: yes, fuel.chafing: yes, fuel.filler: yes, engine.epa-guideline: yes }`;
  const { findings } = await examineNote(K, note);
  const own = findings.filter(
    (f) => !['met', 'out', 'unconfirmed'].includes(f.result) && f.form !== 'evidence' && f.form !== 'order',
  );
  expect(own.map((f) => f.item)).toEqual([]);
});

it('an empty note says what is missing and does not fail', async () => {
  const { result: outcome } = await examineNote(K, '');
  for (const item of [
    'fuel.line-support',
    'fuel.exhaust-distance',
    'fuel.line-pressure',
    'fuel.pressure',
    'fuel.test-pressure',
    'fuel.tank-clearance',
    'fuel.tank-place',
    'fuel.tight',
    'fuel.route-shown',
    'fuel.tank-shown',
    'engine.canister',
  ])
    expect(outcome(item), item).toBe('missing');
});
