import { describe, expect, it } from 'vitest';
import { sheets } from '../../../src/calc/uncertainty/index.js';
import { monotonic } from '../laws.js';
import { result, work } from '../sheet-rules.js';

const sheet = (id: string) => sheets.find((s) => s.id === id)!;

describe('laws of measurement uncertainty', () => {
  // ILAC-G8:09/2019, list of guard bands and the risk that each bounds (quoted).
  it.each([
    ['1.5', 0.16],
    ['1', 2.5],
    ['0.83', 5],
    ['0', 50],
  ])('a guard band of %s U keeps the risk at or under %d %%', (multiple, bound) => {
    const risk = result(sheet('guard-band'), { limit: '10', side: 'below', expanded: '1', multiple }, 'risk');
    expect(risk).toBeLessThanOrEqual(bound);
    expect(risk).toBeGreaterThan(0.8 * bound);
  });

  it('a value on its only limit conforms with probability one half, k standard uncertainties inside with that of k', () => {
    const probability = (value: string) =>
      result(sheet('conformity-probability'), { value, standard: '0.5', upper: '10' }, 'probability');
    expect(probability('10')).toBeCloseTo(50, 10);
    expect(probability('9')).toBeCloseTo(97.72498680518208, 9);
  });

  it('the probabilities below, inside and above add up to one', () => {
    const given = { value: '9.8', standard: '0.5', lower: '9', upper: '10' };
    const sum = ['below', 'probability', 'above'].reduce(
      (total, name) => total + result(sheet('conformity-probability'), given, name),
      0,
    );
    expect(sum).toBeCloseTo(100, 9);
  });

  it('k falls with the degrees of freedom and rises with the coverage', () => {
    monotonic(sheet('coverage-factor'), { freedom: '5' }, 'confidence', {
      from: 60,
      to: 99.9,
      unit: '%',
      result: 'factor',
      rises: true,
    });
    const k = [1, 2, 3, 5, 10, 30, 100, 1000].map((freedom) =>
      result(sheet('coverage-factor'), { freedom: String(freedom) }, 'factor'),
    );
    expect(k).toEqual([...k].sort((a, b) => b - a));
  });

  it('cuts degrees of freedom off to whole ones, and has none below one', () => {
    const k = (freedom: string) => result(sheet('coverage-factor'), { freedom, confidence: '99 %' }, 'factor');
    expect(k('16.76')).toBe(k('16'));
    expect(work(sheet('coverage-factor'), { freedom: '0.9' }).outOfRange).toMatch(/at least 1/);
    expect(k('1')).toBeCloseTo(63.66, 2);
  });

  it('a large contribution with few degrees of freedom brings the effective ones down', () => {
    const freedom = (few: string) =>
      result(
        sheet('combined-uncertainty'),
        {
          contributions: [
            { u: '1', freedom: '0' },
            { u: few, freedom: '3' },
          ],
        },
        'freedom',
      );
    expect(freedom('10')).toBeCloseTo(3, 0);
    expect(freedom('0.1')).toBe(10_000);
  });

  it('unlimited degrees of freedom give k = 2 for 95.45 %', () => {
    expect(result(sheet('combined-uncertainty'), { contributions: [{ u: '1', freedom: '0' }] }, 'factor')).toBeCloseTo(
      2,
      3,
    );
  });

  it('one reading says nothing of its scatter', () => {
    expect(work(sheet('type-a-uncertainty'), { readings: [{ reading: '2' }] }).outOfRange).toMatch(
      /at least two readings/,
    );
  });
});
