import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const K = 'electrical';
const circuit = (rest: string) => `circuits: [{ id: fan, ${rest} }]`;
const wire = 'wire: { greatest: 30 A, from: wire maker (invented) }';

// Common practice, no source: the fuse carries the current, and is no larger than what the wire may carry.
describe('current, fuse and wire', () => {
  it.each([
    ['18 ± 0.5 A', '25 A', 'met', 'met'],
    ['25.0 ± 0.001 A', '25 A', 'unclear', 'met'],
    ['26 ± 0.5 A', '25 A', 'against', 'met'],
    ['18 ± 0.5 A', '30 A', 'met', 'met'],
    ['18 ± 0.5 A', '31 A', 'met', 'against'],
    ['18 ± 0.5 A', '40 A', 'met', 'against'],
  ])('%s through a fuse of %s and a wire for 30 A: current %s, fuse %s', async (current, fuse, ofCurrent, ofFuse) => {
    const { result: outcome } = await examineNote(K, circuit(`current: ${current}, fuse: ${fuse}, ${wire}`));
    expect([outcome('electrical.fuse-current', 'fan'), outcome('electrical.fuse-wire', 'fan')]).toEqual([
      ofCurrent,
      ofFuse,
    ]);
  });

  it('compares the current with the table of the wire maker, and waits for one', async () => {
    expect((await examineNote(K, circuit(`current: 18 A, ${wire}`))).one('electrical.wire-current')).toMatchObject({
      result: 'met',
      basis: 'maker',
    });
    expect((await examineNote(K, circuit(`current: 32 ± 1 A, ${wire}`))).result('electrical.wire-current')).toBe(
      'against',
    );
    expect((await examineNote(K, circuit('current: 18 A'))).result('electrical.wire-current')).toBe('unconfirmed');
  });

  it('says what is missing of each, and refuses other units', async () => {
    const { one } = await examineNote(K, circuit('says: fan'));
    expect([one('electrical.fuse-current').todo, one('electrical.fuse-wire').todo]).toEqual([
      expect.stringContaining('circuits.fan.current (clamp meter'),
      expect.stringContaining('circuits.fan.fuse'),
    ]);
    expect((await examineNote(K, circuit('fuse: 25 A'))).one('electrical.fuse-wire').todo).toContain(
      'circuits.fan.wire.greatest',
    );
    expect(problemsOf(K, circuit('fuse: 25 V'))).toMatchObject([
      { code: 'quantity', found: expect.stringContaining('V') as string },
    ]);
    expect(problemsOf(K, circuit('fuse: 25'))).toMatchObject([{ code: 'quantity' }]);
    expect(problemsOf(K, circuit('size: 4 mm'))).toMatchObject([{ code: 'quantity' }]);
  });

  it('one circuit does not take the fuse of another', async () => {
    const two = `circuits: [{ id: fan, current: 18 A, fuse: 25 A, ${wire} }, { id: pump, current: 8 A, ${wire} }]`;
    expect((await examineNote(K, two)).result('electrical.fuse-current', 'pump')).toBe('missing');
  });

  it('the main cable of the starter has no fuse', async () => {
    const { result: outcome } = await examineNote(
      K,
      'circuits: [{ id: starter, starter: yes, size: 35 mm2, drop: 0.4 V, drop-maker: { greatest: 0.5 V, from: manual } }]',
    );
    expect([outcome('electrical.fuse-current', 'starter'), outcome('electrical.voltage-drop', 'starter')]).toEqual([
      'out',
      'met',
    ]);
  });

  it('asks for drop and fuse distance where they were measured', async () => {
    const { all } = await examineNote(K, circuit('current: 18 A'));
    expect([...all('electrical.voltage-drop'), ...all('electrical.fuse-distance')]).toEqual([]);
    expect((await examineNote(K, circuit('fuse-distance: 150 mm'))).result('electrical.fuse-distance')).toBe(
      'unconfirmed',
    );
  });
});

describe('circuits of airbags', () => {
  it.each([
    ['untouched', 'met'],
    ['none', 'out'],
    ['altered', 'against'],
  ])('%s: %s', async (state, outcome) => {
    expect((await examineNote(K, `airbag-circuits: ${state}`)).result('electrical.airbag-circuits')).toBe(outcome);
  });

  it('that were altered stop the note, whatever it or another note answers', async () => {
    const { one } = await examineNote(K, 'airbag-circuits: altered\nanswers: { electrical.airbag-circuits: yes }', {
      notes: { '005-wiring.md': 'kind: electrical\nairbag-circuits: untouched' },
    });
    expect(one('electrical.airbag-circuits')).toMatchObject({
      result: 'contradicted',
      stop: true,
      note: '010-tried',
      todo: expect.stringContaining('stop work') as string,
    });
  });
});

// Common practice, no source: clamp of metal, vent to the outside where the battery stands inside.
describe('battery', () => {
  it.each([
    ['clamped: yes, inside: no', 'met'],
    ['clamped: yes, inside: yes, vented: yes', 'met'],
    ['clamped: yes, inside: yes, vented: no', 'against'],
    ['clamped: no, inside: no', 'against'],
    ['clamped: yes', 'missing'],
    ['clamped: yes, inside: yes', 'missing'],
  ])('%s: %s', async (rest, outcome) => {
    expect((await examineNote(K, `battery: { ${rest} }`)).result('electrical.battery')).toBe(outcome);
  });
});

describe('supply', () => {
  it.each([
    ['13.9 ± 0.1 V', 'met'],
    ['14.5 ± 0.1 V', 'unclear'],
    ['14.8 ± 0.1 V', 'against'],
    ['13.0 ± 0.1 V', 'against'],
  ])('charging at %s against 13.8 to 14.5 V: %s', async (voltage, outcome) => {
    const note = `charging: [{ id: idle, voltage: ${voltage} }]\ncharging-maker: { least: 13.8 V, greatest: 14.5 V, from: maker }`;
    expect((await examineNote(K, note)).result('electrical.charging', 'idle')).toBe(outcome);
  });

  // Common practice, no source: the alternator gives what the steady consumers take.
  it.each([
    ['75 A', '58 ± 1 A', 'met'],
    ['58 A', '58.0 ± 0.1 A', 'unclear'],
    ['55 A', '58 ± 1 A', 'against'],
  ])('alternator %s, consumers %s: %s', async (alternator, total, outcome) => {
    expect(
      (await examineNote(K, `alternator: ${alternator}\ntotal-current: ${total}`)).result('electrical.alternator'),
    ).toBe(outcome);
  });

  it('asks for the other half, and for nothing where neither was measured', async () => {
    expect((await examineNote(K, 'alternator: 75 A')).one('electrical.alternator').todo).toContain('total-current');
    const { all } = await examineNote(K, '');
    expect([...all('electrical.alternator'), ...all('electrical.charging'), ...all('electrical.drain')]).toEqual([]);
    expect(
      (await examineNote(K, 'drain: 22 mA\ndrain-maker: { greatest: 50 mA, from: maker }')).result('electrical.drain'),
    ).toBe('met');
  });
});

it.each([
  ['35 ± 1 mm', 'met'],
  ['20 ± 1 mm', 'against'],
])('a loom %s from the exhaust against 30 mm as agreed: %s', async (gap, outcome) => {
  expect(
    (
      await examineNote(
        K,
        `looms: [{ id: engine, near: exhaust, gap: ${gap}, maker: { least: 30 mm, from: agreed with R. Ansell (invented) } }]`,
      )
    ).result('electrical.loom-gap', 'engine'),
  ).toBe(outcome);
});

it.each([
  ['yes', 'met'],
  ['no', 'against'],
  ['manual', 'out'],
])('start lock %s: %s', async (lock, outcome) => {
  expect((await examineNote(K, `neutral-start: ${lock}`)).result('gearbox.neutral-start')).toBe(outcome);
});

it('a filled note has nothing against it but photos, papers and what must be read in the own copy', async () => {
  const note = `battery: { now: "boot right, in a box", mass: 15 kg, clamped: yes, inside: yes, vented: yes }
${circuit(`current: 18 A, fuse: 25 A, size: 4 mm2, fuse-distance: 150 mm, ${wire}`)}
looms: [{ id: engine, near: exhaust, gap: 70 mm }]
charging: [{ id: idle, voltage: 14.2 V }]
charging-maker: { least: 13.8 V, greatest: 14.5 V, from: maker }
airbag-circuits: none
fault-lamps: yes
pump-stops: yes
neutral-start: manual
answers: { electrical.fuses: yes, engine.lines-protected: yes }`;
  const { findings } = await examineNote(K, note);
  const own = findings.filter(
    (f) => !['met', 'out', 'unconfirmed'].includes(f.result) && f.form !== 'evidence' && f.form !== 'order',
  );
  expect(own.map((f) => [f.item, f.says])).toEqual([]);
});

it('an empty note says what is missing and does not fail', async () => {
  const { result: outcome } = await examineNote(K, '');
  for (const item of [
    'electrical.wire-current',
    'electrical.fuse-current',
    'electrical.fuse-wire',
    'electrical.loom-gap',
    'electrical.battery',
    'electrical.fuses',
    'electrical.airbag-circuits',
    'electrical.diagram',
    'electrical.route-shown',
    'electrical.battery-shown',
    'retained.fault-lamps',
    'fuel.pump-stops',
    'gearbox.neutral-start',
  ])
    expect(outcome(item), item).toBe('missing');
});
