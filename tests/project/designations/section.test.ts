import { describe, expect, it } from 'vitest';
import { sectionProperties } from '../../../src/calc/sections/section-of.js';
import { readSection } from '../../../src/project/designations/section.js';
import { profiles } from '../../../src/project/designations/section-shapes.js';
import { laws, problem, value } from './laws.js';

const properties = (text: string) => sectionProperties(value(readSection(text)).shape);

/** Within half a per cent or half the last printed digit. */
function agrees(ours: number, printed: string, scale: number): void {
  const digits = printed.split('.')[1]?.length ?? 0;
  const tolerance = Math.max(0.005 * Number(printed), 0.5 * 10 ** -digits);
  expect(Math.abs(ours / scale - Number(printed))).toBeLessThanOrEqual(tolerance * (1 + 1e-9));
}

describe('sections against printed tables', () => {
  /** EN 10219:2006, table of a metal trade page [read]: A cm², I_x cm⁴, I_y cm⁴, I_t cm⁴. */
  it.each([
    ['RHS 40x20x2 (EN 10219)', '2.14', '4.05', '1.34', '3.45'],
    ['RHS 50x30x2.5 (EN 10219)', '3.59', '11.30', '5.05', '11.74'],
    ['RHS 50×30×3 (EN10219-2)', '4.21', '12.83', '5.70', '13.53'],
    ['RHS 60x40x2 (BS EN 10219)', '3.74', '18.41', '9.83', '20.70'],
  ])('%s', (text, A, Ix, Iy, J) => {
    const p = properties(text);
    agrees(p.A, A, 1e-4);
    agrees(p.Ix, Ix, 1e-8);
    agrees(p.Iy, Iy, 1e-8);
    agrees(p.J, J, 1e-8);
  });

  /** AS/NZS 1163, handbook of a steel merchant [read]: S 10³ mm³, J 10⁶ mm⁴. Above 3 mm its corners are rounder. */
  it.each([
    ['SHS 65x65x3 (AS/NZS 1163)', '16.6', '0.733'],
    ['SHS 65x4 (AS/NZS 1163)', '20.6', '0.939'],
    ['SHS 50x50x5 (AS 1163)', '13.2', '0.469'],
    ['SHS 50x1.6 (AS/NZS 1163)', '5.46', '0.185'],
  ])('%s', (text, S, J) => {
    const p = properties(text);
    agrees(p.Sx, S, 1e-6);
    agrees(p.J, J, 1e-6);
  });

  /** CHS of EN 10219-2 and AS/NZS 1163 sizes, EN 10056-1, AS/NZS 3679.1 [from memory]; EN 10365 [read]. A cm², I_x cm⁴. */
  it.each([
    ['CHS 48.3x3.2', '4.53', '11.6'],
    ['CHS 33.7x3.2 (EN 10219)', '3.07', '3.60'],
    ['EA 30x30x3 (EN 10056)', '1.74', '1.40'],
    ['EA 40x4 (EN 10056-1)', '3.08', '4.47'],
    ['EA 50x50x5 (EN 10056-1)', '4.80', '11.0'],
    ['PFC 75x40', '7.54', '68.3'],
    ['PFC 100x50', '10.60', '174'],
    ['UPE 80', '10.1', '107'],
    ['UPE 100', '12.5', '207'],
    ['UPE 120', '15.4', '364'],
    ['UPE 140', '18.4', '600'],
  ])('%s', (text, A, Ix) => {
    const p = properties(text);
    agrees(p.A, A, 1e-4);
    agrees(p.Ix, Ix, 1e-8);
  });

  /** Printed areas of EN 10056-1, cm² [from memory], which hold the root radii of the table. */
  it.each([
    ['EA 20x3 (EN 10056-1)', '1.12'],
    ['EA 25x3 (EN 10056-1)', '1.42'],
    ['EA 45x4.5 (EN 10056-1)', '3.90'],
    ['EA 60x6 (EN 10056-1)', '6.91'],
    ['EA 70x7 (EN 10056-1)', '9.40'],
    ['EA 80x8 (EN 10056-1)', '12.3'],
    ['EA 90x9 (EN 10056-1)', '15.5'],
    ['EA 100x10 (EN 10056-1)', '19.2'],
  ])('%s', (text, A) => agrees(properties(text).A, A, 1e-4));

  /** Printed areas of AS/NZS 3679.1, cm² [from memory]. */
  it.each([
    ['PFC 125x65', '15.2'],
    ['PFC 150x75', '22.5'],
  ])('%s', (text, A) => agrees(properties(text).A, A, 1e-4));
});

describe('the order of dimensions', () => {
  it.each([
    ['FL 60x2', { kind: 'flat', width: 0.06, thickness: 0.002 }],
    ['FL 2-1/2x1/4 in', { kind: 'flat', width: 0.0635, thickness: 0.00635 }],
    ['RD 20', { kind: 'round-bar', diameter: 0.02 }],
    ['RD 3/4"', { kind: 'round-bar', diameter: 0.01905 }],
    ['RHS 50x30x2.5 r5', { kind: 'rhs', depth: 0.05, width: 0.03, wall: 0.0025, corners: 'measured', radius: 0.005 }],
    ['EA 50x50x5', { kind: 'angle', depth: 0.05, width: 0.05, thickness: 0.005 }],
    ['UA 75x50x6 r7', { kind: 'angle', depth: 0.075, width: 0.05, thickness: 0.006, root: 0.007 }],
    ['HAT 60x40x20x2.0', { kind: 'top-hat', crown: 0.06, depth: 0.04, flange: 0.02, wall: 0.002 }],
    ['hat 60 x 40 x 20 x 2 r3', { kind: 'top-hat', crown: 0.06, depth: 0.04, flange: 0.02, wall: 0.002, bend: 0.003 }],
    ['U 80x40x3', { kind: 'u', depth: 0.08, width: 0.04, wall: 0.003 }],
    ['LIP 100x50x15x2', { kind: 'lipped-u', depth: 0.1, width: 0.05, lip: 0.015, wall: 0.002 }],
    ['BOX 60x40x2', { kind: 'box', depth: 0.06, width: 0.04, flange: 0.002, web: 0.002 }],
    ['BOX 60x40x3x2', { kind: 'box', depth: 0.06, width: 0.04, flange: 0.003, web: 0.002 }],
  ])('%s', (text, shape) => {
    expect(value(readSection(text)).shape).toEqual(shape);
  });

  it('is told for every profile', () => {
    for (const profile of Object.keys(profiles))
      expect(problem(readSection(`${profile} 1x1x1x1x1`)).hint.length).toBeGreaterThan(20);
  });
});

describe('what is refused', () => {
  it.each([
    ['RHS 50x30x2.5', 'name its standard'],
    ['SHS 50x3', 'name its standard'],
    ['RHS 50x30x2.5 (EN 10210)', 'name its standard'],
    ['RHS 50x30x2.5 r5 (EN 10219)', 'not both'],
    ['SHS 50x40x3 (EN 10219)', 'write RHS'],
    ['EA 50x40x5', 'write UA'],
    ['EA 50x50x5 (AS/NZS 3679.1)', 'as measured'],
    ['UA 75x50x6 (EN 10056-1)', 'not in the table'],
    ['CHS 3.2x48.3', 'two walls do not fit'],
    ['CHS 6.4x3.2', 'two walls do not fit'],
    ['FL 2x60', 'thicker than wide'],
    ['PFC 101x50', '75x40, 100x50'],
    ['PFC 100x50 (EN 10365)', 'AS/NZS 3679.1'],
    ['HAT 60x40x20', '4 dimensions'],
    ['BOX 60x40', '3 or 4'],
    ['RSH 50x30x2.5', 'did you mean RHS'],
    ['50x30x2.5', 'profiles are'],
    ['RHS', 'did you mean RHS'],
    ['RD 20 bright', 'only a radius'],
    ['RD 0', 'write RD'],
    ['FL 60000x2', 'between 0.1 mm and 1000 mm'],
    ['FL 60,5x2', 'write FL 60.5x2'],
    ['toString 5', 'profiles are'],
  ])('%s', (text, hint) => {
    expect(problem(readSection(text)).hint).toContain(hint);
  });

  it('points at what is wrong', () => {
    expect(problem(readSection(' RHS 50x30x2.5 (EN 10210)')).at).toEqual([16, 24]);
    expect(problem(readSection('RD 20 bright')).at).toEqual([6, 12]);
  });

  it('obeys the laws of readers', () => {
    laws(readSection, [
      ...Object.keys(profiles),
      ' ',
      'x',
      '×',
      '50',
      '30',
      '2.5',
      '1/8',
      ' in',
      '"',
      'r5',
      ' (EN 10219)',
      ' (AS/NZS 1163)',
      '(EN 10056-1)',
      '100x50',
    ]);
  });
});
