import { describe, expect, it } from 'vitest';
import { kinds } from '../../../src/checks/kinds/index.js';
import { servesOf } from '../../../src/checks/plan/serves.js';

const of = (kind: string) => servesOf(kinds.get(kind)!);
const fields = (kind: string, path: string) => [...(of(kind).fields.get(path) ?? [])];

describe('what a field serves', () => {
  it('goes through the calculation sheets', () => {
    expect(fields('engine', 'bore')).toContain('engine.capacity');
    expect(fields('driveline', 'tube-wall')).toContain('driveline.critical-speed');
    expect(fields('driveline', 'stations.[].gearbox')).toContain('driveline.angle-least');
  });

  it('is found whichever way a kind takes: one or two shafts, axle or wheel loads', () => {
    expect(fields('driveline', 'front-length')).toContain('driveline.angle-speed');
    expect(fields('mass', 'laden.rear-left')).toContain('mass.axle-rear');
    expect(fields('test', 'noise.outlets.[].readings')).toContain('tests.noise');
  });

  it('tells answers that need several fields at once', () => {
    for (const path of ['place', 'weather', 'driver']) expect(fields('test', path)).toContain('tests.conditions');
    expect(fields('retained-systems', 'fault-codes-now')).toContain('retained.fault-codes');
  });

  it('tells what stops a note', () => {
    expect(fields('seating', 'airbags')).toContain('seating.airbags-kept');
    expect([...of('retained-systems').answered]).toEqual(
      expect.arrayContaining(['seating.airbags-kept', 'engine.canister', 'brakes.stability-control']),
    );
  });
});

it('names the sheets of a kind', () => {
  expect([...of('mass').sheets.keys()]).toEqual(
    expect.arrayContaining(['axle-masses', 'corner-masses', 'centre-of-mass-height', 'laden-mass']),
  );
});

it.each([...kinds.keys()])('%s: every kind compares or answers something', (kind) => {
  const { compared, answered } = of(kind);
  expect(compared.size + answered.size).toBeGreaterThanOrEqual(3);
});
