import { describe, expect, it } from 'vitest';
import { classes, coarse } from '../../../src/calc/fasteners/iso898.js';
import { readPropertyClass } from '../../../src/project/designations/property-class.js';
import { toSI, toUnit } from '../../../src/units/unit.js';
import { laws, problem, value } from './laws.js';

const MPa = (x: number | undefined) => (x === undefined ? undefined : toUnit(x, 'MPa'));
const ksi = (x: number | undefined) => (x === undefined ? undefined : Math.round(toUnit(x, 'ksi') * 1e6) / 1e6);

describe('property classes of ISO 898-1', () => {
  /** ISO 898-1:2013, table 3, as quoted by a maker of fasteners [read]. */
  it.each([
    ['4.6', 10, 225, 400, 240],
    ['4.8', 10, 310, 420, 340],
    ['5.6', 10, 280, 500, 300],
    ['5.8', 10, 380, 520, 420],
    ['6.8', 10, 440, 600, 480],
    ['8.8', 10, 580, 800, 640],
    ['8.8', 16, 580, 800, 640],
    ['8.8', 16.001, 600, 830, 660],
    ['8.8', 39, 600, 830, 660],
    ['9.8', 16, 650, 900, 720],
    ['10.9', 20, 830, 1040, 940],
    ['12.9', 20, 970, 1220, 1100],
  ])('%s at %f mm: proof %i, tensile %i, yield %i MPa', (name, d, proof, tensile, yield_) => {
    const c = value(readPropertyClass(name));
    const at = toSI(d, 'mm');
    expect([MPa(c.proof(at)), MPa(c.tensile(at)), MPa(c.yield(at))]).toEqual([proof, tensile, yield_]);
  });

  it.each([
    ['9.8', 16.001],
    ['8.8', 39.001],
    ['10.9', 1.5],
  ])('%s has no value at %f mm', (name, d) => {
    const c = value(readPropertyClass(name));
    expect([c.proof(toSI(d, 'mm')), c.tensile(toSI(d, 'mm')), c.yield(toSI(d, 'mm'))]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  /** Tables 4 and 5: loads are rounded each on its own, so that stress times area differs by up to 0.6 %. */
  it('times the stress area are the loads of the standard', () => {
    for (const [i, name] of classes.entries()) {
      const c = value(readPropertyClass(name));
      for (const row of coarse.filter((r) => r.proof[i] !== undefined)) {
        expect(
          Math.abs((MPa(c.proof(row.d / 1000))! * row.area) / row.proof[i]! - 1),
          `${row.thread} ${name}`,
        ).toBeLessThan(0.006);
        expect(
          Math.abs((MPa(c.tensile(row.d / 1000))! * row.area) / row.ultimate[i]! - 1),
          `${row.thread} ${name}`,
        ).toBeLessThan(0.012);
      }
    }
  });
});

describe('grades of SAE J429', () => {
  /** As quoted in Shigley and Mischke, Mechanical Engineering Design, 5th ed., and by makers of fasteners [read]. */
  it.each([
    ['SAE 1', 0.5, 33, 60, 36],
    ['SAE 2', 0.75, 55, 74, 57],
    ['SAE 2', 0.7501, 33, 60, 36],
    ['SAE 5', 0.25, 85, 120, 92],
    ['SAE 5', 1, 85, 120, 92],
    ['SAE 5', 1.0001, 74, 105, 81],
    ['SAE grade 8', 1.5, 120, 150, 130],
  ])('%s at %f in: proof %i, tensile %i, yield %i ksi', (name, d, proof, tensile, yield_) => {
    const c = value(readPropertyClass(name));
    const at = toSI(d, 'in');
    expect([ksi(c.proof(at)), ksi(c.tensile(at)), ksi(c.yield(at))]).toEqual([proof, tensile, yield_]);
  });

  it('have no value outside 1/4 in to 1-1/2 in', () => {
    const c = value(readPropertyClass('SAE 8'));
    expect([c.proof(toSI(0.2499, 'in')), c.proof(toSI(1.5001, 'in'))]).toEqual([undefined, undefined]);
  });
});

it.each([
  ['5', 'write SAE 5'],
  ['grade 8', 'write SAE 8'],
  ['11.9', 'read the mark on the head'],
  ['SAE 7', 'grades of SAE J429 read here'],
  ['A2-70', 'stainless'],
  ['8,8', 'write 8.8'],
  ['__proto__', 'read the mark'],
  ['SAE constructor', 'read the mark'],
])('%s is refused', (text, hint) => {
  expect(problem(readPropertyClass(text)).hint).toContain(hint);
});

it('classes obey the laws of readers', () => {
  laws(readPropertyClass, ['8.8', '10.9', '.', '8', 'SAE', ' ', 'grade', 'class', '5', 'A2-70']);
});
