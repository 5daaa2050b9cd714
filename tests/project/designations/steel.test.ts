import { describe, expect, it } from 'vitest';
import { readSteel, type Steel } from '../../../src/project/designations/steel.js';
import { grades } from '../../../src/project/designations/steels.js';
import { toSI, toUnit } from '../../../src/units/unit.js';
import { laws, problem, value } from './laws.js';

/** The guaranteed strengths at a thickness in m. */
const strengthAt = (steel: Pick<Steel, 'ranges'>, thickness: number) => steel.ranges.find((r) => thickness <= r.upTo);

describe('grades of steel', () => {
  /** EN 10025-2, table 7, as quoted in a table of steel grades [read]: yield by thickness, least tensile strength from 3 mm. */
  it.each([
    ['S235', 3, 235, 360],
    ['S235', 16, 235, 360],
    ['S235', 16.001, 225, 360],
    ['S275', 10, 275, 410],
    ['S275', 40, 265, 410],
    ['S355', 16, 355, 470],
    ['S355J2', 20, 345, 470],
  ])('%s at %f mm: %i / %i MPa', (name, t, yield_, tensile) => {
    const at = strengthAt(value(readSteel(name)), toSI(t, 'mm'))!;
    expect([toUnit(at.yield, 'MPa'), toUnit(at.tensile, 'MPa')]).toEqual([yield_, tensile]);
  });

  /** AS/NZS 1163 as quoted in a summary of the standard [read]. */
  it.each([
    ['C250L0', 250, 320],
    ['C350L0', 350, 430],
    ['C350', 350, 430],
  ])('%s: %i / %i MPa', (name, yield_, tensile) => {
    const steel = value(readSteel(name));
    expect([toUnit(steel.yield!, 'MPa'), toUnit(steel.tensile!, 'MPa')]).toEqual([yield_, tensile]);
    expect(steel.source).toMatchObject({ basis: 'quoted' });
  });

  /** EN 10130 and EN 10139 as quoted by suppliers of strip [read]: 280 MPa at most, 270 MPa at least in tension. */
  it('DC01 has a greatest yield strength', () => {
    const steel = value(readSteel('DC01'));
    expect(toUnit(steel.yieldMost!, 'MPa')).toBe(280);
    expect(toUnit(steel.tensile!, 'MPa')).toBe(270);
    expect(strengthAt(steel, 0.004)).toBeUndefined();
  });

  it('carry their source, and no strength that only grows with thickness', () => {
    for (const grade of grades) {
      const steel = value(readSteel(grade.name));
      expect(steel).toMatchObject({ text: grade.name, known: 'grade', source: grade.source });
      expect(steel.yield!).toBeLessThan(steel.tensile!);
      const yields = steel.ranges.map((r) => r.yield);
      expect(yields).toEqual(yields.toSorted((a, b) => b - a));
    }
  });

  it.each([
    ['s355', 'S355'],
    ['S355 J2+N', 'S355J2+N'],
    ['S355J2H', 'S355J2H'],
    ['S235JR', 'S235JR'],
  ])('%s is %s', (written, text) => {
    expect(value(readSteel(written))).toMatchObject({ text, known: 'grade' });
  });
});

describe('other steels', () => {
  it('unknown has no strength', () => {
    const steel = value(readSteel('Unknown'));
    expect(steel).toEqual({ ok: true, text: 'unknown', known: 'unknown', ranges: [] });
  });

  it('carry the strengths of their certificate', () => {
    const steel = value(readSteel('4130 (435/670 MPa)'));
    expect(steel).toMatchObject({ text: '4130 (435/670 MPa)', known: 'certificate', yield: 4.35e8, tensile: 6.7e8 });
    expect(steel.source).toBeUndefined();
  });

  it.each([
    ['4130', 'from the certificate'],
    ['mild steel', 'or unknown'],
    ['S345', 'did you mean S355?'],
    ['4130 (670/435 MPa)', 'comes first'],
    ['4130 (0/435 MPa)', 'with their unit'],
    ['4130 (4.3.5/670 MPa)', 'with their unit'],
    ['S355XX', 'did you mean'],
  ])('%s is refused', (text, hint) => {
    expect(problem(readSteel(text)).hint).toContain(hint);
  });

  it('obeys the laws of readers', () => {
    laws(readSteel, [
      'S355',
      'S',
      '355',
      'J2',
      'H',
      '+N',
      'C350',
      'L0',
      'unknown',
      ' ',
      '(',
      '435',
      '/',
      '670',
      ' MPa',
      ')',
      '4130',
    ]);
  });
});
