import { describe, expect, it } from 'vitest';
import { examineNote, problemsOf } from './bench.js';

const source = 'document: made-up manual, clause: page 4-12, basis: maker';
const own = 'document: made-up rule, edition: "2019", clause: "3.4", basis: own-copy, read-by: JO, read-on: 2026-01-05';
const note = (more: string) => `measurements: [{ id: runout, what: run-out of the flange, ${more} }]`;

describe('a limit of its own', () => {
  // The limits here are made up.
  it.each([
    ['0.07 ± 0.005 mm', 'met'],
    ['0.08 ± 0.005 mm', 'unclear'],
    ['0.09 ± 0.005 mm', 'against'],
  ])('%s against at most 0.08 mm: %s', async (value, outcome) => {
    const { one } = await examineNote('general', note(`value: ${value}, greatest: 0.08 mm, ${source}`));
    expect(one('general.limit')).toMatchObject({
      result: outcome,
      basis: 'maker',
      limit: { document: 'made-up manual', clause: 'page 4-12' },
    });
  });

  it.each([
    ['excluded: no', 'met'],
    ['excluded: yes', 'against'],
  ])('counted pieces at the limit exactly, %s: %s', async (excluded, outcome) => {
    const { one } = await examineNote('general', note(`value: 4/1, greatest: '4', ${excluded}, ${source}`));
    expect(one('general.limit').result).toBe(outcome);
  });

  it('shows value and limit in the unit of the note, whatever it is', async () => {
    const { one } = await examineNote('general', note(`value: 35 ± 1 psi, least: 250 kPa, ${source}`));
    expect(one('general.limit')).toMatchObject({
      result: 'against',
      says: expect.stringMatching(/35.* psi, expected at least 36\.26 psi/),
    });
  });

  it('prints who read an own-copy figure, and when', async () => {
    const { one } = await examineNote('general', note(`value: 12 mm, least: 10 mm, ${own}`));
    expect(one('general.limit')).toMatchObject({
      result: 'met',
      limit: { basis: 'own-copy', readBy: 'JO', on: '2026-01-05', edition: '2019' },
    });
  });

  it.each([
    [own.replace(', clause: "3.4"', ''), 'measurements.runout.clause'],
    [own.replace(', read-by: JO', ''), 'measurements.runout.read-by'],
    ['document: made-up rule', 'measurements.runout.basis'],
  ])('a limit without its whole source never conforms: %s', async (more, field) => {
    const { one } = await examineNote('general', note(`value: 12 mm, least: 10 mm, ${more}`));
    expect(one('general.limit')).toMatchObject({ result: 'unconfirmed', todo: expect.stringContaining(field) });
  });

  it.each([
    [`value: 12 mm, ${source}`, 'no limit is stated'],
    [`value: 12 mm, least: 10 kg, ${source}`, 'cannot be compared'],
    [`least: 10 mm, ${source}`, 'not measured'],
  ])('%s: %s', async (more, says) => {
    const { one } = await examineNote('general', note(more));
    expect(one('general.limit')).toMatchObject({ result: 'missing', says: expect.stringContaining(says) });
  });
});

it('holds a thread against the rule of thumb, which is recalled and gives no outcome', async () => {
  const { one } = await examineNote(
    'general',
    'bolts: [{ id: a, thread: M10x1.5, tapped: aluminium, engaged: 16 mm }]',
  );
  // 2 × d in aluminium: rule of thumb, from memory.
  expect(one('fasteners.engagement')).toMatchObject({ result: 'unconfirmed', basis: 'memory' });
  expect(one('fasteners.engagement').margin).toBeCloseTo(-0.004, 9);
});

it('asks after no thread in a note that names none', async () => {
  expect((await examineNote('general', note('value: 1 mm'))).all('fasteners.engagement')).toEqual([]);
});

it('answers purpose, section and source from the note', async () => {
  const { result: outcome } = await examineNote(
    'general',
    `purpose: run-out before the shaft goes in\nsection: LB\nmeasured-again: no\n${note(`value: 0.05 mm, greatest: 0.08 mm, ${source}`)}`,
  );
  expect(
    [
      'general.purpose',
      'general.section',
      'general.source',
      'general.readings',
      'general.limit-paper',
      'general.repeatable',
    ].map((i) => outcome(i)),
  ).toEqual(['met', 'met', 'met', 'met', 'met', 'against']);
});

it('asks for everything in an empty note', async () => {
  const { findings } = await examineNote('general', '');
  expect(new Set(findings.map((f) => f.result))).toEqual(new Set(['missing']));
});

it('refuses a value that is none', () => {
  expect(problemsOf('general', note('value: about three'))).toMatchObject([{ code: 'quantity' }]);
});
