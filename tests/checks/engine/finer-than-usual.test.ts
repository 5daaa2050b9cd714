import { describe, expect, it } from 'vitest';
import { expanded } from '../../../src/calc/value.js';
import { examineNote } from '../kinds/bench.js';

const gap = async (value: string) =>
  (
    await examineNote(
      'general',
      `measurements: [{ id: a, what: a gap, value: ${value}, least: 10 mm, document: manual, clause: p. 4, basis: maker }]`,
      { more: 'instruments: [{ id: scale, what: hanging scale, uncertainty: 0.1 kg }]' },
    )
  ).one('general.limit', 'a');

// What is small is usually measured with a caliper of 0.1 mm: common practice, no source.
describe('a stated ± without an instrument', () => {
  it.each([
    ['10.000001 ± 0.0000000001 mm', 'inconclusive', 1e-6],
    ['10.0009 ± 0.0000000001 mm', 'inconclusive', 1e-6],
    ['10.0011 ± 0.0000000001 mm', 'conforms', 1e-6],
    ['10.01 ± 0.005 mm', 'conforms', 5e-6],
    ["'[10.000001 ± 0.0000000001, 10.000001 ± 0.0000000001] mm'", 'inconclusive', 1e-6],
  ])('of %s is no finer than a hundredth of a usual instrument: %s', async (value, outcome, u) => {
    const found = await gap(value);
    expect(found.outcome).toBe(outcome);
    expect(expanded(found.measured!)).toBeCloseTo(u, 12);
  });
});

it('an instrument that reads something else is told, and a usual one assumed', async () => {
  const found = await gap('{ value: 10.5 mm, with: scale }');
  expect(found.marks).toContain('the instrument that is named does not read this; that of a usual one assumed');
  expect(expanded(found.measured!)).toBeCloseTo(expanded((await gap('10.5 mm')).measured!), 12);
  expect((await gap('10.5 mm')).marks.join()).not.toContain('does not read this');
});
