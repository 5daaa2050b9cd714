import { describe, expect, it } from 'vitest';
import { LOAD_INDICES, loadCapacity, loadShareAt } from '../../../src/calc/gearing/tyre-tables.js';

describe('table of load indices', () => {
  const indices = Array.from({ length: LOAD_INDICES.last - LOAD_INDICES.first + 1 }, (_, i) => LOAD_INDICES.first + i);

  it('follows the law of the series, 45·10^(LI/80) kg, to within 1.75 %', () => {
    for (const index of indices)
      expect(Math.abs(loadCapacity(index)! / (45 * 10 ** (index / 80)) - 1), String(index)).toBeLessThan(0.0175);
  });

  it('rises with every index by 2 to 4 %', () => {
    for (const index of indices.slice(1)) {
      const step = loadCapacity(index)! / loadCapacity(index - 1)!;
      expect(step, String(index)).toBeGreaterThan(1.02);
      expect(step, String(index)).toBeLessThan(1.04);
    }
  });

  it('does not carry the misprints of 103 and 105', () => {
    expect(loadCapacity(103)).toBe(875);
    expect(loadCapacity(105)).toBe(925);
  });

  it('says nothing outside itself', () => {
    expect(loadCapacity(LOAD_INDICES.first - 1)).toBeUndefined();
    expect(loadCapacity(LOAD_INDICES.last + 1)).toBeUndefined();
    expect(loadCapacity(91.5)).toBeUndefined();
  });
});

describe('load at speed', () => {
  // Quoted from a table of load capacity against speed: V 91 % at 240 km/h, W 85 % at 270 km/h, straight between.
  it.each([
    ['V', 210, 1],
    ['V', 225, 0.955],
    ['V', 240, 0.91],
    ['W', 240, 1],
    ['W', 270, 0.85],
    ['H', 210, 1],
  ] as const)('%s at %d km/h carries %d of its load', (symbol, speed, share) => {
    expect(loadShareAt(symbol, speed)).toBeCloseTo(share, 12);
  });

  it('ends at the speed of the symbol', () => {
    expect(loadShareAt('H', 210.001)).toBeUndefined();
    expect(loadShareAt('V', 240.001)).toBeUndefined();
  });
});
