import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactly, type Value } from '../../../src/calc/value.js';
import {
  agree,
  agreement,
  type Claim,
  disagreeing,
  disagreement,
  type FactClaim,
} from '../../../src/checks/engine/agreement.js';
import { isOpen } from '../../../src/checks/engine/finding.js';
import type { FactName } from '../../../src/project/facts.js';
import { buildOf } from './made.js';

const nothing = buildOf([]);

/** Whether two values of one thing agree, and what is said where they do not. Figures are made up. */

const value = (si: number, u = 0, source = `${si}`, unit = 'kg'): Value => ({
  ...exactly(si, unit),
  parts: new Map(u === 0 ? [] : [[source, u]]),
});
const place = (file: string) => ({ file, line: 3, column: 1, path: 'mass' });
const claim = (si: number, note?: string, name: FactName = 'original_mass', u = 0): FactClaim => ({
  name,
  value: value(si, u),
  note,
  place: place(note ?? 'build.md'),
});

describe('two values', () => {
  // Independent uncertainties of 3 and 4 kg are together 5 kg (JCGM 100:2008, 5.1.2), not 7.
  it.each([
    [600, 605, true],
    [605, 600, true],
    [600, 605.001, false],
    [605.001, 600, false],
    [600, 606.9, false],
  ])('%d ± 3 and %d ± 4 agree: %s', (a, b, expected) =>
    expect(agree(value(a, 3, 'a'), value(b, 4, 'b'))).toBe(expected),
  );

  it('without an uncertainty agree where they are the same', () => {
    expect(agree(value(600), value(600))).toBe(true);
    expect(agree(value(600), value(600.0001))).toBe(false);
  });

  it('that rest on one measurement agree only as far as they are free against each other (JCGM 100:2008, 5.2.2)', () => {
    expect(agree(value(600, 10, 'scale'), value(605, 10, 'scale'))).toBe(false);
    expect(agree(value(600, 10, 'scale'), value(605, -10, 'scale'))).toBe(true);
  });

  it('agree within what the way of measuring is uncertain by, as a root of squares', () => {
    expect(agree(value(600), value(605), 5)).toBe(true);
    expect(agree(value(600), value(605), 4.99)).toBe(false);
    expect(agree(value(600, 3, 'a'), value(605), 4)).toBe(true);
    expect(agree(value(600, 3, 'a'), value(605.01), 4)).toBe(false);
  });

  it('agree whichever is first', () => {
    const number = fc.integer({ min: -99, max: 99 });
    fc.assert(
      fc.property(number, number, number, number, (a, b, u, v) => {
        expect(agree(value(a, u, 'a'), value(b, v, 'b'))).toBe(agree(value(b, v, 'b'), value(a, u, 'a')));
      }),
    );
  });
});

describe('facts that are disputed', () => {
  const names = (...claims: FactClaim[]) => [...disagreeing(claims, nothing).keys()];
  it('are those of which not all statements agree with the first', () => {
    expect(names(claim(1240), claim(1240, '010-a'))).toEqual([]);
    expect(names(claim(1240), claim(900, '010-a'))).toEqual(['original_mass']);
    expect(names(claim(1240), claim(1240, '010-a'), claim(900, '020-b'))).toEqual(['original_mass']);
    expect(names(claim(900, '010-a'), claim(1240, '010-a'))).toEqual(['original_mass']);
    expect(names(claim(1240))).toEqual([]);
  });
  it('are kept apart by name', () => {
    expect(names(claim(1240), claim(2.5, undefined, 'wheelbase'))).toEqual([]);
    expect(names(claim(1240), claim(2.5, undefined, 'wheelbase'), claim(2.6, '010-a', 'wheelbase'))).toEqual([
      'wheelbase',
    ]);
  });
  it('carry all that is stated, what one place says twice once', () => {
    const all = [claim(1240), claim(900, '010-a'), claim(900, '010-a'), claim(900, '020-b'), claim(950, '010-a')];
    expect(
      disagreeing(all, nothing)
        .get('original_mass')!
        .map((c) => [c.value.si, c.note]),
    ).toEqual([
      [1240, undefined],
      [900, '010-a'],
      [900, '020-b'],
      [950, '010-a'],
    ]);
  });
  it('are not those that the work renews: build.md states the old one', () => {
    expect(names(claim(3.7, undefined, 'final_drive'), claim(4.11, '010-a', 'final_drive'))).toEqual([]);
    expect(names(claim(3.7, '020-b', 'final_drive'), claim(4.11, '010-a', 'final_drive'))).toEqual(['final_drive']);
  });
  it('agree within what the way of measuring is uncertain by (5 mm of tread centres: common practice, no source)', () => {
    const track = (m: number, note?: string) => claim(m, note, 'original_track_front');
    expect(names(track(1.4), track(1.405, '010-a'))).toEqual([]);
    expect(names(track(1.4), track(1.4051, '010-a'))).toEqual(['original_track_front']);
  });
});

describe('the open item of what does not agree', () => {
  const items = (...claims: FactClaim[]) =>
    agreement(new Map([[claims[0]!.name, claims]]), () => ['Swept volume'], nothing);
  it('is one for each statement that does not agree with the first', () => {
    const found = items(claim(1240), claim(1240, '005-a'), claim(900, '010-a'), claim(950, '020-b'));
    expect(found.map((f) => [f.id, f.outcome, isOpen(f)])).toEqual([
      ['010-a/original_mass/agreement', 'contradicted', true],
      ['020-b/original_mass/agreement', 'contradicted', true],
    ]);
    expect(found[0]).toMatchObject({
      note: '010-a',
      subject: 'original_mass',
      item: 'agreement',
      title: 'Notes agree on the tare of the original model',
      of: 'answer',
      form: 'agreement',
      basis: 'own-copy',
      marks: [],
      says: 'stated as 900 kg here and stated as 1240 kg in build.md: they differ by 340 kg; what depends on it: Swept volume',
      todo: 'find out which is right and state it once',
      place: { file: '010-a' },
      related: { place: { file: 'build.md' }, says: 'stated as 1240 kg here' },
    });
    expect(found[0]!.measured?.si).toBe(900);
  });
  it('says what the way of measuring is uncertain by, and why', () => {
    const track = (m: number, note?: string) => claim(m, note, 'original_track_front');
    expect(items(track(1.4), track(1.404, '010-a'), track(1.42, '020-b')).map((f) => f.note)).toEqual(['020-b']);
    expect(items(track(1.4), track(1.42, '020-b'))[0]!.says).toContain(
      'they differ by 20 mm, more than 5 mm for finding the tread centres and the offset of rims;',
    );
  });

  const about = { says: 'swept volume', unit: 'cm3' };
  const calculated = (si: number, note: string): Claim => ({
    value: { ...value(si, 0, '', 'cm3'), origin: { kind: 'sheet', run: 'r', result: 'x' } },
    note,
    place: place(note),
  });
  const stated = (si: number, note?: string): Claim => ({
    value: value(si, 0, '', 'cm3'),
    note,
    place: place(note ?? 'build.md'),
  });
  it('of one note is between what is stated and what is calculated there', () => {
    expect(disagreement('capacity', about, stated(0.003, '010-a'), calculated(0.0031, '010-a'))).toMatchObject({
      id: '010-a/capacity/agreement',
      title: 'Stated and calculated values agree on the swept volume',
      says: 'calculated as 3100 cm³ and stated as 3000 cm³: they differ by 100 cm³',
      todo: 'find out which is right: measure again what it is calculated from, or correct what is stated',
      related: { says: 'stated as 3000 cm³ here' },
    });
  });
  it('stands with the note that says it, else with the build', () => {
    expect(disagreement('x', about, stated(1, '010-a'), stated(2)).note).toBe('010-a');
    expect(disagreement('x', about, stated(1), stated(2)).note).toBe('build');
    expect(disagreement('x', about, stated(0.001, '010-a'), stated(0.002, '020-b')).says).toContain('in 010-a');
  });
  it('asks to measure again where one of both is calculated', () => {
    const todo = (a: Claim, b: Claim) => disagreement('x', about, a, b).todo;
    const again = todo(calculated(1, '010-a'), calculated(2, '020-b'));
    expect(again).toContain('measure again');
    expect(todo(calculated(1, '010-a'), stated(2))).toBe(again);
    expect(todo(stated(1), calculated(2, '010-a'))).toBe(again);
    expect(todo(stated(1), stated(2))).not.toBe(again);
  });
  it('shows the uncertainties', () => {
    const one = { value: value(600, 3, 'a'), place: place('build.md') };
    const other = { value: value(610, 4, 'b'), note: '010-a', place: place('010-a') };
    expect(disagreement('x', { says: 'mass', unit: 'kg' }, one, other).says).toBe(
      'stated as 610 ± 4 kg here and stated as 600 ± 3 kg in build.md: they differ by 10 kg',
    );
  });
  it.each([
    [[], 'no outcome depends on which is right'],
    [['a', 'b', 'c', 'd'], 'what depends on it: a; b; c; d'],
    [['a', 'b', 'c', 'd', 'e', 'f'], 'what depends on it: a; b; c; d; and 2 more'],
  ])('lists what depends on it: %j', (affects, says) => {
    const found = disagreement('x', { ...about, affects: affects as string[] }, stated(1), stated(2)).says;
    expect(found.slice(found.indexOf('; ') + 2)).toBe(says);
    expect(disagreement('x', about, stated(1), stated(2)).says).not.toContain(';');
  });
});
