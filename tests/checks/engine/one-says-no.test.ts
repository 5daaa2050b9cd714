import { describe, expect, it } from 'vitest';
import { examineNote } from '../kinds/bench.js';

/** One item of a list that says no decides, whatever of the list is not filled in yet: an answer `yes` is contradicted. */

it.each([
  ['lights-and-body', 'lamps: [{ id: stop, works: no }, { id: dipped }]', 'lights-and-body.lamps', 'yes'],
  ['lights-and-body', 'aim: { after-ride-height: no }', 'lights-and-body.lamps', 'yes'],
  ['lights-and-body', 'bumpers: [{ id: front, kept: no }, { id: rear }]', 'lights-and-body.bumper', 'yes'],
  ['seating', 'belts: [{ id: a, on-seat: yes }, { id: b }]', 'seating.belt-on-seat', 'no'],
  ['seating', 'child-points: [{ id: a, usable: no }, { id: b }]', 'seating.child-points', 'yes'],
  ['retained-systems', 'lamps: [{ id: oil, lights: no }, { id: charge }]', 'retained.fault-lamps', 'yes'],
  ['steering', 'ends: [{ id: left, locked: none }, { id: right }]', 'steering.ends-locked', 'yes'],
  ['inspection', 'released: [{ id: a, released: no }, { id: b }]', 'inspection.released', 'yes'],
  ['mounts', 'bolts: [{ id: a, locking: none }, { id: b }]', 'fasteners.locking', 'yes'],
  [
    'electrical',
    'circuits: [{ id: fan, fuse: 40 A, wire: { greatest: 25 A, from: table } }]',
    'electrical.fuses',
    'yes',
  ],
  [
    'test',
    'test: brakes\nbrakes: { stops: [{ id: one, test: pre-test, pulled: yes }, { id: two, test: pre-test }] }',
    'brakes.side-balance',
    'yes',
  ],
])('%s: %s', async (kind, fields, item, said) => {
  const answered = await examineNote(kind, `${fields}\nanswers: { ${item}: ${said} }`, {
    vehicle: { registration: kind === 'steering' ? 'QLD' : 'VIC' },
  });
  expect(answered.all(item).map((f) => f.result)).toContain('contradicted');
});

describe('what another note found out', () => {
  const elsewhere = async (note: string, kind: string, item: string) =>
    (
      await examineNote(kind, `answers: { ${item}: yes }`, {
        vehicle: { registration: 'NSW' },
        notes: { '020-other.md': note },
      })
    ).result(item);
  it('of the reversing lamp', async () => {
    const lamps = (works: string) => `kind: lights-and-body\nlamps: [{ id: rev, lamp: reversing, works: ${works} }]`;
    expect(await elsewhere(lamps('no'), 'gearbox', 'gearbox.reversing-lamp')).toBe('contradicted');
    expect(await elsewhere(lamps('yes'), 'gearbox', 'gearbox.reversing-lamp')).toBe('met');
  });
  it('of the speedometer', async () => {
    const test = (indicated: string) =>
      `kind: test\ntest: speedometer\nspeedometer-rule: ADR 18/03\nspeeds: [{ id: at-60, indicated: ${indicated}, true-speed: 60.0 ± 0.1 km/h }]`;
    expect(await elsewhere(test('50 ± 1 km/h'), 'gearbox', 'speedometer.kept')).toBe('contradicted');
    expect(await elsewhere(test('62 ± 1 km/h'), 'gearbox', 'speedometer.kept')).toBe('met');
  });
});
