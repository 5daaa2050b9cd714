import { describe, expect, it } from 'vitest';
import { loadCodes } from '../../../src/checks/codes/codes.js';
import { examineNote } from '../kinds/bench.js';

/** A figure limits only when it has the end that the item asks for. Figures are made up. */

describe('a maker who states only one end', () => {
  const temperature = (maker: string) =>
    examineNote('cooling', `temperature: 104 ± 1 degC\ntemperature-maker: { ${maker}, from: manual }`);
  it.each([
    ['greatest: 110 degC', 'conforms'],
    ['greatest: 100 degC', 'does-not-conform'],
    ['greatest: 104.5 degC', 'inconclusive'],
    ['least: 80 degC', 'limit-not-confirmed'],
    ['least: 110 degC', 'does-not-conform'],
    ['least: 80 degC, greatest: 110 degC', 'conforms'],
  ])('of the coolant temperature, %s: %s', async (maker, outcome) => {
    expect((await temperature(maker)).one('cooling.temperature').outcome).toBe(outcome);
  });
  it('is told which end is missing', async () => {
    expect((await temperature('least: 80 degC')).one('cooling.temperature')).toMatchObject({
      says: expect.stringContaining('manual states no greatest value, so that it does not limit it') as string,
      todo: expect.stringContaining('greatest value') as string,
    });
  });
  it('nor does one end make a window', async () => {
    const caster = (maker: string) =>
      examineNote(
        'alignment',
        `wheels: [{ id: front-left, now: { caster: 4.0 deg top to the rear } }]\nmaker: { front: { caster: { ${maker}, from: sheet } } }`,
      );
    const [least, most] = ['least: 3 deg top to the rear', 'greatest: 5 deg top to the rear'];
    for (const [maker, outcome] of [
      [least, 'limit-not-confirmed'],
      [most, 'limit-not-confirmed'],
      [`${least}, ${most}`, 'conforms'],
    ] as const)
      expect((await caster(maker)).one('alignment.caster', 'front-left').outcome).toBe(outcome);
  });
  it('a figure of the own copy has the end too', async () => {
    const figure = (ends: string) =>
      examineNote('cooling', 'temperature: 104 ± 1 degC', {
        limits: `figures:\n  - { item: cooling.temperature, ${ends}, clause: "1", edition: "1", read-by: JO, on: 2026-01-10 }\n`,
      });
    expect((await figure('min: 80 degC')).one('cooling.temperature').outcome).toBe('limit-not-confirmed');
    expect((await figure('max: 110 degC')).one('cooling.temperature').outcome).toBe('conforms');
  });
});

it('every item that has no figure of its own says which ends it must have', async () => {
  const without = [...(await loadCodes('AU')).items.values()].filter(
    (item) => (item.kind === 'limit' || item.kind === 'test') && item.cases.length === 0 && !item.sides,
  );
  // Any clearance that a note names, a limit of the note's own, and cones that are counted.
  expect(without.map(({ id }) => id).sort()).toEqual([
    'assembly.clearance',
    'general.limit',
    'tests.lane-change-cones',
  ]);
});
