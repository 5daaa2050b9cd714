import { describe, expect, it } from 'vitest';
import { type Around, examineNote, problemsOf } from './bench.js';

const K = 'gearbox';
const engine = (torque: string): Around => ({ notes: { '020-engine.md': `kind: engine\ntorque: ${torque}` } });
const rating = (value: string) => `torque-rating: ${value}\nrating-from: data sheet (invented)`;

// Common practice, no source: the gearbox is rated for at least the engine's torque.
describe('input torque rating against the torque of the engine', () => {
  it.each([
    ['270 N·m', '270 ± 0.001 N·m', 'unclear'],
    ['270 N·m', '269 ± 1 N·m', 'met'],
    ['270 N·m', '271 ± 0.5 N·m', 'against'],
    ['200 ft·lbf', '271 ± 0.1 N·m', 'met'],
    ['200 ft·lbf', '272 ± 0.1 N·m', 'against'],
  ])('rated %s, engine %s: %s', async (rated, torque, outcome) => {
    expect((await examineNote(K, rating(rated), engine(torque))).result('gearbox.torque-rating')).toBe(outcome);
  });

  it('asks for the rating, and for the engine that it is compared with', async () => {
    expect((await examineNote(K, '', engine('270 N·m'))).one('gearbox.torque-rating')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('torque-rating') as string,
    });
    expect((await examineNote(K, rating('270 N·m'))).one('gearbox.torque-rating')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('the engine note') as string,
    });
  });

  it('marks a rating that no paper names', async () => {
    expect(
      (await examineNote(K, 'torque-rating: 400 N·m', engine('270 N·m'))).one('gearbox.torque-rating').marks,
    ).toContain('no paper is named for the rating');
    expect(
      (await examineNote(K, rating('400 N·m'), engine('270 N·m'))).one('gearbox.torque-rating').marks,
    ).not.toContain('no paper is named for the rating');
  });

  it('refuses a power, and a bare number', () => {
    expect(problemsOf(K, 'torque-rating: 350 kW')).toMatchObject([
      { code: 'quantity', found: expect.stringContaining('kW') as string },
    ]);
    expect(problemsOf(K, 'torque-rating: 350')).toMatchObject([{ code: 'quantity' }]);
  });
});

describe('ratios', () => {
  const ratios =
    'ratios: [{ id: reverse, ratio: 3.80 }, { id: 1st, ratio: 3.50 }, { id: 5th, ratio: 0.82 }, { id: 4th, ratio: 1.00 }]\nratios-from: maker';
  it('first and top gear are the extremes of the forward gears, in whatever order', async () => {
    const { facts } = await examineNote(K, ratios);
    expect([facts.get('first_gear')?.value.quantity.text, facts.get('top_gear')?.value.quantity.text]).toEqual([
      '3.50',
      '0.82',
    ]);
  });

  // 262 N·m × 3.50 over 0.56 m: equilibrium of moments, worked by hand.
  it('reach the mounts', async () => {
    const { runs } = await examineNote(K, ratios, {
      notes: { '020-engine.md': 'kind: engine\ntorque: 262 N·m\nmount-spacing: 560 mm' },
    });
    const reaction = runs.find((r) => r.sheet.id === 'mount-reaction')!;
    expect(reaction.results!['pair']!.si).toBeCloseTo((262 * 3.5) / 0.56, 9);
  });
});

describe('bellhousing', () => {
  const runout = (value: string) =>
    `housing: other\nbore-runout: ${value}\nbore-runout-maker: { greatest: 0.20 mm, from: manual (invented) }`;
  it.each([
    ['0.19 ± 0.01 mm', 'met'],
    ['0.195 ± 0.01 mm', 'unclear'],
    ['0.22 ± 0.01 mm', 'against'],
  ])('run-out of %s against 0.20 mm: %s', async (value, outcome) => {
    expect((await examineNote(K, runout(value))).result('gearbox.alignment')).toBe(outcome);
  });

  it('is measured where an adaptor joins the two, and lined up by its maker otherwise', async () => {
    const both = ['gearbox.alignment', 'gearbox.face-alignment'];
    const [other, original, empty] = await Promise.all(
      ['housing: other', 'housing: original', ''].map((note) => examineNote(K, note)),
    );
    expect(both.map((i) => [other!.result(i), original!.result(i), empty!.result(i)])).toEqual([
      ['missing', 'out', 'missing'],
      ['missing', 'out', 'missing'],
    ]);
    expect((await examineNote(K, 'housing: original\nbore-runout: 0.12 mm')).result('gearbox.alignment')).toBe(
      'unconfirmed',
    );
  });
});

it.each([
  [
    'type: manual\nspigot: 14 ± 0.5 mm\nspigot-maker: { least: 12 mm, from: maker }',
    'gearbox.spigot',
    'gearbox.converter',
  ],
  [
    'type: automatic\nconverter-gap: 3.1 ± 0.2 mm\nconverter-maker: { least: 1.5 mm, greatest: 4.5 mm, from: maker }',
    'gearbox.converter',
    'gearbox.spigot',
  ],
])('%j asks for its own check and not for the other', async (note, own, other) => {
  const { result: outcome, all } = await examineNote(K, note);
  expect(outcome(own)).toBe('met');
  expect(all(other)).toEqual([]);
});

describe('cross-member and tunnel', () => {
  it.each([
    ['crossmember: original\ntunnel: dressed', 'met'],
    ['crossmember: new\ntunnel: untouched', 'unclear'],
    ['crossmember: original\ntunnel: cut', 'unclear'],
    ['crossmember: altered', 'unclear'],
    ['crossmember: original', 'missing'],
  ])('%j: %s', async (note, outcome) => {
    const found = (await examineNote(K, note)).one('gearbox.structure');
    expect(found.result).toBe(outcome);
    expect(found.outcome).not.toBe('conforms');
  });
});

// Common practice, no source: a gap at rest is greater than the movement of the engine on its mounts.
describe('gaps against the movement on the mounts', () => {
  const gap = (value: string) => `gaps: [{ id: tunnel, to: tunnel, gap: ${value} }]`;
  it('asks for a gap, and for the movement', async () => {
    expect((await examineNote(K, '')).one('mounts.gap')).toMatchObject({
      result: 'missing',
      todo: expect.stringContaining('gaps') as string,
    });
    expect((await examineNote(K, gap('18 mm'))).one('mounts.gap', 'tunnel')).toMatchObject({
      result: 'missing',
      says: expect.stringContaining('movement of engine and gearbox') as string,
    });
  });
});

describe('selector', () => {
  it.each([
    ['type: manual', 'out', 'out'],
    ['type: automatic\nneutral-start: yes\nselector-shown: yes', 'met', 'met'],
    ['type: automatic\nneutral-start: no', 'against', 'missing'],
    ['', 'missing', 'missing'],
  ])('%j: start %s, position %s', async (note, start, shown) => {
    const { result: outcome } = await examineNote(K, note);
    expect([outcome('gearbox.neutral-start'), outcome('gearbox.selector-shown')]).toEqual([start, shown]);
  });
});

it('compares the unbalance of a flywheel that was replaced with the gearbox', async () => {
  expect(
    (await examineNote(K, 'rotating: [{ id: flywheel, original: 28 oz·in, replacement: 50 oz·in }]')).result(
      'assembly.unbalance',
      'flywheel',
    ),
  ).toBe('against');
  expect((await examineNote(K, 'rotating-replaced: no')).result('assembly.unbalance')).toBe('out');
});

it('states the lubricant with what its maker asks for', async () => {
  const note = 'lubricant: gear oil 75W-90 GL-4\nlubricant-quantity: 1.8 L\n';
  expect((await examineNote(K, `${note}lubricant-asked: GL-4 75W-90`)).one('gearbox.lubricant')).toMatchObject({
    result: 'met',
    answer: 'gear oil 75W-90 GL-4, 1.8 L',
  });
  expect((await examineNote(K, note)).result('gearbox.lubricant')).toBe('missing');
});

it('a filled note has nothing against it but what other notes and papers show', async () => {
  const note = `type: manual
ratios: [{ id: 1st, ratio: 3.50 }, { id: 5th, ratio: 0.82 }]
ratios-from: maker
${rating('350 N·m')}
housing: original
spigot: 14 ± 0.5 mm
spigot-maker: { least: 12 mm, from: maker }
crossmember: original
tunnel: untouched
gaps: [{ id: tunnel, to: tunnel, gap: 18 mm }]
speedometer-checked: yes
lubricant: gear oil 75W-90 GL-4
lubricant-asked: GL-4 75W-90
rotating-replaced: no
answers: { gearbox.code: LB1, fasteners.appendix: yes, speedometer.kept: yes, gearbox.reversing-lamp: yes, body.openings: yes }`;
  const { findings } = await examineNote(K, note, {
    notes: {
      '020-engine.md': 'kind: engine\ntorque: 270 N·m',
      '030-mounts.md': 'kind: mounts\nmovement-drive: 12 mm\nmovement-overrun: 9 mm',
    },
  });
  const own = findings.filter(
    (f) =>
      f.note === '010-tried' &&
      !['met', 'out', 'unconfirmed'].includes(f.result) &&
      f.form !== 'evidence' &&
      f.form !== 'order',
  );
  expect(own.map((f) => f.item)).toEqual(['speedometer.accuracy']);
});

it('an empty note says what is missing and does not fail', async () => {
  const { result: outcome } = await examineNote(K, '');
  for (const item of [
    'gearbox.torque-rating',
    'gearbox.structure',
    'gearbox.speedometer',
    'gearbox.identity',
    'gearbox.crossmember-shown',
    'gearbox.fitted-shown',
    'gearbox.code',
    'speedometer.accuracy',
  ])
    expect(outcome(item), item).toBe('missing');
});
